"""A room of the model from its block, its pattern's block, and the panels and methods that they name."""

from collections.abc import Collection
from functools import lru_cache
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from roomspec.compile.draft import Draft, Face, Facts, read_draft
from roomspec.compile.faces import Catalogue, MadeFace, make_ceiling, make_wall, with_finishes
from roomspec.compile.gather import tried
from roomspec.compile.mirror import mirrored_ceiling, mirrored_diagonal, mirrored_walls
from roomspec.compile.origins import Fields, Origins, Path
from roomspec.compile.reading import MOST, told
from roomspec.compile.room_problems import no_such_face, unknown_end, without_height
from roomspec.compile.spread import DEFAULTS, Defaults, defaults_among, defaults_of, spread
from roomspec.diagnostics.diagnostic import Diagnostic
from roomspec.model.method import Method
from roomspec.model.product import Panel
from roomspec.model.room import Diagonal, Room
from roomspec.model.wall import Ceiling, Wall
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


class _PatternWalls(Struct, frozen=True, gc=False):
    """A pattern's walls in a room that adds nothing to them, and what is known of them."""

    walls: tuple[Wall, ...]
    faces: dict[Path, Origins]
    problems: tuple[Diagnostic, ...]
    unmeasured: tuple[str, ...]


class _Work:
    """A room while it is put together."""

    def __init__(self) -> None:
        self.problems: list[Diagnostic] = []
        self.fields: Fields = {}
        self.faces: dict[Path, Origins] = {}
        self.unmeasured: list[str] = []

    def forget(self, kind: str, names: Collection[str]) -> None:
        """Drop what was known of the pattern's walls or ceilings that others take the place of."""
        if not names:
            return
        self.faces = {face: found for face, found in self.faces.items() if face[0] != kind or face[1] not in names}
        if kind == "wall":
            self.unmeasured = [name for name in self.unmeasured if name not in names]

    def take(self, made: _PatternWalls) -> tuple[Wall, ...]:
        """Take over a pattern's walls as they are."""
        self.faces.update(made.faces)
        self.problems.extend(made.problems)
        self.unmeasured.extend(made.unmeasured)
        return made.walls

    def few(self) -> bool:
        """True while what is said will be told: the nearest names are looked for no longer than that."""
        return len(self.problems) <= MOST

    def keep(self, kind: str, face: Face, made: MadeFace) -> None:
        self.faces[kind, face.name] = Origins(face.source, made.fields)
        self.problems.extend(made.problems)
        if not made.measured and not tried(face.block, "height"):
            self.unmeasured.append(face.name)


@lru_cache(1024)
def make_room(own: Text, pattern: Text | None, panels: tuple[Panel, ...], methods: tuple[Method, ...]) -> MadeRoom:
    """The room that a block describes, by itself or as a pattern with lines of its own.

    A wall of its own takes the place of the pattern's wall of that name with all of its lines; its other lines go over
    the pattern's. Its own lines are measured in the room as it is, mirrored or not.
    """
    catalogue = Catalogue({panel.name: panel for panel in panels}, {method.name: method for method in methods})
    draft = read_draft(own.block, own.units)
    base = read_draft(pattern.block, pattern.units) if pattern is not None else None
    work = _Work()
    if pattern is not None and not draft.walls and DEFAULTS.isdisjoint(draft.facts):
        walls = work.take(_of_pattern(pattern, draft.head.mirrored, panels, methods))
    else:
        walls = _walls(draft, base, catalogue, work)
    ceilings = _ceilings(draft, base, catalogue, work)
    facts = spread(base.facts, draft.facts) if base is not None else draft.facts
    diagonals = _diagonals(draft, base, walls, work)
    blocks = (own.block,) if pattern is None else (own.block, pattern.block)
    if work.unmeasured and not any(tried(block, "height") for block in blocks):
        work.problems.append(without_height(own.block, work.unmeasured, own.units))
    values: dict[str, Any] = {}
    for field, many in (("level", False), ("purpose", False), ("access", False), ("extras", True), ("notes", True)):
        stated = facts.get(field, ())
        if stated:
            values[field] = tuple(one.value for one in stated) if many else stated[-1].value
            work.fields[field] = stated if many else stated[-1:]
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
    return MadeRoom(room, tuple(dict.fromkeys(problems)), Origins(draft.source, work.fields, work.faces))


