"""Rows as CSV by RFC 4180: commas, CRLF, quotation marks where they are needed; no cell is a formula."""

import csv
import io
import re
from collections.abc import Iterable, Sequence

_STARTS_A_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")
"""What a spreadsheet takes for a formula, or skips to find one (OWASP, CSV Injection)."""
_FIGURE = re.compile(r"[-+]?[0-9]+(?:\.[0-9]+)?")


def rows_csv(heads: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """The table as text, its first line the heads. Figures are plain: `2603.5`, whatever the locale."""
    sheet = io.StringIO()
    writer = csv.writer(sheet, lineterminator="\r\n")
    writer.writerow(heads)
    writer.writerows([_harmless(cell) for cell in row] for row in rows)
    return sheet.getvalue()


def _harmless(cell: str) -> str:
    """The text, behind an apostrophe where a spreadsheet would reckon with it; a figure stays one."""
    if _FIGURE.fullmatch(cell):
        return cell
    return f"'{cell}" if cell.lstrip(" ").startswith(_STARTS_A_FORMULA) or cell.startswith(" ") else cell
