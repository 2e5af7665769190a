"""What is open while the lines of a text are gathered under their headings."""

from msgspec import Struct, field

from roomspec.diagnostics.diagnostic import Diagnostic, Origin
from roomspec.syntax.tree import Block, Node, Placed, Statement, Word

MOST_PROBLEMS = 100
"""Said of one piece of text, from one sure heading to the next; those after them are counted."""


class Heading(Struct):
    """A heading whose lines are being gathered.

    `first` is the line of the piece on which its block starts; `dropped` says that it stands where none may, so that
    its lines are read and set aside.
    """

    key: str
    table: str
    first: int
    head: Statement
    dropped: bool = False
    last: int = 0
    lines: list[Statement] = field(default_factory=list)
    parts: "list[Heading]" = field(default_factory=list)
    marks: dict[str, Statement] = field(default_factory=dict)
    problems: list[Diagnostic] = field(default_factory=list)


class Gathering(Struct):
    """The open block, the open heading in it, and what has been found."""

    outside: str
    suffix: str
    blocks: list[Heading] = field(default_factory=list)
    inner: Heading | None = None
    units: Statement | None = None
    problems: list[Diagnostic] = field(default_factory=list)
    said: int = 0
    unsaid: list[Origin] = field(default_factory=list)
    headless: bool = False
    """Lines before the first heading have been told of: one heading mends them all."""
    under: int | None = None
    """Lines deeper than this column stand under a line that could not be read."""

    @property
    def top(self) -> Heading | None:
        """The open block."""
        return self.blocks[-1] if self.blocks else None

    @property
    def table(self) -> str | None:
        """That of the heading to which the next line belongs first."""
        open_ = self.inner or self.top
        return open_.table if open_ is not None else None

    def origin(self, number: int, start: int, end: int) -> Origin:
        """A place on a line of the piece."""
        top = self.top
        return (
            Origin(self.outside, number, start, end) if top is None else Origin(top.key, number - top.first, start, end)
        )

    def full(self) -> bool:
        """True when no more is said of single lines."""
        return self.said >= MOST_PROBLEMS

    def say(self, problem: Diagnostic) -> None:
        """Note a problem, or count it where enough is said."""
        self.said += 1
        if self.said > MOST_PROBLEMS:
            self.unsaid.append(problem.at)
        else:
            (self.problems if self.top is None else self.top.problems).append(problem)

    def open(self, node: Node, table: str, number: int) -> None:
        """Open a block."""
        name = name_of(node)
        self.inner = None
        self.blocks.append(Heading(f"{node.kind} {name}".strip() + self.suffix, table, number, Statement(0, node)))

    def open_inside(self, node: Node, table: str, number: int, held: bool) -> None:
        """Open a heading inside the open block, to be dropped unless that holds it."""
        top = self.top
        first = top.first if top is not None else 0
        key = top.key if top is not None else self.outside
        self.inner = Heading(key, table, first, Statement(number - first, node), not held)
        if held and top is not None:
            top.parts.append(self.inner)


def name_of(node: Node) -> str:
    """The name that a heading gives, the first where it gives several; empty where it could not be read."""
    for part in node.parts:
        if isinstance(part, Word):
            if part.type == "NAME":
                return part.text
        elif name := name_of(part):
            return name
    return ""


def closed(heading: Heading, text: str = "") -> Block:
    """The heading with all that was gathered under it, and its text."""
    return Block(
        heading.key,
        heading.head.node.kind,
        name_of(heading.head.node),
        heading.head,
        tuple(heading.lines),
        tuple([closed(part) for part in heading.parts]),
        tuple(heading.problems),
        text,
    )


def placed(heading: Heading, lines: list[str]) -> Placed:
    """A block of the piece with the line on which it starts; `lines` are those of the piece."""
    start = heading.first + heading.head.line
    return Placed(heading.first, closed(heading, "\n".join(lines[start : heading.last + 1])))
