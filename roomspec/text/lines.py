"""Where the lines of a text begin: offsets to and from lines and columns.

Lines end at a line feed, with a carriage return before it or not; at nothing else. Lines and columns count from 0,
columns in code points of the line without its end.
"""

from bisect import bisect_right

from msgspec import Struct


class Lines(Struct, frozen=True):
    """A text and the offset at which each of its lines begins."""

    text: str
    starts: tuple[int, ...]

    def line(self, number: int) -> str:
        """A line without its end."""
        return self.text[self.starts[number] : self._end(number)]

    def place(self, offset: int) -> tuple[int, int]:
        """The line and column of an offset; within a line's end, the column after its last character."""
        offset = min(max(offset, 0), len(self.text))
        number = bisect_right(self.starts, offset) - 1
        return number, min(offset, self._end(number)) - self.starts[number]

    def offset(self, line: int, column: int) -> int:
        """The offset of a place; a column beyond the line's last stands for its end: the next line's beginning."""
        if line >= len(self.starts):
            return len(self.text)
        at = self.starts[line] + max(column, 0)
        if at <= self._end(line):
            return at
        return self.starts[line + 1] if line + 1 < len(self.starts) else len(self.text)

    def _end(self, number: int) -> int:
        """The offset of a line's end."""
        if number + 1 == len(self.starts):
            return len(self.text)
        end = self.starts[number + 1] - 1
        return end - 1 if end > self.starts[number] and self.text[end - 1] == "\r" else end


def lines_of(text: str) -> Lines:
    """The lines of a text; a text that ends in a line feed has an empty last line."""
    starts = [0]
    at = text.find("\n")
    while at >= 0:
        starts.append(at + 1)
        at = text.find("\n", at + 1)
    return Lines(text, tuple(starts))
