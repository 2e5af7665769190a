"""The lines of a wall or a ceiling as text."""

from itertools import pairwise

from msgspec import Struct
from pen import Pen
from written_wares import UNQUOTED, price

from roomspec.model.room import Diagonal
from roomspec.model.shape import Profile, SetOut
from roomspec.model.wall import (
    Boxing,
    Extra,
    Finish,
    Flatness,
    Keep,
    Obstacle,
    Opening,
    Removal,
    Studs,
    Substrate,
    Surface,
    Upstand,
    WallPoint,
    Wet,
)

USUAL_FACES = {"niche": ("head", "jambs", "sill")}


class Rise(Struct, frozen=True):
    """A line that draws a height or a floor, or a part of it; over a peak (x, y) where there is one."""

    start: int
    end: int
    peak: tuple[int, int] | None = None
    along: tuple[int, int] | None = None
    sure: bool = True


def rises(pen: Pen, profile: Profile, sure: bool, peaks: bool = True) -> tuple[Rise, ...]:
    """One line for all of the wall, or a part for each slope; two slopes that meet may be a peak."""
    first, last = profile[0], profile[-1]
    if len(profile) == 2:
        found = [Rise(first[1], last[1])]
    elif peaks and len(profile) == 3 and pen.some() and first[0] < profile[1][0] < last[0]:
        whole = None if pen.some() else (first[0], last[0])
        found = [Rise(first[1], last[1], profile[1], whole)]
    else:
        pairs = pairwise(profile)
        found = [Rise(one[1], two[1], None, (one[0], two[0])) for one, two in pairs if one[0] < two[0]]
        found = _on_ground(pen, found)
    unsure = set(range(len(found))) if pen.some() else {pen.chance.randrange(len(found))}
    return tuple(
        Rise(one.start, one.end, one.peak, one.along, sure or number not in unsure) for number, one in enumerate(found)
    )


def _on_ground(pen: Pen, parts: list[Rise]) -> list[Rise]:
    """The parts in any order; one that is level may be said for the whole wall, and the others be drawn on it."""
    flat = [part for part in parts if part.start == part.end]
    if flat and len(parts) > 1 and pen.some():
        ground = pen.one(flat)
        parts = [part for part in parts if part != ground] + [Rise(ground.start, ground.end)]
    pen.chance.shuffle(parts)
    return parts


def height(pen: Pen, rise: Rise) -> str:
    """`height 2400 to 2700 peak 3100 at 1800 from 0 to 3600`."""
    end = "" if rise.end == rise.start and pen.some() else f"to {pen.length(rise.end, True)}"
    peak = f"peak {pen.length(rise.peak[1], True)} at {pen.length(rise.peak[0], True)}" if rise.peak else ""
    return pen.line("height", _start(pen, rise), end, peak, pen.span("from", *(rise.along or (None, None))))


def floor(pen: Pen, rise: Rise) -> str:
    """`floor 0 to 13 from 0 to 3600`."""
    along = pen.span("from", *(rise.along or (None, None)))
    return pen.line("floor", _start(pen, rise), "to", pen.length(rise.end, True), along)


def _start(pen: Pen, rise: Rise) -> str:
    return ("" if rise.sure else "about ") + pen.length(rise.start, True)


def substrate(pen: Pen, on: Substrate) -> str:
    """`on tile over plaster 14 kg/m2`."""
    layers = (
        pen.line(layer.kind, pen.number(layer.weighs, "kg/m2") if layer.weighs is not None else "")
        for layer in on.layers
    )
    return pen.line("on", " over ".join(layers), pen.region(on.region))


def surface(pen: Pen, surface: Surface) -> str:
    """`surface sound`."""
    return pen.line("surface", surface.condition, pen.region(surface.region))


def flatness(pen: Pen, flat: Flatness) -> str:
    """`flat 3 under 2 m`."""
    return pen.line("flat", pen.length(flat.gap), "under", pen.length(flat.under), pen.region(flat.region))


def studs(pen: Pen, studs: Studs) -> str:
    """`studs every 600`."""
    way = pen.usual(studs.direction, studs.direction == "vertical")
    return pen.line("studs every", pen.length(studs.every), way, pen.region(studs.region))


def wet(pen: Pen, wet: Wet) -> str:
    """`wet direct`."""
    return pen.line("wet", wet.exposure, pen.region(wet.region))


def keep(pen: Pen, keep: Keep) -> str:
    """`keep skirting 120`."""
    return f"keep {keep.kind} {pen.length(keep.size)}"


def upstand(pen: Pen, upstand: Upstand) -> str:
    """`upstand 100 lap 50`."""
    lap = "butt" if upstand.lap is None else f"lap {pen.length(upstand.lap)}"
    return f"upstand {pen.length(upstand.height)} {lap}"


def removal(pen: Pen, removal: Removal, width: int | None = None) -> str:
    """What goes, with its size, its region or its place."""
    what = removal.what if removal.what in UNQUOTED else pen.text(removal.what)
    label = pen.titled(removal.label) if removal.what == "radiator" else ""
    size = pen.length(removal.size) if removal.size is not None else ""
    at = place(pen, removal.x, 0, width) if removal.x is not None else ""
    return pen.line("remove", what, label, size, at, pen.region(removal.region))


