"""A wall or a ceiling of the model from the facts that hold for it."""

from collections.abc import Mapping
from typing import Any

from msgspec import Struct

from roomspec.compile.draft import Face, Facts
from roomspec.compile.face_lines import Rise
from roomspec.compile.finish_lines import FinishLine
from roomspec.compile.origins import Source
from roomspec.compile.profile import drawn
from roomspec.compile.room_lines import CeilingHead, WallHead
from roomspec.compile.spread import Placed, on_wall, spread
from roomspec.diagnostics.diagnostic import Diagnostic, Edit, Fix, Origin
from roomspec.model.method import Method
from roomspec.model.product import Panel
from roomspec.model.shape import Profile, level
from roomspec.model.wall import Ceiling, Corner, Finish, Wall

TUPLES = (
    "substrates",
    "surfaces",
    "flatness",
    "studs",
    "wet",
    "openings",
    "obstacles",
    "boxing",
    "keeps",
    "points",
    "removals",
    "extras",
    "joints_up",
    "notes",
)
_NEEDS_HEIGHT = frozenset(("openings", "obstacles", "boxing", "points"))


class Catalogue(Struct, frozen=True):
    """The panels and methods that a room names and that could be made."""

    panels: Mapping[str, Panel]
    methods: Mapping[str, Method]


class MadeFace(Struct, frozen=True):
    """A wall or ceiling with the sources of its fields, and its problems. `level` is False where no height is known."""

    value: Any
    fields: dict[str, tuple[Source, ...]]
    problems: tuple[Diagnostic, ...]
    measured: bool = True


def make_wall(face: Face, defaults: Facts, catalogue: Catalogue, alone: bool) -> MadeFace:
    """The wall, taking from `defaults` what it does not say itself. `alone`: the room's only wall, open at its ends."""
    head = face.head
    assert isinstance(head, WallHead)
    problems: list[Diagnostic] = []
    facts = {field: on_wall(stated, head.width) for field, stated in spread(defaults, face.facts).items()}
    heights, floors = facts.pop("heights", ()), facts.pop("floors", ())
    floor = _profile(floors, head.width, 0, problems)
    fields = {"top": _sources(heights), "floor": _sources(floors)}
    values: dict[str, Any] = {}
    if heights:
        top = _profile(heights, head.width, 0, problems)
    else:
        top = level(head.width, 0)
        facts = {field: placed for field, placed in facts.items() if field not in _NEEDS_HEIGHT}
    finishes = facts.pop("finishes", ()) if heights else ()
    if "bare" in facts:
        if "finishes" in face.facts:
            message = f"wall {face.name} is bare and has a finish; its finish is left out"
            problems.append(_impossible(message, facts["bare"][-1].stated.source.place()))
        finishes = ()
    values["finishes"], fields["finishes"] = _finishes(finishes, catalogue, problems, "vertical", "horizontal")
    _fill(values, fields, facts)
    corner = values.get("corner")
    if alone and (corner is None or corner.kind == "inside"):
        values["corner"] = Corner("open")
    rises = [placed.value for placed in (*heights, *floors) if isinstance(placed.value, Rise)]
    wall = Wall(
        face.name,
        head.width,
        head.width_top,
        top,
        floor,
        head.confirmed,
        height_confirmed=all(rise.confirmed for rise in rises),
        **values,
    )
    return MadeFace(wall, fields, tuple(problems), bool(heights))


def make_ceiling(face: Face, catalogue: Catalogue) -> MadeFace:
    """The ceiling; nothing is taken from the room."""
    head = face.head
    assert isinstance(head, CeilingHead)
    problems: list[Diagnostic] = []
    facts = {field: on_wall(stated, head.width or 0) for field, stated in face.facts.items()}
    finishes = facts.pop("finishes", ()) if "bare" not in facts else ()
    values: dict[str, Any] = {}
    fields: dict[str, tuple[Source, ...]] = {}
    values["finishes"], fields["finishes"] = _finishes(finishes, catalogue, problems, "lengthwise", "crosswise")
    facts.pop("finishes", None)
    _fill(values, fields, facts)
    ceiling = Ceiling(face.name, head.width, head.depth, head.confirmed, **values)
    return MadeFace(ceiling, fields, tuple(problems))


def _fill(values: dict[str, Any], fields: dict[str, tuple[Source, ...]], facts: dict[str, tuple[Placed, ...]]) -> None:
    for field, placed in facts.items():
        if field in TUPLES:
            values[field] = tuple(one.value for one in placed)
        elif field in ("bare", "butts", "corner", "upstand"):
            values[field] = placed[-1].value
        else:
            continue
        fields[field] = _sources(placed)


def _sources(placed: tuple[Placed, ...]) -> tuple[Source, ...]:
    return tuple(one.stated.source for one in placed)


def _profile(placed: tuple[Placed, ...], width: int, otherwise: int, problems: list[Diagnostic]) -> Profile:
    rises = [one.value for one in placed if isinstance(one.value, Rise)]
    if not rises:
        return level(width, otherwise)
    if len(rises) == 1 and rises[0].along is None and rises[0].peak is None:
        return ((0, rises[0].start), (width, rises[0].end))
    line, slips = drawn(rises, width)
    problems.extend(_impossible(message, placed[number].stated.source.place()) for number, message in slips)
    return line


def _finishes(
    placed: tuple[Placed, ...], catalogue: Catalogue, problems: list[Diagnostic], first: str, second: str
) -> tuple[tuple[Finish, ...], tuple[Source, ...]]:
    """The finishes whose panel and method are known; `first` and `second` are the directions of this face."""
    finishes, sources = [], []
    for one in placed:
        line, source = one.value, one.stated.source
        assert isinstance(line, FinishLine)
        panel, method = catalogue.panels.get(line.panel), catalogue.methods.get(line.method)
        if panel is None or method is None:
            continue
        direction = line.direction
        if not direction:
            ways = [way for way in panel.lay if way in (first, second)]
            direction = ways[0] if ways else first
            if len(ways) != 1:
                problems.append(_undirected(source, first, second))
        finishes.append(Finish(panel, method, direction, line.bond, line.start, line.rows, line.region))
        sources.append(source)
    return tuple(finishes), tuple(sources)


def _undirected(source: Source, first: str, second: str) -> Diagnostic:
    at = source.place()
    end = Origin(at.block, at.line, at.end, at.end)
    fixes = tuple(Fix(f"add `{way}`", (Edit(end, f" {way}"),)) for way in (first, second))
    message = f"this finish does not say which way the panels run; {first} is taken"
    return Diagnostic("missing-line", "error", message, at, f"add `{first}` or `{second}`", fixes=fixes)


def _impossible(message: str, at: Origin) -> Diagnostic:
    return Diagnostic("impossible-value", "error", message, at)
