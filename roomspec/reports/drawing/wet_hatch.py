"""Wet zones hatched: close where water falls directly, wide where it splashes. They follow a floor that rises."""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import pairwise

from roomspec.reports.drawing.faces import FaceView
from roomspec.reports.drawing.hatch import hatching
from roomspec.reports.drawing.pen import CHAIN, DASHED, NARROW, pen
from roomspec.reports.drawing.plot import Plot
from roomspec.reports.drawing.svg import element
from roomspec.takeoff.clip import Box, Corner, box_of, cut_to
from roomspec.takeoff.ground import covered
from roomspec.takeoff.inside import on_edge
from roomspec.takeoff.parts import divide

PITCHES = {"direct": 3.0, "splash": 7.0}
"""Millimetres of paper between lines."""


def draw_wet(view: FaceView, plot: Plot) -> str:
    """The hatching and the limits of each zone, on the whole face; openings are drawn over it."""
    parts = []
    for part in divide(((wet.region, wet.exposure) for wet in view.wall.wet), "dry"):
        if part.value not in PITCHES:
            continue
        lines = hatching([plot.ring(ring) for ring in _zone(view, part.box)], PITCHES[part.value])
        if lines:
            kind = DASHED if part.value == "splash" else ()
            parts.append(
                element("path", {"class": "wet", "data-exposure": part.value, **pen(NARROW, kind), "d": lines})
            )
    for wet in view.wall.wet:
        if wet.exposure in PITCHES:
            parts.append(_limits(view, box_of(wet.region), plot))
    return "".join(parts)


def _zone(view: FaceView, region: Box) -> Iterator[Sequence[Corner]]:
    """What a zone covers of the face, a ring for each stretch of the floor line."""
    face = Box(*view.ends, view.foot, view.height)
    rings = (cut_to(ring, face) for outline in view.outlines for ring in covered(outline, view.wall.floor, region))
    return (ring for ring in rings if ring)


def _limits(view: FaceView, region: Box, plot: Plot) -> str:
    """The zone's own edges, where it does not reach to the face's."""
    seams = {x for x, _ in view.wall.floor if region.left < x < region.right} | set(view.ends)
    found = []
    for ring in _zone(view, region):
        for start, end in pairwise((*ring, ring[0])):
            seam = start[0] == end[0] and start[0] in seams
            middle = (Fraction(start[0] + end[0]) / 2, Fraction(start[1] + end[1]) / 2)
            if not seam and not any(on_edge(outline, middle) for outline in view.outlines):
                found.append("M{:.3f} {:.3f}L{:.3f} {:.3f}".format(*plot.at(*start), *plot.at(*end)))
    return element("path", {"class": "wet-limit", **pen(NARROW, CHAIN), "d": "".join(found)}) if found else ""
