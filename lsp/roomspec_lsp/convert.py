"""The one place that knows the protocol's positions and addresses.

Inside, a place is a line and a column in code points, both from 0. A client counts columns in bytes of UTF-8, in
units of UTF-16 or in code points, as was agreed. A column beyond the line stands for the line's end, before its line
break; one inside a character for the character's beginning; a line beyond the last for the end of the text.
"""

import re
from pathlib import Path
from urllib.parse import quote, unquote, urlsplit

from lsprotocol import types

from roomspec.analysis.found import Place
from roomspec.text.lines import Lines

_DRIVE = re.compile(r"^/?([A-Za-z])(?::|\|)(?=/|$)")


def column(line: str, units: int, encoding: str) -> int:
    """Code points of `line` before the client's column."""
    if encoding == "utf-32" or line.isascii():
        return max(0, min(units, len(line)))
    taken = 0
    for number, letter in enumerate(line):
        taken += _width(letter, encoding)
        if taken > units:
            return number
    return len(line)


def units(line: str, column: int, encoding: str) -> int:
    """The client's column of a code point of `line`."""
    if encoding == "utf-32" or line.isascii():
        return min(column, len(line))
    return sum(_width(letter, encoding) for letter in line[:column])


def _width(letter: str, encoding: str) -> int:
    point = ord(letter)
    if encoding == "utf-16":
        return 2 if point > 0xFFFF else 1
    return 1 if point < 0x80 else 2 if point < 0x800 else 3 if point < 0x10000 else 4


def length_in_units(text: str, encoding: str) -> int:
    """How long a text is for the client."""
    return units(text, len(text), encoding)


def place_of(lines: Lines, position: types.Position, encoding: str) -> tuple[int, int]:
    """Line and column, from 0, of a client's position."""
    if position.line >= len(lines.starts):
        last = len(lines.starts) - 1
        return last, len(lines.line(last))
    line = max(position.line, 0)
    return line, column(lines.line(line), position.character, encoding)


def span_of(lines: Lines, given: types.Range, encoding: str) -> tuple[int, int]:
    """Offsets of a client's range; the ends of one that runs backwards are swapped."""
    start, end = (
        lines.starts[line] + at
        for line, at in (place_of(lines, given.start, encoding), place_of(lines, given.end, encoding))
    )
    return (start, end) if start <= end else (end, start)


def position(lines: Lines, line: int, column: int, encoding: str) -> types.Position:
    """The client's position of a line and column from 0; a column beyond the line's last is the next line's first."""
    if line >= len(lines.starts):
        line = len(lines.starts) - 1
        column = len(lines.line(line))
    text = lines.line(line)
    if column > len(text) and line + 1 < len(lines.starts):
        return types.Position(line + 1, 0)
    return types.Position(line, units(text, max(column, 0), encoding))


def range_of(lines: Lines, place: Place, encoding: str) -> types.Range:
    """The client's range of a place (lines and columns from 1)."""
    return types.Range(
        position(lines, place.line - 1, place.column - 1, encoding),
        position(lines, place.end_line - 1, place.end_column - 1, encoding),
    )


def range_between(lines: Lines, start: int, end: int, encoding: str) -> types.Range:
    """The client's range of two offsets."""
    return types.Range(position(lines, *lines.place(start), encoding), position(lines, *lines.place(end), encoding))


def path_of(uri: str) -> Path | None:
    """The file that an address names; None for buffers without a file."""
    parts = urlsplit(uri)
    if parts.scheme != "file":
        return None
    text = unquote(parts.path)
    if parts.netloc and parts.netloc != "localhost":
        return Path(f"//{parts.netloc}{text}")
    drive = _DRIVE.match(text)
    if drive is not None:
        text = f"{drive[1].upper()}:{text[drive.end() :] or '/'}"
    return None if "\0" in text else Path(text)


def uri_of(path: Path) -> str:
    """The address of a file."""
    text = path.as_posix()
    drive = _DRIVE.match(text)
    if drive is not None:
        return f"file:///{drive[1].lower()}%3A{quote(text[drive.end() :])}"
    return f"file://{quote(text)}"