@lru_cache(1024)
def named(room: Room, name: str) -> Room:
    """The room under one of its names."""
    return replace(room, name=name)


@lru_cache(2048)
def _of_pattern(pattern: Text, handed: bool, panels: tuple[Panel, ...], methods: tuple[Method, ...]) -> _PatternWalls:
    base = read_draft(pattern.block, pattern.units)
    catalogue = Catalogue({panel.name: panel for panel in panels}, {method.name: method for method in methods})
    work = _Work()
    faces = _readable(base.walls)
    walls = _own_walls(base.facts, faces, catalogue, len(faces) == 1, work)
    walls = mirrored_walls(walls) if handed else walls
    return _PatternWalls(walls, work.faces, tuple(work.problems), tuple(work.unmeasured))


def _walls(draft: Draft, base: Draft | None, catalogue: Catalogue, work: _Work) -> tuple[Wall, ...]:
    if base is None:
        return _own_walls(draft.facts, _readable(draft.walls), catalogue, len(draft.walls) == 1, work)
    handed = draft.head.mirrored
    own = {face.name: face for face in draft.walls if face.name}
    faces = _readable(base.walls)
    # The pattern's walls are made as written and mirrored whole, so lines of this room are turned to meet them.
    says = [*(face.facts for face in faces if face.name not in own), *(face.facts for face in own.values())]
    defaults = defaults_among(spread(defaults_of(base.facts), defaults_of(draft.facts, handed)), says)
    walls = tuple(_wall(face, defaults, catalogue, len(faces) == 1, work) for face in faces)
    walls = mirrored_walls(walls) if handed else walls
    overs = defaults_among(spread(defaults_of(base.facts, handed), defaults_of(draft.facts)), says)
    known = {wall.name for wall in walls}
    work.forget("wall", own.keys() & known)
    for face in own.values():
        if face.name not in known:
            work.problems.append(no_such_face(face, draft.head.pattern, known if work.few() else ()))
    replaced = {face.name: face for face in _readable(tuple(own.values()))}
    return tuple(
        _wall(replaced[wall.name], overs, catalogue, len(faces) == 1, work) if wall.name in replaced else wall
        for wall in walls
        if wall.name in replaced or wall.name not in own
    )


def _own_walls(
    facts: Facts, faces: tuple[Face, ...], catalogue: Catalogue, alone: bool, work: _Work
) -> tuple[Wall, ...]:
    """The walls of a room or a pattern as it says them itself."""
    defaults = with_finishes(defaults_among(defaults_of(facts), [face.facts for face in faces]), catalogue)
    return tuple([_wall(face, defaults, catalogue, alone, work) for face in faces])


def _wall(face: Face, defaults: Defaults, catalogue: Catalogue, alone: bool, work: _Work) -> Wall:
    made = make_wall(face, defaults, catalogue, alone)
    work.keep("wall", face, made)
    wall = made.value
    assert isinstance(wall, Wall)
    return wall


def _readable(faces: tuple[Face, ...]) -> tuple[Face, ...]:
    return tuple(face for face in faces if face.head is not None and face.name)


def _ceilings(draft: Draft, base: Draft | None, catalogue: Catalogue, work: _Work) -> tuple[Ceiling, ...]:
    made: dict[str, Ceiling] = {}
    own = _readable(draft.ceilings)
    for face in _readable(base.ceilings) if base is not None else ():
        ceiling = make_ceiling(face, catalogue)
        work.keep("ceiling", face, ceiling)
        made[face.name] = mirrored_ceiling(ceiling.value) if draft.head.mirrored else ceiling.value
    work.forget("ceiling", {face.name for face in own})
    for face in own:
        if base is not None and face.name not in made:
            work.problems.append(no_such_face(face, draft.head.pattern, made if work.few() else ()))
            continue
        ceiling = make_ceiling(face, catalogue)
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
            work.problems.append(unknown_end(one, unknown, names if work.few() else ()))
    if sources:
        work.fields["diagonals"] = tuple(sources)
    return tuple(kept)
