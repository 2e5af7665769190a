"""What each word of a text is: for colours that know the grammar."""

from collections.abc import Iterator, Sequence

from msgspec import Struct

from roomspec.syntax.line import Line, read_line
from roomspec.syntax.parser import QUANTITIES
from roomspec.syntax.statements import placing, words_of
from roomspec.syntax.tables import tables
from roomspec.syntax.tree import Word
from roomspec.text.lines import Lines
from roomspec_lsp.features.legend import TYPES


class Token(Struct, frozen=True):
    """Columns of a line (all from 0), a type and whether it is a heading's name."""

    line: int
    start: int
    end: int
    kind: str
    declares: bool = False


def tokens(lines: Lines, first: int = 0, last: int | None = None) -> Iterator[Token]:
    """The tokens of the lines from `first` to `last`, left to right; what cannot be read has none."""
    for number in range(first, min(len(lines.starts), len(lines.starts) if last is None else last + 1)):
        text = lines.line(number)
        read = read_line(text)
        words: Sequence[Word] = ()
        if isinstance(read, Line):
            words = words_of(read.node)
        elif read is not None:
            words = read.read
        heading = bool(words) and any(kind in placing().table_of for kind in placing().by_word.get(words[0].text, ()))
        for word in words:
            yield Token(number, word.start, word.end, kind_of(word.type), heading and word.type == "NAME")
        if read is None or isinstance(read, Line):
            comment = text.find("#", words[-1].end if words else 0)
            if comment >= 0:
                yield Token(number, comment, len(text), "comment")


def kind_of(terminal: str) -> str:
    """The type of a word that is this terminal of the grammar."""
    if terminal in tables().keywords:
        return "keyword"
    if terminal in QUANTITIES or terminal == "DATE":
        return "number"
    if terminal == "STRING":
        return "string"
    if terminal.endswith("NAME"):
        return "variable"
    return "operator" if terminal in ("TIMES", "COMMA") else "enumMember"


def encoded(found: Sequence[tuple[int, int, int, str, bool]]) -> list[int]:
    """The protocol's five numbers a token, from (line, start, length, type, declares) in the client's columns."""
    data: list[int] = []
    line = column = 0
    for row, start, length, kind, declares in found:
        data += [row - line, start - (column if row == line else 0), length, TYPES.index(kind), int(declares)]
        line, column = row, start
    return data


def delta(old: Sequence[int], new: Sequence[int]) -> tuple[int, int, list[int]]:
    """From `old` to `new`: where to begin, how many numbers to take out, what to put there."""
    shorter = min(len(old), len(new))
    head = next((at for at in range(shorter) if old[at] != new[at]), shorter)
    tail = next((at for at in range(shorter - head) if old[-1 - at] != new[-1 - at]), shorter - head)
    return head, len(old) - head - tail, list(new[head : len(new) - tail])
