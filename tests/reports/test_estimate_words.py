"""What the estimate says, line by line, for small jobs."""

import datetime

from roomspec.analysis.session import Session
from roomspec.analysis.world import MemoryWorld
from roomspec.reports.estimate_out import estimate_of
from roomspec.reports.estimate_sections import estimate_sections
from roomspec.reports.estimate_text import estimate_text
from roomspec.reports.section import Section

JOB = """\
job small "Small"
  currency EUR
  labour two
room 1
  height 2400
  on plaster
  finish board by glued vertical
  wall a 3000
    window 600 x 900 at 1000 sill 900 reveal 120 lined
panel board
  length 2600
  cover 250
  thick 10
  weighs 5.5 kg/m2
  price 31.5 each
adhesive grab
  tube 290 ml
method glued
  glue grab bead 8 every 100
gang two
  takes 0.3 h/m2 for panels
"""
FEET = """\
units in
job small "Small"
  labour two
room 1
  wall a about 10 ft
    height 8 ft
    on plaster
    finish board by glued vertical
panel board
  length 96
  cover 12
  thick 3/8
  weighs 1 lb/ft2
  price 4.2 per ft2
adhesive grab
  tube 300 ml
  price 6.20 each
method glued
  glue grab bead 5/16 every 4
gang two
  rate 60.00 per h
  takes 0.03 h/ft2 for panels
"""


def sections(text: str) -> dict[str, Section]:
    """The sections of a job's estimate by their titles."""
    return {section.title: section for section in estimate_sections(estimated(text))}


def estimated(text: str):
    """The estimate of a job that is one file."""
    snapshot = Session(MemoryWorld({"job.room": text}, datetime.date(2026, 11, 25))).snapshot("job.room")
    assert snapshot is not None
    return estimate_of(snapshot)


def test_labour_says_what_is_missing():
    """A gang without rate has hours and no cost; a task without constant has neither."""
    rows = sections(JOB)["Labour and extras"].rows
    panels = next(row for row in rows if row[0].startswith("panels vertical") or row[0] == "panels")
    openings = next(row for row in rows if row[0] == "openings")
    assert panels[2:] == ("0.30 h/m2", panels[3], "no rate")
    assert float(panels[3]) > 0
    assert openings[2:] == ("no constant", "", "")


def test_prices_have_the_currency_s_decimals_and_gaps_are_said():
    """31.5 is money; a price that is missing is said in the order and beside the sum."""
    found = sections(JOB)
    assert [row[5] for row in found["Order"].rows] == ["31.50 each", "no price"]
    assert [row[4] for row in found["Price"].rows[:2]] == ["without what has no price"] * 2


def test_pieces_of_reveals_stand_apart():
    """Beside the areas of the face stand the face's own pieces."""
    rooms = sections(JOB)["Rooms and walls"]
    face, reveals = map(int, rooms.rows[1][6].split(" + "))
    (finish,) = estimated(JOB).rooms[0].walls[0].finishes
    assert (face + reveals, reveals) == (finish.pieces, finish.pieces_in_reveals)
    assert rooms.before == ("Pieces after a + line reveals; laid areas and loads are of the wall's face alone.",)


def test_a_job_in_feet_reads_in_feet():
    """Sizes, areas, loads, constants, prices and assumptions are in the units of the job's own file."""
    found = sections(FEET)
    assert found["Rooms and walls"].heads[1:4] == ("Width", "Gross ft2", "Net ft2")
    assert found["Rooms and walls"].rows[1][:4] == ("a", "10'", "80.00", "80.00")
    assert found["Rooms and walls"].rows[1][8].startswith("1.1")
    assert found["Order"].rows[0][5] == "4.20 per ft2"
    assert found["Labour and extras"].rows[0][1:3] == ("80.00 ft2", "0.03 h/ft2")
    assert found["Measured quantities: net"].rows[1] == ("a", "80.00", "", "10' x 8' = 80.00 ft2")
    assert any("taken as about 10' wide" in item for item in found["Assumptions"].items)
    assert " mm" not in estimate_text(estimated(FEET)).replace("(150 mm)", "")


def test_the_numbers_of_the_json_stay_metric():
    """Only sentences follow the job's units."""
    out = estimated(FEET)
    assert out.job.units == "in"
    assert out.rooms[0].walls[0].width_mm == 3048
    assert out.measured.walls[0].quantity_m2 == 7.432243


def test_of_many_errors_the_first_are_named():
    """The top of an estimate stays readable whatever the job holds."""
    text = JOB + "".join(f"room x{number}\n  wal a 10\n" for number in range(40))
    head = estimate_sections(estimated(text))[0]
    assert len(head.items) == 21
    assert head.items[-1] == f"and {len(estimated(text).findings.left_out) - 20} more"
