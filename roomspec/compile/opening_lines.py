"""The lines for what a wall has in it and against it: openings, obstacles, boxing, points."""

from roomspec.compile.amounts import HEIGHT, SMALL, length, number_in
from roomspec.compile.parts import choice, quoted, span, word
from roomspec.compile.reading import Fact, Line, Reader, complain, lacks
from roomspec.compile.regions import at, part, size
from roomspec.model.wall import Boxing, Obstacle, Opening, WallPoint
from roomspec.syntax.tree import Word

OFF_THE_FLOOR = frozenset(("window", "niche", "hatch"))
"""Openings that must say their sill; doors and voids begin at the floor unless they say one."""


def _opening(line: Line) -> tuple[Fact, ...]:
    kind = line.node.kind
    measured, place = size(line), at(line)
    said = _sill(line)
    sill = length(line, said, "a sill", 0, HEIGHT, True) if said is not None else 0
    reveal, deep = part(line, "reveal", "a reveal", 1), part(line, "deep", "a depth", 1)
    lined, panelled = _lined(line), line.part("panelled") is not None
    if said is None and kind in OFF_THE_FLOOR:
        lacks(line, "sill", "how high its sill is", " sill 0", "put it on the floor: `sill 0`")
        return ()
    if kind == "niche" and line.part("deep") is None:
        lacks(line, "deep", "how deep it is")
        return ()
    if measured is None or place is None or sill is None or (kind == "niche" and deep is None):
        return ()
    label, sizes = quoted(line.node), (measured.width, sill, measured.height)
    value = Opening(kind, place[0], *sizes, label, reveal, lined, deep, panelled, measured.confirmed)
    return (Fact("openings", value, place[1]),)


def _sill(line: Line) -> Word | None:
    """The word that says how high the opening begins; a hatch or a void may say `up` for it."""
    said = [word(node, "LENGTH") for kind in ("sill", "up") for node in line.all(kind)]
    return next((found for found in said if found is not None), None) if said else None


def _lined(line: Line) -> tuple[str, ...]:
    """The lined faces; where none is named jambs and head, and a niche's sill. Named without `lined`, a slip."""
    named = list(line.all("face"))
    named += [sill for sill in line.all("sill") if word(sill, "LENGTH") is None]
    if line.part("lined") is not None:
        faces = {choice(face) for face in named}
        usual = ("head", "jambs", "sill") if line.node.kind == "niche" else ("head", "jambs")
        return tuple(face for face in ("head", "jambs", "sill") if face in faces) or usual
    for face in named[:1]:
        text = choice(face)
        message = f"`{text}` names a face to be lined, but `lined` is not said"
        complain(line, "missing-line", message, span(face), "", (f"lined {text}",))
    return ()


def _obstacle(line: Line) -> tuple[Fact, ...]:
    measured, place = size(line), at(line)
    sill = part(line, "sill", "a sill", 0, HEIGHT) or 0
    slope = part(line, "slope", "a height", 1, HEIGHT)
    clear = part(line, "clear", "a distance", 0, SMALL)
    if measured is None or place is None:
        return ()
    kind, label = line.node.kind, quoted(line.node)
    sizes = (measured.width, measured.height, slope, sill)
    return (Fact("obstacles", Obstacle(kind, place[0], *sizes, label, clear, measured.confirmed), place[1]),)


def _boxing(line: Line) -> tuple[Fact, ...]:
    measured, place = size(line), at(line)
    sill, deep = part(line, "sill", "a sill", 0, HEIGHT) or 0, part(line, "deep", "a depth", 1)
    if line.part("deep") is None:
        lacks(line, "deep", "how deep it is")
    if measured is None or place is None or deep is None:
        return ()
    value = Boxing(place[0], measured.width, measured.height, deep, sill, quoted(line.node), measured.confirmed)
    return (Fact("boxing", value, place[1]),)


def _point(line: Line) -> tuple[Fact, ...]:
    place, up = at(line), part(line, "up", "a height", 0, HEIGHT)
    load = line.part("load")
    mass = number_in(line, word(load, "MASS"), "MASS", "a load", 0, 5000) if load is not None else None
    if line.part("up") is None:
        lacks(line, "up", "how high above the floor it is")
    if place is None or up is None:
        return ()
    return (Fact("points", WallPoint(line.node.kind, place[0], up, quoted(line.node), mass), place[1]),)


OPENINGS: dict[str, Reader] = {
    **dict.fromkeys(("door", "window", "hatch", "void", "niche"), _opening),
    **dict.fromkeys(("bath", "tray", "units", "heat"), _obstacle),
    "boxing": _boxing,
    **dict.fromkeys(("socket", "switch", "pipe", "fixture"), _point),
}
"""What a wall or a ceiling may have in it or against it."""
