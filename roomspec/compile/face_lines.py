"""The lines of a wall or a ceiling that say how it was found: heights, substrate, surface, what is kept and removed."""

from decimal import Decimal

from msgspec import Struct

from roomspec.compile.amounts import BESIDE, HEIGHT, METRES, SMALL, STRAIGHTEDGE, WALL, length, number_in
from roomspec.compile.parts import child, choice, has, quoted, span, word, words
from roomspec.compile.reading import Fact, Line, Reader, complain
from roomspec.compile.regions import along, at, confirmed, dimension, region
from roomspec.model.wall import Corner, Flatness, Keep, Layer, Removal, Studs, Substrate, Surface, Upstand, Wet
from roomspec.syntax.tree import Word


class Rise(Struct, frozen=True, gc=False):
    """A `height` or `floor` line: from `start` to `end` along its part (None: all of the wall), over a peak (x, y)."""

    start: int
    end: int
    peak: tuple[int, int] | None = None
    along: tuple[int, int] | None = None
    confirmed: bool = True


def _height(line: Line) -> tuple[Fact, ...]:
    own = line.part("dimension")
    ends = word(line.node, "LENGTH")
    start = dimension(line, own, "a height", HEIGHT, 0)
    end = length(line, ends, "a height", 0, HEIGHT, True) if ends is not None else start
    top = line.part("peak")
    peak = None
    if top is not None:
        high, place = words(top, "LENGTH")
        y = length(line, high, "a height", 1, HEIGHT, True)
        x = length(line, place, "a place", 0, WALL, True)
        if x is None or y is None:
            return ()
        peak = (x, y)
    if start is None or end is None:
        return ()
    if start == 0 and end == 0 and peak is None:
        complain(line, "impossible-value", "a height of 0 mm leaves no wall", span(line.node))
        return ()
    return _risen(line, "heights", Rise(start, end, peak, along(line), confirmed(own)))


def _floor(line: Line) -> tuple[Fact, ...]:
    own = line.part("dimension")
    start = dimension(line, own, "a floor", HEIGHT, -HEIGHT)
    end = length(line, word(line.node, "LENGTH"), "a floor", -HEIGHT, HEIGHT, True)
    if start is None or end is None:
        return ()
    return _risen(line, "floors", Rise(start, end, None, along(line), confirmed(own)))


def _risen(line: Line, field: str, rise: Rise) -> tuple[Fact, ...]:
    """The fact, unless it is for a part of the wall that cannot be."""
    return (Fact(field, rise),) if rise.along is not None or line.part("along") is None else ()


def _on(line: Line) -> tuple[Fact, ...]:
    layers = []
    for layer in line.all("layer"):
        weighs = number_in(line, word(layer, "WEIGHT"), "WEIGHT", "a weight", Decimal(0), 1000)
        layers.append(Layer(choice(child(layer, "substrate")), weighs))
    where = region(line)
    return (Fact("substrates", Substrate(tuple(layers), where)),) if where is not None else ()


def _surface(line: Line) -> tuple[Fact, ...]:
    where = region(line)
    return (Fact("surfaces", Surface(choice(line.part("condition")), where)),) if where is not None else ()


def _flat(line: Line) -> tuple[Fact, ...]:
    gap, under = words(line.node, "LENGTH")
    deviation = length(line, gap, "a deviation", 0, SMALL)
    straightedge = length(line, under, "a straightedge", 1, STRAIGHTEDGE)
    where = region(line)
    if deviation is None or straightedge is None or where is None:
        return ()
    if deviation >= straightedge:
        complain(line, "impossible-value", f"a deviation of {gap.text} is more than the straightedge's length", gap)
        return ()
    return (Fact("flatness", Flatness(deviation, straightedge, where)),)


def _studs(line: Line) -> tuple[Fact, ...]:
    every = length(line, word(line.node, "LENGTH"), "a spacing of studs", BESIDE, SMALL)
    direction = choice(line.part("orientation")) or "vertical"
    where = region(line)
    return (Fact("studs", Studs(every, direction, where)),) if every is not None and where is not None else ()


def _wet(line: Line) -> tuple[Fact, ...]:
    where = region(line)
    return (Fact("wet", Wet(choice(line.part("exposure")), where)),) if where is not None else ()


def _flag(field: str) -> Reader:
    def reader(_line: Line) -> tuple[Fact, ...]:
        return (Fact(field, True),)

    return reader


def _corner(line: Line) -> tuple[Fact, ...]:
    kind = next(part.text for part in line.node.parts[1:] if isinstance(part, Word))
    found = word(line.node, "ANGLE")
    if found is None:
        return (Fact("corner", Corner(kind)),)
    angle = number_in(line, found, "ANGLE", "an angle", -3600, 3600)
    if angle is None:
        return ()
    if not 0 < angle < 180:
        help_ = "the angle of a corner is more than 0 and less than 180; a corner that turns away is `outside`"
        complain(line, "impossible-value", f"an angle of {found.text} is no corner", found, help_)
        return ()
    return (Fact("corner", Corner(kind, angle)),)


def _joints(line: Line) -> tuple[Fact, ...]:
    places = (length(line, found, "a place", 1, HEIGHT, True) for found in words(line.node, "LENGTH"))
    return tuple(Fact("joints_up", place) for place in places if place is not None)


def _keep(line: Line) -> tuple[Fact, ...]:
    size = length(line, word(line.node, "LENGTH"), "a kept trim", 1, METRES)
    return () if size is None else (Fact("keeps", Keep(choice(line.part("kept")), size)),)


def _upstand(line: Line) -> tuple[Fact, ...]:
    sizes = tuple(length(line, found, "an upstand", 1, METRES) for found in words(line.node, "LENGTH"))
    height, lap = sizes[0], sizes[-1] if has(line.node, "lap") else None
    if height is None:
        return ()
    if lap is not None and lap > height:
        complain(line, "impossible-value", "the lap is more than the upstand's height", words(line.node, "LENGTH")[-1])
        return ()
    return (Fact("upstand", Upstand(height, lap)),)


def _remove(line: Line) -> tuple[Fact, ...]:
    kept = line.part("kept")
    what = choice(kept or line.part("substrate") or line.part("covering"))
    label = quoted(line.node)
    if not what:
        what = "radiator" if has(line.node, "radiator") else label
    found = word(line.node, "LENGTH")
    size = length(line, found, f"a {what}", 1, METRES) if found is not None else None
    place = at(line) if line.part("at") is not None else None
    where = region(line)
    if where is None:
        return ()
    value = Removal(what, size, place[0] if place else None, where, label)
    return (Fact("removals", value, place is not None and place[1]),)


SURVEY: dict[str, Reader] = {
    "height": _height,
    "floor": _floor,
    "on": _on,
    "surface": _surface,
    "flat": _flat,
    "studs": _studs,
    "wet": _wet,
    "bare": _flag("bare"),
    "butts": _flag("butts"),
    "corner": _corner,
    "joints": _joints,
    "keep": _keep,
    "upstand": _upstand,
    "remove": _remove,
}
"""Statements that a room (for all its walls), a wall or a ceiling may hold."""
