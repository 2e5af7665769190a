"""A document as values. Cells and sentences are plain text; whoever puts them on paper escapes them."""

from msgspec import Struct


class Words(Struct, frozen=True, tag=True):
    """A paragraph; `loud` where nobody may miss it."""

    text: str
    loud: bool = False


class Points(Struct, frozen=True, tag=True):
    """A list: plain, `numbered` where the order matters, or with a box to `tick` at each."""

    items: tuple[str, ...]
    way: str = "plain"


class Facts(Struct, frozen=True, tag=True):
    """Terms and what they are, as in a title block."""

    rows: tuple[tuple[str, str], ...]


class Table(Struct, frozen=True, tag=True):
    """A table; `align` has a letter for each column: `r` where figures stand flush right, `w` where somebody writes.

    A row of one cell is a caption over the rows that follow. The last `totals` rows stand below a line. The first
    column names its row.
    """

    caption: str
    heads: tuple[str, ...]
    align: str
    rows: tuple[tuple[str, ...], ...]
    totals: int = 0


class Drawing(Struct, frozen=True, tag=True):
    """An SVG document on A4 or A3 lying on its long side, and what it shows for those who cannot see it.

    In print it has a page of its own, of that size and no other margin, so that it is to scale.
    """

    svg: str
    shows: str
    paper: str = "A4"


Block = Words | Points | Facts | Table | Drawing


class Part(Struct, frozen=True):
    """A heading and what stands under it; `anchor` is its name within the page, `new_page` begins one in print."""

    title: str
    blocks: tuple[Block, ...] = ()
    parts: tuple["Part", ...] = ()
    anchor: str = ""
    new_page: bool = False

    @property
    def empty(self) -> bool:
        """True where nothing stands under the heading."""
        return not self.blocks and not self.parts


class Sheet(Struct, frozen=True):
    """One document: what it is, of which job, its title block, and its parts.

    `stamp` stands on every page where the document must not leave the house.
    """

    kind: str
    title: str
    facts: Facts
    parts: tuple[Part, ...]
    stamp: str = ""
    language: str = "en"


def table_or_words(table: Table, otherwise: str) -> Block:
    """The table, or a sentence where it has no rows."""
    return table if table.rows else Words(otherwise)


def with_content(*parts: Part) -> tuple[Part, ...]:
    """The parts that have any."""
    return tuple(part for part in parts if not part.empty)
