"""Where laying starts and which way it goes: a filled triangle at the place set out from, arrows from it."""

from collections.abc import Iterator

from msgspec import Struct

from roomspec.layout.set_out import joint_of
from roomspec.model.shape import SetOut
from roomspec.model.wall import Wall
from roomspec.reports.drawing.boxes import Box, Crowd
from roomspec.reports.drawing.faces import DrawnLining
from roomspec.reports.drawing.pen import NARROW, pen
from roomspec.reports.drawing.plot import Plot
from roomspec.reports.drawing.svg import element, number
from roomspec.takeoff.clip import Box as Bounds
from roomspec.takeoff.clip import box_of
from roomspec.takeoff.lines import panels_run_up

TALL = 3.0
"""Of the triangle."""
ARROW = 7.0


class Start(Struct, frozen=True):
    """A place that a run is set out from. `way` is x or y, `place` lies on it; `on`, `back`: where laying goes."""

    way: str
    place: int
    on: bool
    back: bool


def starts_of(wall: Wall, lining: DrawnLining) -> Iterator[Start]:
    """Across the panels, and along the rows of flat ones; none where nothing was laid."""
    laid = lining.laid
    if not laid.pieces:
        return
    finish = wall.finishes[laid.finishes[0]]
    bounds = box_of(laid.region)
    if panels_run_up(laid.direction):
        yield _start("x", bounds, laid.panel.cover, finish.start)
    else:
        yield _start("y", bounds, laid.panel.cover, finish.rows)
        yield _start("x", bounds, laid.panel.length, finish.start)


def _start(way: str, bounds: Bounds, module: int, out: SetOut) -> Start:
    low, high = (bounds.left, bounds.right) if way == "x" else (bounds.bottom, bounds.top)
    if out.way in ("right", "top"):
        return Start(way, high, False, True)
    if out.way in ("left", "bottom", "balanced"):
        return Start(way, low, True, False)
    if out.way == "centre":
        return Start(way, (low + high) // 2 if out.at is None else out.at, True, True)
    return Start(way, joint_of(low, high, module, out), True, True)


def start_words(out: SetOut, what: str) -> str:
    """How a run is set out, in words: `joints from the left end`."""
    if out.way == "balanced":
        return f"{what} balanced: equal cuts at both ends"
    if out.way in ("centre", "joint"):
        middle = "a panel's middle" if out.way == "centre" else "a joint"
        return f"{what} from {middle} " + ("in the middle of the run" if out.at is None else "at the mark")
    ends = {"left": "left end", "right": "right end", "bottom": "lowest row", "top": "highest row"}
    return f"{what} from the {ends.get(out.way, out.way)}"


def draw_start(start: Start, plot: Plot, edge: float, out: float, crowd: Crowd) -> str:
    """The mark beside the face: its tip at `edge`, which lies across the way, standing `out` (1 or -1) of it."""
    along = plot.at(start.place, start.place)[0 if start.way == "x" else 1]
    tip, foot = edge + out * 0.8, edge + out * (0.8 + TALL)
    path = _poly([(along, tip), (along - TALL / 2, foot), (along + TALL / 2, foot)], start.way)
    arrows = ""
    line = foot - out * TALL / 2
    reach = [along - TALL / 2, along + TALL / 2]
    for goes, sign in ((start.on, 1.0), (start.back, -1.0)):
        if not goes:
            continue
        turn = sign if start.way == "x" else -sign
        first, last = along + turn * (TALL / 2 + 0.4), along + turn * (TALL / 2 + ARROW)
        head = [(last - turn * 2.2, line - 0.6), (last, line), (last - turn * 2.2, line + 0.6)]
        arrows += _poly([(first, line), (last, line)], start.way, closed=False) + _poly(head, start.way)
        reach.append(last)
    low, high = min(tip, foot), max(tip, foot)
    box = Box(min(reach), low, max(reach), high) if start.way == "x" else Box(low, min(reach), high, max(reach))
    crowd.take(box.grown(0.3))
    return element("path", {"class": "start", **pen(NARROW, fill="black"), "d": path + arrows})


def _poly(points: list[tuple[float, float]], way: str, closed: bool = True) -> str:
    turned = points if way == "x" else [(across, along) for along, across in points]
    return "M" + "L".join(f"{number(x)} {number(y)}" for x, y in turned) + ("Z" if closed else "")
