"""One statement being read: the facts it states and what is wrong with it, both free of where it stands."""

from collections.abc import Callable, Sequence

from msgspec import Struct
from msgspec.structs import replace

from roomspec.compile.parts import span
from roomspec.diagnostics.diagnostic import Diagnostic, Edit, Fix, Origin, Related
from roomspec.syntax.tree import Node, Word


class Fact(Struct, frozen=True, gc=False):
    """One fact of a statement: the model's field and its value. `node` is the part that states it, where not the whole.

    `from_right` says that the value's x is still measured from the wall's right end.
    """

    field: str
    value: object
    from_right: bool = False
    node: Node | None = None


class Reading(Struct, frozen=True, gc=False):
    """What a statement says, and its problems with line 0 of a block without name."""

    facts: tuple[Fact, ...] = ()
    problems: tuple[Diagnostic, ...] = ()


MOST = 100
"""Problems told of one block; the rest are counted."""


def told(problems: Sequence[Diagnostic]) -> tuple[Diagnostic, ...]:
    """The first of a block's problems, and how many more there are."""
    if len(problems) <= MOST:
        return tuple(problems)
    more = len(problems) - MOST
    rest = Diagnostic(problems[MOST].name, "error", f"this block has {more} more problems", problems[MOST].at)
    return (*problems[:MOST], rest)


class Line(Struct):
    """A statement while it is read: its node, the file's unit for bare lengths, the kind of block it stands in, the
    node's parts by rule, the problems found so far."""

    node: Node
    units: str
    table: str
    parts: dict[str, tuple[Node, ...]]
    problems: list[Diagnostic]

    def part(self, rule: str) -> Node | None:
        """The first part of one rule."""
        found = self.parts.get(rule)
        return found[0] if found else None

    def all(self, rule: str) -> tuple[Node, ...]:
        """All parts of one rule."""
        return self.parts.get(rule, ())


Reader = Callable[[Line], tuple[Fact, ...]]
"""Reads one kind of statement."""


def complain(
    line: Line,
    name: str,
    message: str,
    at: Word | tuple[int, int],
    help_: str = "",
    instead: tuple[str, ...] = (),
    titles: tuple[str, ...] = (),
    severity: str = "error",
) -> None:
    """Note a problem at a word or at columns; each text of `instead` becomes a fix that replaces those words."""
    start, end = (at.start, at.end) if isinstance(at, Word) else at
    place = Origin("", 0, start, end)
    named = titles or tuple(f"write `{text.strip()}`" for text in instead)
    fixes = tuple(Fix(title, (Edit(place, text),)) for title, text in zip(named, instead, strict=True))
    line.problems.append(Diagnostic(name, severity, message, place, help_, fixes=fixes))


def lacks(line: Line, keyword: str, what: str, insert: str = "", title: str = "") -> None:
    """Note that the statement does not say `what` and so is left out; `insert` at its end is the fix."""
    start, end = span(line.node)
    fixes = (Fix(title, (Edit(Origin("", 0, end, end), insert),), to_fill_in=True),) if insert else ()
    message = f"this {line.node.kind} does not say {what}; it is left out"
    help_ = f"add `{keyword}` and the length"
    line.problems.append(Diagnostic("missing-line", "error", message, Origin("", 0, start, end), help_, fixes=fixes))


def moved(problem: Diagnostic, block: str, line: int) -> Diagnostic:
    """The problem of a statement, placed in its block."""

    def at(origin: Origin) -> Origin:
        return Origin(block, line, origin.start, origin.end) if not origin.block else origin

    return replace(
        problem,
        at=at(problem.at),
        related=tuple(Related(other.message, at(other.at)) for other in problem.related),
        fixes=tuple(
            replace(fix, edits=tuple(Edit(at(edit.at), edit.text) for edit in fix.edits)) for fix in problem.fixes
        ),
    )
