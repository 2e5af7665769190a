"""The findings on the live page: all of them, each with its line, and those of one room beside its drawings."""

from collections.abc import Iterable, Sequence

from roomspec.analysis.found import Found
from roomspec.diagnostics.diagnostic import SEVERITIES
from roomspec.reports.findings_text import counted
from roomspec.reports.preview.piece import LineOf, Piece, place, text

MOST = 200
"""Findings on the page; of more only the number is said."""


def findings_piece(findings: Sequence[Found], line_of: LineOf) -> Piece:
    """Every finding with its line and its mend, the worst first."""
    worst = sorted(findings, key=lambda one: SEVERITIES.index(one.severity))
    items = "".join(_finding(one, line_of) for one in worst[:MOST])
    more = f"<p>and {len(worst) - MOST} more</p>" if len(worst) > MOST else ""
    return Piece("findings", f'<ul class="said">{items}</ul>{more}' if items else "", text(counted(findings)))


def _finding(found: Found, line_of: LineOf) -> str:
    line = line_of(found.place.path, found.place.line).strip()
    quoted = f"<pre>{text(line)}</pre>" if line else ""
    mend = f'<p class="faint">{text(found.help)}</p>' if found.help else ""
    return f'<li class="{found.severity}">{_sentence(found)}{quoted}{mend}{place(found.place)}</li>'


def said_here(findings: Iterable[Found]) -> str:
    """The findings of a room, each in its sentence and its line's number; "" where there are none."""
    items = "".join(
        f'<li class="{one.severity}">{_sentence(one)}<p class="faint">line {one.place.line}</p></li>'
        for one in findings
    )
    return f'<ul class="said here">{items}</ul>' if items else ""


def _sentence(found: Found) -> str:
    return f"<p><strong>{found.severity}</strong> {text(found.message)}</p>"
