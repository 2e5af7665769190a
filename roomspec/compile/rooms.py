"""A room of the model from its block, its pattern's block, and the panels and methods that they name."""

from functools import lru_cache
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from roomspec.compile.draft import Draft, Face, Facts, read_draft
from roomspec.compile.faces import Catalogue, MadeFace, make_ceiling, make_wall
from roomspec.compile.gather import name_place
from roomspec.compile.mirror import mirrored_ceiling, mirrored_diagonal, mirrored_walls
from roomspec.compile.origins import Fields, Origins, Source
from roomspec.compile.parts import every_word
from roomspec.compile.reading import told
from roomspec.compile.spread import defaults_of, spread
from roomspec.diagnostics.diagnostic import Diagnostic, Origin
from roomspec.model.method import Method
from roomspec.model.product import Panel
from roomspec.model.room import Diagonal, Room
from roomspec.model.wall import Ceiling, Wall
from roomspec.names.suggest import offered
from roomspec.syntax.tree import Block


class Text(Struct, frozen=True, cache_hash=True, gc=False):
    """A block and the unit of its file's bare lengths."""

    block: Block
    units: str


class MadeRoom(Struct, frozen=True, gc=False):
    """A room without its name, its problems, where its facts are written."""

    value: Room
    problems: tuple[Diagnostic, ...]
    origins: Origins


class _Work:
    """A room while it is put together."""

    def __init__(self) -> None:
        self.problems: list[Diagnostic] = []
        self.fields: Fields = {}
        self.unmeasured: list[str] = []

    def forget(self, kind: str, name: str) -> None:
        """Drop what was known of the pattern's wall that another takes the place of."""
        for path in [path for path in self.fields if path[:2] == (kind, name)]:
            del self.fields[path]
        if name in self.unmeasured:
            self.unmeasured.remove(name)

    def keep(self, kind: str, face: Face, made: MadeFace) -> None:
        self.fields[kind, face.name] = (face.source,)
        for field, sources in made.fields.items():
            if sources:
                self.fields[kind, face.name, field] = sources
        self.problems.extend(made.problems)
        if not made.measured and not face.tried:
            self.unmeasured.append(face.name)


@lru_cache(4096)
def make_room(own: Text, pattern: Text | None, panels: tuple[Panel, ...], methods: tuple[Method, ...]) -> MadeRoom:
    """The room that a block describes, by itself or as a pattern with lines of its own.

    A wall of its own takes the place of the pattern's wall of that name with all of its lines; its other lines go over
    the pattern's. Its own lines are measured in the room as it is, mirrored or not.
    """
    catalogue = Catalogue({panel.name: panel for panel in panels}, {method.name: method for method in methods})
    draft = read_draft(own.block, own.units)
    base = read_draft(pattern.block, pattern.units) if pattern is not None else None
    work = _Work()
    walls = _walls(draft, base, catalogue, work)
    ceilings = _ceilings(draft, base, catalogue, work)
    facts = spread(base.facts, draft.facts) if base is not None else draft.facts
    diagonals = _diagonals(draft, base, walls, work)
    if work.unmeasured and not draft.tried and not (base is not None and base.tried):
        work.problems.append(_without_height(own.block, work.unmeasured))
    values: dict[str, Any] = {}
    for field, many in (("level", False), ("purpose", False), ("access", False), ("extras", True), ("notes", True)):
        stated = facts.get(field, ())
        if stated:
            values[field] = tuple(one.value for one in stated) if many else stated[-1].value
            work.fields[(field,)] = stated if many else stated[-1:]
    room = Room(
        "",
        draft.head.title or (base.head.title if base is not None else ""),
        pattern=draft.head.pattern,
        handed=draft.head.mirrored,
        walls=walls,
        ceilings=ceilings,
        diagonals=diagonals,
        incomplete=not draft.whole or (base is not None and not base.whole),
        **values,
    )
    problems = (*draft.problems, *(base.problems if base is not None else ()), *told(work.problems))
    return MadeRoom(room, tuple(dict.fromkeys(problems)), Origins(draft.source, work.fields))


@lru_cache(8192)
def named(room: Room, name: str) -> Room:
    """The room under one of its names."""
    return replace(room, name=name)


