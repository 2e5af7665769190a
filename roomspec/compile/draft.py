"""A room, rooms or pattern block as read: its facts by face, before names are put in and defaults are spread."""

from collections.abc import Iterable
from functools import lru_cache

from msgspec import Struct

from roomspec.compile.origins import Source
from roomspec.compile.readers import read
from roomspec.compile.reading import moved, told
from roomspec.compile.room_lines import CeilingHead, RoomHead, WallHead
from roomspec.diagnostics.diagnostic import Diagnostic, Origin, Related
from roomspec.names.index import name_word
from roomspec.syntax.tree import Block, Statement

Facts = dict[str, tuple[Source, ...]]
"""Facts by field, in the order written."""


class Face(Struct, frozen=True, gc=False):
    """A wall or a ceiling; `head` is None where its heading cannot be read."""

    kind: str
    name: str
    head: WallHead | CeilingHead | None
    source: Source
    facts: Facts
    block: Block


class Draft(Struct, frozen=True, gc=False):
    """The block: its heading, the facts for all of the room, its walls and ceilings, its problems."""

    name: str
    head: RoomHead
    source: Source
    facts: Facts
    walls: tuple[Face, ...]
    ceilings: tuple[Face, ...]
    problems: tuple[Diagnostic, ...]
    whole: bool
    """False where a wall had to be left out."""

    def stated(self, field: str) -> tuple[Source, ...]:
        """What the room's lines and its walls' lines state of a field."""
        own = self.facts.get(field, ())
        return (*own, *(one for wall in self.walls for one in wall.facts.get(field, ())))


@lru_cache(2048)
def read_draft(block: Block, units: str) -> Draft:
    """The draft of a block, whose bare lengths are in `units`."""
    problems: list[Diagnostic] = []
    head = _head(block, "room", units, problems)
    assert isinstance(head, RoomHead)
    facts = _facts(block.key, "room", block.lines, units, problems)
    walls: dict[str, Face] = {}
    ceilings: dict[str, Face] = {}
    whole = True
    for part in block.parts:
        faces = walls if part.kind == "wall" else ceilings
        face = _face(part, units, problems)
        first = faces.setdefault(face.name, face)
        if first is not face:
            problems.append(_duplicate(face, first, part))
            whole = whole and part.kind != "wall"
        elif part.kind == "wall" and (face.head is None or not face.name):
            whole = False
    source = Source(block.key, block.head.line, block.head.node)
    upright, overhead = tuple(walls.values()), tuple(ceilings.values())
    return Draft(block.name, head, source, facts, upright, overhead, told(problems), whole)


def _face(part: Block, units: str, problems: list[Diagnostic]) -> Face:
    head = _head(part, part.kind, units, problems)
    assert head is None or isinstance(head, WallHead | CeilingHead)
    source = Source(part.key, part.head.line, part.head.node)
    facts = _facts(part.key, part.kind, part.lines, units, problems)
    return Face(part.kind, part.name, head, source, facts, part)


def _head(block: Block, table: str, units: str, problems: list[Diagnostic]) -> object:
    """What the heading states; None where it cannot be read."""
    reading = read(table, block.head.node, units)
    if reading.problems:
        problems.extend(moved(problem, block.key, block.head.line) for problem in reading.problems)
    for fact in reading.facts:
        if fact.field == "head":
            return fact.value
    return None


def _facts(key: str, table: str, lines: Iterable[Statement], units: str, problems: list[Diagnostic]) -> Facts:
    found: Facts = {}
    more: dict[str, list[Source]] = {}
    for statement in lines:
        node = statement.node
        reading = read(table, node, units)
        for fact in reading.facts:
            source = Source(key, statement.line, fact.node or node, fact.value, fact.from_right)
            if fact.field not in found:
                found[fact.field] = (source,)
            else:
                more.setdefault(fact.field, []).append(source)
        if reading.problems:
            problems.extend(moved(problem, key, statement.line) for problem in reading.problems)
    for field, stated in more.items():
        found[field] = (*found[field], *stated)
    return found


def _duplicate(second: Face, first: Face, part: Block) -> Diagnostic:
    related = (Related("the first is here", first.source.place()),)
    word = name_word(part.head.node, part.name)
    at = Origin(part.key, part.head.line, *((word.start, word.end) if word is not None else (0, 0)))
    message = f"there is already a {second.kind} {second.name} in this room; this one is left out"
    return Diagnostic("duplicate-name", "error", message, at, "give it another name", related)
