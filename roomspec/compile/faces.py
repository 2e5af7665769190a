"""A wall or a ceiling of the model from the facts that hold for it."""

from collections.abc import Mapping
from functools import lru_cache
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from roomspec.compile.draft import Face, Facts
from roomspec.compile.face_lines import Rise
from roomspec.compile.finish_lines import FinishLine
from roomspec.compile.origins import Fields, Source
from roomspec.compile.profile import drawn
from roomspec.compile.room_lines import CeilingHead, WallHead
from roomspec.compile.spread import Defaults, facts_of_wall, on_wall
from roomspec.diagnostics.diagnostic import Diagnostic, Edit, Fix, Origin
from roomspec.model.method import Method
from roomspec.model.product import Panel
from roomspec.model.shape import Profile, level
from roomspec.model.wall import Ceiling, Corner, Finish, Wall

TUPLES = frozenset(
    (
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
)
"""Fields of a face that hold all of their facts, and those that hold one."""
SINGLE = frozenset(("bare", "butts", "corner", "upstand"))
WALL_WAYS = ("vertical", "horizontal")
CEILING_WAYS = ("lengthwise", "crosswise")
_NEEDS_HEIGHT = frozenset(("openings", "obstacles", "boxing", "points"))


class Catalogue(Struct, frozen=True, gc=False):
    """The panels and methods that a room names and that could be made."""

    panels: Mapping[str, Panel]
    methods: Mapping[str, Method]


class MadeFace(Struct, frozen=True, gc=False):
    """A wall or ceiling, the sources of its fields, its problems. `measured` is False where no height is known."""

    value: Any
    fields: Fields
    problems: tuple[Diagnostic, ...]
    measured: bool = True


def make_wall(face: Face, defaults: Defaults, catalogue: Catalogue, alone: bool) -> MadeFace:
    """The wall, taking from `defaults` what it does not say itself. `alone`: the room's only wall, open at its ends."""
    head = face.head
    assert isinstance(head, WallHead)
    width = head.width
    facts = facts_of_wall(defaults, face.facts)
    work = _Work(catalogue, {}, {}, [])
    measured = "heights" in facts
    top, sure = work.profile(facts.get("heights", ()), "top", width)
    floor, level_sure = work.profile(facts["floors"], "floor", width) if "floors" in facts else (level(width, 0), True)
    if "bare" in facts and "finishes" in face.facts:
        message = f"wall {face.name} is bare and has a finish; its finish is left out"
        work.problems.append(_impossible(message, facts["bare"][-1].place()))
    if measured and "bare" not in facts:
        stated = facts.get("finishes", ())
        if defaults.alike is not None and stated is defaults.facts.get("finishes"):
            work.values["finishes"], work.fields["finishes"] = defaults.alike
        else:
            work.finish(on_wall(stated, width), stated, WALL_WAYS)
    if not measured:
        facts = {field: stated for field, stated in facts.items() if field not in _NEEDS_HEIGHT}
    work.fill(facts, width)
    corner = work.values.get("corner")
    if alone and (corner is None or corner.kind == "inside"):
        work.values["corner"] = Corner("open")
    sizes = (width, head.width_top, top, floor, head.confirmed)
    wall = Wall(face.name, *sizes, height_confirmed=sure and level_sure, **work.values)
    return MadeFace(wall, work.fields, tuple(work.problems), measured)


def with_finishes(defaults: Defaults, catalogue: Catalogue) -> Defaults:
    """The defaults with their finishes made, but where a wall would turn one or something is to be said of it."""
    stated = defaults.facts.get("finishes", ())
    if any(one.handed or one.from_right for one in stated):
        return defaults
    work = _Work(catalogue, {}, {}, [])
    work.finish(tuple(one.value for one in stated), stated, WALL_WAYS)
    return defaults if work.problems else replace(defaults, alike=(work.values["finishes"], work.fields["finishes"]))


def make_ceiling(face: Face, catalogue: Catalogue) -> MadeFace:
    """The ceiling; nothing is taken from the room."""
    head = face.head
    assert isinstance(head, CeilingHead)
    facts = face.facts
    work = _Work(catalogue, {}, {}, [])
    if head.width is None:
        facts = {field: tuple(one for one in stated if work.sized(one)) for field, stated in facts.items()}
    width = head.width or 0
    if "bare" not in facts:
        work.finish(on_wall(facts.get("finishes", ()), width), facts.get("finishes", ()), CEILING_WAYS)
    work.fill({field: stated for field, stated in facts.items() if stated}, width)
    ceiling = Ceiling(face.name, head.width, head.depth, head.confirmed, **work.values)
    return MadeFace(ceiling, work.fields, tuple(work.problems))


class _Work(Struct):
    """A face while it is made: its fields' values and sources, and its problems."""

    catalogue: Catalogue
    values: dict[str, Any]
    fields: Fields
    problems: list[Diagnostic]

    def fill(self, facts: Facts, width: int) -> None:
        """The fields that need nothing but their facts."""
        for field, stated in facts.items():
            if field in TUPLES:
                self.values[field] = on_wall(stated, width)
            elif field in SINGLE:
                self.values[field] = stated[-1].value
            else:
                continue
            self.fields[field] = stated

    def profile(self, stated: tuple[Source, ...], field: str, width: int) -> tuple[Profile, bool]:
        """The line that heights or floors draw, and whether all of it is confirmed; at nought where none is said."""
        if not stated:
            return level(width, 0), True
        self.fields[field] = stated
        values = on_wall(stated, width)
        first = values[0]
        if len(values) == 1 and isinstance(first, Rise) and first.along is None and first.peak is None:
            return ((0, first.start), (width, first.end)), first.confirmed
        rises = [rise for rise in values if isinstance(rise, Rise)]
        line, slips = drawn(rises, width)
        self.problems.extend(_impossible(message, stated[number].place()) for number, message in slips)
        return line, all(rise.confirmed for rise in rises)

    def finish(self, lines: tuple[object, ...], stated: tuple[Source, ...], ways: tuple[str, str]) -> None:
        """The finishes whose panel and method are known."""
        finishes, sources = [], []
        for line, one in zip(lines, stated, strict=True):
            assert isinstance(line, FinishLine)
            panel, method = self.catalogue.panels.get(line.panel), self.catalogue.methods.get(line.method)
            if panel is None or method is None:
                continue
            direction = line.direction or self.direction(panel, one, ways)
            finishes.append(_finish(panel, method, direction, line))
            sources.append(one)
        self.values["finishes"], self.fields["finishes"] = tuple(finishes), tuple(sources)

    def direction(self, panel: Panel, source: Source, ways: tuple[str, str]) -> str:
        """Where a finish says none: the one way that the panel may run, else the first way, which is a problem."""
        can = [way for way in ways if way in panel.lay]
        if len(can) != 1:
            self.problems.append(_undirected(source, (can or ways)[0], ways))
        return (can or ways)[0]

    def sized(self, one: Source) -> bool:
        """False where a place is measured from the right end of a ceiling without size."""
        if not one.from_right:
            return True
        message = "this ceiling gives no size to measure from its right end; the line is left out"
        help_ = "measure from the left, or give the ceiling its size"
        self.problems.append(Diagnostic("missing-line", "error", message, one.place(), help_))
        return False


@lru_cache(1024)
def _finish(panel: Panel, method: Method, direction: str, line: FinishLine) -> Finish:
    """The very same for all walls that one line lines."""
    return Finish(panel, method, direction, line.bond, line.start, line.rows, line.region)


def _undirected(source: Source, taken: str, ways: tuple[str, str]) -> Diagnostic:
    at = source.place()
    end = Origin(at.block, at.line, at.end, at.end)
    fixes = tuple(Fix(f"add `{way}`", (Edit(end, f" {way}"),)) for way in ways)
    message = f"this finish does not say which way the panels run; {taken} is taken"
    return Diagnostic("missing-line", "error", message, at, f"add `{ways[0]}` or `{ways[1]}`", fixes=fixes)


def _impossible(message: str, at: Origin) -> Diagnostic:
    return Diagnostic("impossible-value", "error", message, at)
