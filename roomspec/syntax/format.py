"""A text in the one format. Changes no meaning, keeps every comment and every blank line but those at the end.

Headings stand at 0, their lines and their walls at 2, a wall's lines at 4. Under one heading the values of all lines
start in one column, two blanks after the longest keyword. Comments at the ends of such lines stand in one column too,
lines of more than 60 characters aside. A comment on its own line is indented as what follows, unless a blank line
follows it and none stands before it. A line that cannot be read is kept as it is but for its indent, and so are the
lines set aside under it. The line ends are those of the first line, the last line is ended, a byte order mark is
dropped.
"""

from collections.abc import Iterator

from msgspec import Struct

from roomspec.syntax.assemble import read_file
from roomspec.syntax.line import Line, read_line
from roomspec.syntax.parser import Misfit
from roomspec.syntax.recover import deeper_follows, indent
from roomspec.syntax.spelled import spelled
from roomspec.syntax.statements import words_of
from roomspec.syntax.tree import Block

LONG = 60
"""Characters; a longer line's comment follows it at once."""
_LEADS = {"fit": 2, "valid": 2}
"""Statements whose first two words are one keyword."""
_BLANKS = " \t\f\u00a0\ufeff"


class Place(Struct, frozen=True):
    """Where a line of the tree stands: its indent, and the column that its values share with others' (None: none)."""

    depth: int
    column: str | None = None


class Shaped(Struct):
    """A line on its way: its indent, keyword, the rest, the comment, and the columns it shares."""

    depth: int
    lead: str = ""
    rest: str = ""
    comment: str = ""
    column: str | None = None


def format_text(text: str) -> str:
    """The text in the one format."""
    ending = "\r\n" if "\r\n" in text.partition("\n")[0] + text.partition("\n")[1] else "\n"
    lines = [line.rstrip("\r") for line in text.lstrip("\ufeff").split("\n")]
    shaped = _shape(lines)
    _indent_comments(shaped)
    done = _aligned(shaped)
    while done and not done[-1]:
        done.pop()
    return "".join(line + ending for line in done)


def _shape(lines: list[str]) -> list[Shaped]:
    """Each line taken apart, with its indent; that of comments on their own is set later."""
    places = _places("\n".join(lines))
    shaped: list[Shaped] = []
    depth = 0
    under: int | None = None
    for number, line in enumerate(lines):
        read = read_line(line)
        place = places.get(number)
        if read is None:
            shaped.append(Shaped(0, comment=line.strip(_BLANKS + "\r")))
            continue
        if under is not None and (place is not None or indent(line) <= under):
            under = None
        if under is not None:
            shaped.append(_kept(line, depth + indent(line) - under))
            continue
        if place is not None and place.column is None:
            depth = place.depth + 2
        own = place.depth if place is not None else depth
        if isinstance(read, Misfit):
            if place is None and not read.read and deeper_follows(lines, number):
                under = indent(line)
            shaped.append(_kept(line, own))
        else:
            shaped.append(_taken_apart(read, line, own, place.column if place is not None else None))
    return shaped


def _places(text: str) -> dict[int, Place]:
    """The lines of the tree."""
    places: dict[int, Place] = {}
    for placed in read_file("", text).blocks:
        for number, place in _block_places(placed.block, 0, str(placed.line)):
            places[placed.line + number] = place
    return places


def _block_places(block: Block, depth: int, name: str) -> Iterator[tuple[int, Place]]:
    name = f"{name}.{block.head.line}"
    yield block.head.line, Place(depth)
    for line in block.lines:
        yield line.line, Place(depth + 2, name)
    for part in block.parts:
        yield from _block_places(part, depth + 2, name)


def _kept(line: str, depth: int) -> Shaped:
    """A line as it is but for its indent."""
    return Shaped(depth, line.lstrip(_BLANKS))


def _taken_apart(read: Line, line: str, depth: int, column: str | None) -> Shaped:
    words = words_of(read.node)
    comment = line[words[-1].end :].strip(_BLANKS)
    texts = [spelled(word) for word in words]
    count = _LEADS.get(words[0].text, 1) if column is not None else len(texts)
    return Shaped(depth, _joined(texts[:count]), _joined(texts[count:]), comment, column)


def _joined(texts: list[str]) -> str:
    return "".join(text if text == "," else f" {text}" for text in texts).lstrip()


def _indent_comments(shaped: list[Shaped]) -> None:
    """Indent comments on their own as what follows, or as what stands before where only that is next to them."""
    follows = 0
    blank_after = True
    loose: list[bool] = []
    for line in reversed(shaped):
        if line.lead:
            follows, blank_after = line.depth, False
        elif not line.comment:
            blank_after = True
        else:
            line.depth = follows
        loose.append(blank_after)
    before: int | None = None
    for line, blank_follows in zip(shaped, reversed(loose), strict=True):
        if line.lead or not line.comment:
            before = line.depth if line.lead else None
        elif before is not None and blank_follows:
            line.depth = before


def _aligned(shaped: list[Shaped]) -> list[str]:
    """The lines put together."""
    keyword_ends: dict[str, int] = {}
    for line in shaped:
        if line.column is not None and line.rest:
            keyword_ends[line.column] = max(keyword_ends.get(line.column, 0), len(line.lead) + 2)
    said = [_said(line, keyword_ends) for line in shaped]
    comment_starts: dict[str, int] = {}
    for line, text in zip(shaped, said, strict=True):
        if line.column is not None and line.comment and len(text) <= LONG:
            comment_starts[line.column] = max(comment_starts.get(line.column, 0), len(text) + 2)
    done = []
    for line, text in zip(shaped, said, strict=True):
        if not line.comment:
            done.append(text)
        elif not line.lead:
            done.append(" " * line.depth + line.comment)
        else:
            start = comment_starts.get(line.column or "", 0) if len(text) <= LONG else 0
            done.append(text.ljust(max(start, len(text) + 2)) + line.comment)
    return done


def _said(line: Shaped, keyword_ends: dict[str, int]) -> str:
    if not line.lead:
        return ""
    lead = line.lead.ljust(keyword_ends[line.column]) if line.column is not None and line.rest else line.lead
    return " " * line.depth + lead + line.rest
