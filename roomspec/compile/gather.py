"""The lines of one block, read and gathered by field, with where each stands."""

from collections.abc import Iterable

from msgspec import Struct

from roomspec.compile.origins import Fields, Source
from roomspec.compile.readers import read
from roomspec.compile.reading import moved
from roomspec.diagnostics.diagnostic import Diagnostic, Edit, Fix, Origin
from roomspec.names.index import name_word
from roomspec.syntax.tree import Block, Statement


class Gathered(Struct):
    """What lines state: values by field in the order written, the source of each, the problems."""

    values: dict[str, list[object]]
    sources: dict[str, list[Source]]
    problems: list[Diagnostic]

    def last(self, field: str, otherwise: object = None) -> object:
        """The field's last value, or `otherwise`."""
        found = self.values.get(field)
        return found[-1] if found else otherwise

    def all(self, field: str) -> tuple[object, ...]:
        """All of the field's values."""
        return tuple(self.values.get(field, ()))

    def fields(self) -> Fields:
        """The sources as `origins.Origins` holds them."""
        return {field: tuple(sources) for field, sources in self.sources.items()}


def gather(key: str, table: str, lines: Iterable[Statement], units: str) -> Gathered:
    """Read the lines of a block of the kind `table`."""
    found = Gathered({}, {}, [])
    for statement in lines:
        reading = read(table, statement.node, units)
        for fact in reading.facts:
            found.values.setdefault(fact.field, []).append(fact.value)
            source = Source(key, statement.line, fact.node or statement.node)
            found.sources.setdefault(fact.field, []).append(source)
        for problem in reading.problems:
            found.problems.append(moved(problem, key, statement.line))
    return found


def name_place(block: Block) -> Origin:
    """The name in a block's heading."""
    word = name_word(block.head.node, block.name)
    start, end = (word.start, word.end) if word is not None else (0, 0)
    return Origin(block.key, block.head.line, start, end)


def missing(block: Block, lacks: str, line: str) -> Diagnostic:
    """`missing-line` at the heading: what the block lacks, and what follows from that; `line` is what it may be."""
    head = block.text.partition("\n")[0].rstrip("\r")
    end = Origin(block.key, block.head.line, len(head), len(head))
    deeper = " " * (len(head) - len(head.lstrip()) + 2)
    fix = Fix(f"add `{line}`", (Edit(end, f"\n{deeper}{line}"),), to_fill_in=True)
    return Diagnostic("missing-line", "error", lacks, name_place(block), f"add a line such as `{line}`", fixes=(fix,))


def tried(block: Block, keyword: str) -> bool:
    """True where a line of that keyword is there, though its value cannot be, or it cannot be read, or is misspelt.

    Such a line is reported where it stands: that there is none would be said once too often. Of a heading that cannot
    be read whole nothing is missed: it may be no heading at all.
    """
    if any(one.name == "unreadable-line" and one.at.line == block.head.line for one in block.problems):
        return True
    kinds = (keyword, f"fixing_{keyword}")
    for statement in block.lines:
        if statement.node.kind in kinds:
            return True
    return any(problem.name == "unreadable-line" and _meant_as(block, problem, keyword) for problem in block.problems)


def _meant_as(block: Block, problem: Diagnostic, keyword: str) -> bool:
    lines = block.text.split("\n")
    begins = lines[problem.at.line].split()[:1] if problem.at.line < len(lines) else []
    return begins == [keyword] or any(edit.text == keyword for fix in problem.fixes for edit in fix.edits)
