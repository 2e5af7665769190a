"""What the estimate says, line by line, for small jobs."""

import datetime

from roomspec.analysis.session import Session
from roomspec.analysis.world import MemoryWorld
from roomspec.reports.estimate_out import estimate_of
from roomspec.reports.estimate_sections import PROVEN, PROVEN_IN_MONEY, estimate_sections
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


TWO_LENGTHS = """\
job lengths
  kerf 3
  labour two
room 1
  height 2090
  on plaster
  finish board by glued vertical
  wall a 5250
panel board
  length 2400 at 20.00 each
  length 4200 at 36.00 each
  cover 250
  thick 10
  pack 2
adhesive grab
  tube 290 ml
method glued
  glue grab bead 8 every 100
gang two
  rate 50.00 per h
  takes 0.333 h/m2 for panels
"""


def test_each_length_has_its_price_and_the_proof_is_in_money() -> None:
    """21 pieces of 2090: ten of 4200 at 36.00 and one of 2400 at 20.00 are 380.00; in packs of 2 they are 400.00."""
    out = estimated(TWO_LENGTHS)
    panels, plan = out.order[0], out.cutting[0]
    assert [(part.count, str(part.unit_price), part.price_per) for part in panels.lengths] == [
        (10, "36.00", "each"),
        (2, "20.00", "each"),
    ]
    assert (str(panels.cost_bound), str(panels.cost), panels.proven) == ("380.00", "400.00", True)
    assert (str(plan.cost), str(plan.cost_bound), plan.proven) == ("380.00", "380.00", True)
    order = sections(TWO_LENGTHS)["Order"]
    assert order.before == (PROVEN_IN_MONEY,)
    assert order.rows[0][2:7] == (
        "cost 380.00, proven",
        "",
        "12 (6 packs of 2): 10 of 4200 and 2 of 2400",
        "36.00 and 20.00 each",
        "400.00",
    )


def test_lengths_of_one_price_are_proven_by_their_number() -> None:
    """Both at 20.00: eleven of 4200, the fewest, and one price."""
    order = sections(TWO_LENGTHS.replace("36.00", "20.00"))["Order"]
    assert order.before == (PROVEN,)
    assert (order.rows[0][2], order.rows[0][5]) == ("11, proven", "20.00 each")
    by_metre = sections(TWO_LENGTHS.replace("36.00 each", "9.00 per m"))["Order"]
    assert by_metre.rows[0][5] == "9.00 per m and 20.00 each"


def test_the_rate_is_printed_and_each_cost_is_of_the_printed_hours() -> None:
    """5.25 x 2.09 = 10.9725 m2 at 0.333 h are 3.6538 h: 3.65 at 50.00 are 182.50, not 182.69."""
    out = estimated(TWO_LENGTHS)
    assert (str(out.rate), out.labour[0].hours, str(out.labour[0].cost)) == ("50.00", 3.65, "182.50")
    labour = sections(TWO_LENGTHS)["Labour and extras"]
    assert labour.before == ("An hour costs 50.00; costs are of the hours as printed.",)
    untold = TWO_LENGTHS.replace("  rate 50.00 per h\n", "")
    assert estimated(untold).rate is None
    assert not sections(untold)["Labour and extras"].before