def finish(pen: Pen, finish: Finish) -> str:
    """Panel and method by name, and how the panels are set out."""
    panel, region = finish.panel, finish.region
    ways = [way for way in ("vertical", "horizontal") if way in panel.lay]
    options = pen.options(
        pen.usual(finish.direction, ways == [finish.direction]),
        pen.usual(f"bond {finish.bond}", finish.bond == "stacked"),
        pen.usual(_set_out(pen, "start", finish.start), finish.start == SetOut("left")),
        pen.usual(_set_out(pen, "rows", finish.rows), finish.rows == SetOut("bottom")),
        pen.span("from", region.left, region.right),
        pen.span("up", region.bottom, region.top),
    )
    return pen.line("finish", panel.name, "by", finish.method.name, options)


def _set_out(pen: Pen, keyword: str, way: SetOut) -> str:
    return pen.line(keyword, way.way, f"at {pen.length(way.at, True)}" if way.at is not None else "")


def place(pen: Pen, x: int, size: int, width: int | None) -> str:
    """`at 500`; from the right where the thing lies on the wall."""
    if width is not None and x + size <= width and pen.some():
        return f"at {pen.length(width - x - size, True)} from right"
    return f"at {pen.length(x, True)}"


def opening(pen: Pen, opening: Opening, width: int | None) -> str:
    """Its size, then its options in any order."""
    sill = pen.one(("sill", "up") if opening.kind in ("hatch", "void") else ("sill",))
    floor = opening.sill == 0 and opening.kind in ("door", "void")
    options = pen.options(
        place(pen, opening.x, opening.width, width),
        pen.usual(f"{sill} {pen.length(opening.sill, True)}", floor),
        f"reveal {pen.length(opening.reveal, True)}" if opening.reveal is not None else "",
        f"deep {pen.length(opening.deep, True)}" if opening.deep is not None else "",
        _lined(pen, opening),
        "panelled" if opening.panelled else "",
    )
    size = pen.surveyed(opening.width, opening.height, opening.confirmed)
    return pen.line(opening.kind, pen.titled(opening.label), size, options)


def _lined(pen: Pen, opening: Opening) -> str:
    if not opening.lined:
        return ""
    usual = USUAL_FACES.get(opening.kind, ("head", "jambs"))
    return pen.line("lined", pen.usual(pen.options(*opening.lined), opening.lined == usual))


def obstacle(pen: Pen, obstacle: Obstacle, width: int) -> str:
    """What stands against the wall."""
    size = pen.surveyed(obstacle.width, obstacle.height, obstacle.confirmed)
    slope = f"to {pen.length(obstacle.end_height, True)}" if obstacle.end_height is not None else ""
    options = pen.options(
        place(pen, obstacle.x, obstacle.width, width),
        pen.usual(f"sill {pen.length(obstacle.sill, True)}", obstacle.sill == 0),
        f"clear {pen.length(obstacle.clear, True)}" if obstacle.clear is not None else "",
    )
    return pen.line(obstacle.kind, pen.titled(obstacle.label), size, slope, options)


def boxing(pen: Pen, boxing: Boxing, width: int) -> str:
    """A box out from the wall."""
    options = pen.options(
        place(pen, boxing.x, boxing.width, width),
        pen.usual(f"sill {pen.length(boxing.sill, True)}", boxing.sill == 0),
        f"deep {pen.length(boxing.deep, True)}",
    )
    size = pen.surveyed(boxing.width, boxing.height, boxing.confirmed)
    return pen.line("boxing", pen.titled(boxing.label), size, options)


def point(pen: Pen, point: WallPoint, width: int | None) -> str:
    """A socket, switch, pipe or fixture."""
    options = pen.options(
        place(pen, point.x, 0, width),
        f"up {pen.length(point.up, True)}",
        f"load {pen.number(point.load, 'kg')}" if point.load is not None else "",
    )
    return pen.line(point.kind, pen.titled(point.label), options)


def extra(pen: Pen, extra: Extra) -> str:
    """A sum, or a quantity at its price."""
    amount, per = extra.price.amount, extra.price.per
    if amount < 0 or (per == "each" and extra.quantity == 1 and pen.some()):
        sign = "-" if amount < 0 else ""
        return f"extra {pen.text(extra.text)} {sign}{pen.number(abs(amount))} each"
    units = {"m2": ("m2", "m²"), "m": ("m",), "h": ("h", "hours")}.get(per, ())
    return f"extra {pen.text(extra.text)} {pen.number(extra.quantity, *units)} at {price(pen, extra.price)}"


def diagonal(pen: Pen, line: Diagonal) -> str:
    """`diagonal a b 3057`."""
    about = "" if line.confirmed else "about "
    return f"diagonal {line.start} {line.end} {about}{pen.length(line.length, True)}"
