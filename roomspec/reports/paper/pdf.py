"""A document as PDF, by the typst package (the extra `pdf`)."""

from roomspec.reports.paper.sheet import Sheet
from roomspec.reports.paper.typeset import sheet_markup


def sheet_pdf(sheet: Sheet) -> bytes:
    """The document, with the fonts that the package brings: the same bytes on every machine, no file read.

    A letter that these fonts lack shows as an empty box. ImportError where the package is not installed.
    """
    import typst

    return bytes(typst.compile(sheet_markup(sheet).encode(), ignore_system_fonts=True))
