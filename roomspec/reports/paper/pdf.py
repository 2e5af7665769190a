"""A document as PDF, by the typst package (the extra `pdf`)."""

import re
from functools import lru_cache

from msgspec import Struct

from roomspec.reports.paper.sheet import Sheet
from roomspec.reports.paper.typeset import sheet_markup

_IN_NO_FONT = "\uffff"
"""A noncharacter (The Unicode Standard, 23.7): whatever looks like it is the box for a letter that is not there."""
_RARE = re.compile("[^\x00-\xff]")
"""Beyond ISO 8859-1."""
_PAGE = "#set page(width: 20pt, height: 20pt, margin: 0pt)\n"


class Pdf(Struct, frozen=True):
    """A file; `borrowed` are letters set in fonts of the machine, `boxes` those that no font has, each in its text."""

    data: bytes
    borrowed: tuple[tuple[str, str], ...] = ()
    boxes: tuple[tuple[str, str], ...] = ()


def sheet_pdf(sheet: Sheet) -> Pdf:
    """The document in the fonts that the package brings: the same bytes on every machine, no file read.

    Only where these lack a letter of it are the machine's fonts looked at. ImportError where the package is missing.
    """
    import typst

    markup = sheet_markup(sheet)
    lacking = letters_in_no_font(_letters(markup), machine=False)
    boxes = letters_in_no_font(lacking, machine=True)
    data = typst.compile(markup.encode(), ignore_system_fonts=not lacking)
    borrowed = "".join(letter for letter in lacking if letter not in boxes)
    return Pdf(bytes(data), _in_texts(borrowed, markup), _in_texts(boxes, markup))


@lru_cache
def letters_in_no_font(letters: str, machine: bool) -> str:
    """Those of the letters that show as an empty box; `machine`: in spite of the fonts installed here."""
    import typst

    if not letters:
        return ""
    pages = "\n#pagebreak()\n".join(f'#text("{letter}")' for letter in _IN_NO_FONT + letters)
    box, *shown = typst.compile((_PAGE + pages).encode(), format="svg", ignore_system_fonts=not machine)
    return "".join(letter for letter, page in zip(letters, shown, strict=True) if page == box)


def _letters(markup: str) -> str:
    """Each letter that not every font for text has, once; not the sign for one that cannot be shown."""
    return "".join(sorted({*_RARE.findall(markup)} - {"\ufffd"}))


def _in_texts(letters: str, markup: str) -> tuple[tuple[str, str], ...]:
    """Each letter, with the first text in which it stands."""
    found = (re.search(rf'[^"<>\n]*{re.escape(letter)}[^"<>\n]*', markup) for letter in letters)
    return tuple((letter, text[0].strip(" \\")) for letter, text in zip(letters, found, strict=True) if text)
