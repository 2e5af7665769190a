"""A piece of the live page, and what every piece is made with: texts and places as HTML."""

from collections.abc import Callable
from hashlib import sha256

from msgspec import Struct

from roomspec.analysis.found import Place
from roomspec.reports.markup import marked_up
from roomspec.reports.width import shown

LineOf = Callable[[str, int], str]
"""Takes a path and a line from 1; gives its text, "" where there is none."""


class Piece(Struct, frozen=True):
    """A part of the page, replaced as a whole when it changes; `name` is its id.

    `told` stands beside its heading, where it says in a few words what the piece says in full. `old` is true of what is
    being made anew.
    """

    name: str
    html: str
    told: str = ""
    old: bool = False


def text(words: str) -> str:
    """Words of a file as they stand in HTML."""
    return marked_up(shown(words))


def place(at: Place) -> str:
    """A place as words, with a button that copies them, and one that shows it in the editor, where one listens."""
    told = text(f"{at.path}:{at.line}")
    return (
        f'<p class="place"><code>{told}</code> <button type="button" class="copy" data-text="{told}">Copy</button>'
        f' <button type="button" class="show" data-path="{text(at.path)}" data-line="{at.line}" hidden>'
        "Show in the editor</button></p>"
    )


def mark(name: str) -> str:
    """A name as an id: letters and figures, and a digest of all of it where anything else is in it."""
    plain = "".join(c if c.isascii() and c.isalnum() else "-" for c in name)
    return plain if plain == name else f"{plain}-{sha256(name.encode()).hexdigest()[:6]}"