def _walls(draft: Draft, base: Draft | None, catalogue: Catalogue, work: _Work) -> tuple[Wall, ...]:
    if base is None:
        defaults = defaults_of(draft.facts)
        return tuple(_wall(face, defaults, catalogue, len(draft.walls) == 1, work) for face in _readable(draft.walls))
    handed = draft.head.mirrored
    own = {face.name: face for face in draft.walls if face.name}
    faces = _readable(base.walls)
    # The pattern's walls are made as written and mirrored whole, so lines of this room are turned to meet them.
    defaults = spread(defaults_of(base.facts), defaults_of(draft.facts, handed))
    walls = tuple(_wall(face, defaults, catalogue, len(faces) == 1, work) for face in faces)
    walls = mirrored_walls(walls) if handed else walls
    overs = spread(defaults_of(base.facts, handed), defaults_of(draft.facts))
    known = {wall.name for wall in walls}
    for face in own.values():
        if face.name in known:
            work.forget("wall", face.name)
        else:
            work.problems.append(_no_such_wall(face, "wall", draft.head.pattern, sorted(known)))
    replaced = {face.name: face for face in _readable(tuple(own.values()))}
    return tuple(
        _wall(replaced[wall.name], overs, catalogue, len(faces) == 1, work) if wall.name in replaced else wall
        for wall in walls
        if wall.name in replaced or wall.name not in own
    )


def _wall(face: Face, defaults: Facts, catalogue: Catalogue, alone: bool, work: _Work) -> Wall:
    made = make_wall(face, defaults, catalogue, alone)
    work.keep("wall", face, made)
    wall = made.value
    assert isinstance(wall, Wall)
    return wall


def _readable(faces: tuple[Face, ...]) -> tuple[Face, ...]:
    return tuple(face for face in faces if face.head is not None and face.name)


def _ceilings(draft: Draft, base: Draft | None, catalogue: Catalogue, work: _Work) -> tuple[Ceiling, ...]:
    made: dict[str, Ceiling] = {}
    for face in _readable(base.ceilings) if base is not None else ():
        ceiling = make_ceiling(face, catalogue)
        work.keep("ceiling", face, ceiling)
        made[face.name] = mirrored_ceiling(ceiling.value) if draft.head.mirrored else ceiling.value
    for face in _readable(draft.ceilings):
        if base is not None and face.name not in made:
            work.problems.append(_no_such_wall(face, "ceiling", draft.head.pattern, list(made)))
            continue
        ceiling = make_ceiling(face, catalogue)
        work.forget("ceiling", face.name)
        work.keep("ceiling", face, ceiling)
        made[face.name] = ceiling.value
    return tuple(made.values())


def _diagonals(draft: Draft, base: Draft | None, walls: tuple[Wall, ...], work: _Work) -> tuple[Diagonal, ...]:
    """The room's own, then the pattern's where no wall is replaced: another wall makes another diagonal."""
    found = draft.stated("diagonals")
    handed = False
    if base is not None and not draft.walls and not found:
        found = base.stated("diagonals")
        handed = draft.head.mirrored
    names = {wall.name for wall in walls}
    kept, sources = [], []
    for one in found:
        diagonal = one.value
        assert isinstance(diagonal, Diagonal)
        unknown = next((name for name in (diagonal.start, diagonal.end) if name not in names), None)
        if unknown is None:
            kept.append(mirrored_diagonal(diagonal) if handed else diagonal)
            sources.append(one)
        elif not draft.whole or (base is not None and not base.whole):
            continue
        else:
            work.problems.append(_unknown_end(one, unknown, sorted(names)))
    if sources:
        work.fields[("diagonals",)] = tuple(sources)
    return tuple(kept)


def _without_height(block: Block, walls: list[str]) -> Diagnostic:
    many = len(walls) > 1
    which = f"wall{'s' if many else ''} {', '.join(walls[:8])}{' ...' if len(walls) > 8 else ''}"
    message = f"nothing says how high {which} {'are' if many else 'is'}; {'they are' if many else 'it is'} left empty"
    return Diagnostic("missing-line", "error", message, name_place(block), "add a line such as `height 2400`")


def _no_such_wall(face: Face, kind: str, pattern: str, known: list[str]) -> Diagnostic:
    at = _name_at(face.source, face.name)
    help_, fixes = offered(at, face.name, known)
    message = f"pattern {pattern} has no {kind} {face.name}; it is left out"
    help_ = help_ or f"its {kind}s are {', '.join(known[:8]) or 'none'}"
    return Diagnostic("unknown-name", "error", message, at, help_, fixes=fixes)


def _unknown_end(source: Source, name: str, known: list[str]) -> Diagnostic:
    at = _name_at(source, name)
    help_, fixes = offered(at, name, known)
    message = f"this room has no wall {name}; the diagonal is left out"
    help_ = help_ or f"its walls are {', '.join(known[:8])}"
    return Diagnostic("unknown-name", "error", message, at, help_, fixes=fixes)


def _name_at(source: Source, name: str) -> Origin:
    found = next((word for word in every_word(source.node) if word.text == name), None)
    place = source.place()
    return Origin(place.block, place.line, found.start, found.end) if found is not None else place
