"""The white under a label hides nothing that is read: no other text, no dimension line, none of its strokes."""

import re
from collections.abc import Iterator

import pytest
from drawn_jobs import JOBS, drawings_of, snapshot_of
from read_svg import SVG, parsed, texts_of
from shapely import STRtree
from shapely.geometry import LineString, Polygon
from test_drawn_locale import ABROAD

from roomspec.reports.drawing.job_drawings import Drawing, draw_job

BOXES = """\
job b "Boxes in corners and over the floor"
  use       "catalogue.room"
  currency  EUR
room r "Room"
  height   2400
  on       masonry
  surface  sound
  finish   limestone-long by glued-wet vertical start balanced
  wall a 4000
    boxing  "shelf" 800 x 400 at 2200 deep 150 sill 900
    bath    1700 x 560 to 575 at 0
  wall b 3000
    boxing  "pipes" 300 x 2400 at 0 deep 200
    boxing  "bulkhead" 1500 x 300 at 1500 deep 250 sill 2100
    door    500 x 2000 at 700 reveal 100 lined
  wall c 4000
    boxing  "step" 120 x 120 at 500 deep 120
    hatch   500 x 500 at 3300 up 600 panelled
  wall d 3000
    finish  ash-plank by on-battens horizontal bond third rows balanced
room tiny "Nothing wider than a label"
  height   2400
  on       masonry
  surface  sound
  finish   limestone-long by glued-wet vertical
  wall a 120
  wall b 300
    corner  outside
  wall c 90
    corner  outside
  wall d 1200
"""


def sheets(name: str) -> tuple[Drawing, ...]:
    """A sample, the odd job, that job abroad, or boxes."""
    if name in JOBS:
        return drawings_of(name)
    text = {"abroad": ABROAD.format("de_DE"), "boxes": BOXES, "inches": BOXES.replace("  use", "  units in\n  use")}[
        name
    ]
    return draw_job(snapshot_of(text).estimate(), 0)


def strokes(svg: str) -> Iterator[LineString]:
    """Dimension lines and their strokes; not extension lines, which a text may interrupt (ISO 129-1, from memory)."""
    for path in parsed(svg).iter(f"{SVG}path"):
        if path.get("class") == "dimension":
            for line in re.findall(r"M(\S+ \S+?)L([^ML]+?)(?=M|$)", path.attrib["d"]):
                yield LineString([tuple(map(float, place.split())) for place in line])


def whites(svg: str) -> Iterator[Polygon]:
    """The white under each backed text."""
    for path in parsed(svg).iter(f"{SVG}path"):
        if path.get("class") == "backing":
            for ring in path.attrib["d"].split("Z")[:-1]:
                yield Polygon([tuple(map(float, place.split())) for place in ring.removeprefix("M").split("L")])


@pytest.mark.parametrize("name", [*JOBS, "abroad", "boxes", "inches"])
def test_no_white_lies_over_a_dimension_line(name):
    """Not even over the label's own."""
    found = 0
    for drawing in sheets(name):
        under = list(whites(drawing.svg))
        lines = list(strokes(drawing.svg))
        found += len(lines)
        pairs = STRtree(under).query(lines, predicate="intersects").T if under and lines else ()
        hidden = [lines[one].wkt for one, other in pairs if lines[one].intersection(under[other]).length > 0.02]
        assert hidden == [], drawing.name
    assert found > 100


@pytest.mark.parametrize("name", [*JOBS, "abroad", "boxes", "inches"])
def test_no_white_reaches_another_text(name):
    """Each lies under the one text that it was made for."""
    for drawing in sheets(name):
        texts = [Polygon(text.corners) for text in texts_of(parsed(drawing.svg))]
        for white in whites(drawing.svg):
            met = [text for text in texts if text.intersection(white).area > 0.01]
            assert len(met) == 1, (drawing.name, white.wkt)
