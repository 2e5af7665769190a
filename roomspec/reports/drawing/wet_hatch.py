"""Wet zones hatched: close where water falls directly, wide where it splashes."""

from roomspec.model.wall import Wet
from roomspec.reports.drawing.boxes import Box
from roomspec.reports.drawing.faces import FaceView
from roomspec.reports.drawing.hatch import hatching
from roomspec.reports.drawing.pen import CHAIN, DASHED, NARROW, pen
from roomspec.reports.drawing.plot import Plot
from roomspec.reports.drawing.svg import element
from roomspec.takeoff.clip import Box as Bounds
from roomspec.takeoff.clip import box_of
from roomspec.takeoff.parts import divide

PITCHES = {"direct": 3.0, "splash": 7.0}
"""Millimetres of paper between lines."""


def draw_wet(view: FaceView, plot: Plot) -> str:
    """The hatching and the limits of each zone, on the whole face; openings are drawn over it."""
    face = Bounds(*view.ends, view.foot, view.height)
    rings = [plot.ring(view.outline)]
    parts = []
    for part in divide(((wet.region, wet.exposure) for wet in view.wall.wet), "dry"):
        box = face.common(part.box)
        if box is None or part.value not in PITCHES:
            continue
        (left, bottom), (right, top) = plot.at(box.left, box.bottom), plot.at(box.right, box.top)
        lines = hatching(rings, PITCHES[part.value], within=Box(left, top, right, bottom))
        if lines:
            kind = DASHED if part.value == "splash" else ()
            parts.append(
                element("path", {"class": "wet", "data-exposure": part.value, **pen(NARROW, kind), "d": lines})
            )
    for wet in view.wall.wet:
        parts.append(_limits(wet, face, plot))
    return "".join(parts)


def _limits(wet: Wet, face: Bounds, plot: Plot) -> str:
    """The zone's own edges, where it does not reach to the face's."""
    box = face.common(box_of(wet.region))
    if box is None or wet.exposure not in PITCHES:
        return ""
    (left, bottom), (right, top) = plot.at(box.left, box.bottom), plot.at(box.right, box.top)
    found = []
    for inside, line in (
        (box.left > face.left, (left, bottom, left, top)),
        (box.right < face.right, (right, bottom, right, top)),
        (box.bottom > face.bottom, (left, bottom, right, bottom)),
        (box.top < face.top, (left, top, right, top)),
    ):
        if inside:
            found.append("M{:.3f} {:.3f}L{:.3f} {:.3f}".format(*line))
    return element("path", {"class": "wet-limit", **pen(NARROW, CHAIN), "d": "".join(found)}) if found else ""
