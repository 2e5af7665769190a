"""What the documents say is what the estimate says."""

import datetime
import re
from decimal import Decimal

import pytest
from small_hand_over import JOB, handed_over

from roomspec.reports.hand_over.fitters import fitters
from roomspec.reports.hand_over.given import HandOver
from roomspec.reports.hand_over.order import order, ordered_items
from roomspec.reports.hand_over.quotation import quotation
from roomspec.reports.hand_over.survey import survey
from roomspec.reports.paper.sheet import Part, Points, Sheet, Table, Words


def tables(sheet: Sheet) -> dict[str, Table]:
    """Every table by its caption."""
    return {block.caption: block for part in parts(sheet.parts) for block in part.blocks if isinstance(block, Table)}


def parts(some: tuple[Part, ...]) -> list[Part]:
    """The parts and those in them."""
    return [found for part in some for found in (part, *parts(part.parts))]


def points(sheet: Sheet, title: str) -> tuple[str, ...]:
    """The items under a heading."""
    (part,) = (part for part in parts(sheet.parts) if part.title == title)
    return tuple(item for block in part.blocks if isinstance(block, Points) for item in block.items)


def words(sheet: Sheet) -> list[str]:
    """Every sentence."""
    return [block.text for part in parts(sheet.parts) for block in part.blocks if isinstance(block, Words)]


def test_the_quotation_gives_the_price_and_not_what_it_is_made_of():
    """Net, tax, total as estimated; no overhead, no profit, no hourly rate."""
    given = handed_over()
    sheet, price = quotation(given), given.out.price
    shown = [row[1] for row in tables(sheet)["What it comes to"].rows]
    assert shown == [given.numerals.money(part) for part in (price.net, price.tax, price.total)]
    cells = [cell for table in tables(sheet).values() for row in table.rows for cell in row]
    assert not {given.numerals.money(price.overhead), given.numerals.money(price.profit), "62.00"} & set(cells)
    assert points(sheet, "Assumptions") == given.out.assumptions
    assert points(sheet, "Not included") == ("Painting.",)


def test_the_quotation_holds_until_the_first_price_ends():
    """`valid until` of what is ordered; nothing is invented where nothing is said."""
    assert any("Valid until 2027-01-31" in said and "Board, long" in said for said in words(quotation(handed_over())))
    without = handed_over(text=without_line("  valid until"))
    assert any("to be agreed" in said for said in words(quotation(without)))


def without_line(start: str) -> str:
    """The small job without the lines that begin so."""
    return "".join(line for line in JOB.splitlines(keepends=True) if not line.startswith(start))


def test_measured_quantities_are_the_tenders():
    """By the job's method, each step said, and their sum."""
    given = handed_over()
    table = tables(quotation(given))["Measured quantities"]
    measured = [given.numerals.area(wall.quantity_m2) for wall in given.out.measured.walls]
    assert [row[1] for row in table.rows if len(row) > 1 and row[0].islower()] == measured
    assert table.rows[-1][1] == given.numerals.area(sum(wall.quantity_m2 for wall in given.out.measured.walls))


def test_the_order_is_the_estimates():
    """Every length with its packs; costs as estimated; the sum is the material."""
    given = handed_over()
    table = tables(order(given))["Items to order"]
    rows = [row for row in table.rows if len(row) > 1]
    assert [(row[0], row[2], row[3]) for row in rows[:-1]] == [
        ("board", "2600", "40"),
        ("edge", "3000", "2"),
        ("edge", "2600", "1"),
        ("grab", "", "16"),
        ("clear", "", "1"),
    ]
    costs = [Decimal(row[6].replace(" ", "")) for row in rows]
    assert costs[1:3] == [Decimal("22.00"), Decimal("10.14")]  # 2 at 11.00; 2.6 m at 3.90
    assert sum(costs[:-1]) == given.out.price.material == costs[-1]


def test_shares_of_a_cost_add_up_to_it_to_the_cent():
    """2 of 3 m and 1 of 2.5 m at 1.111 a metre are 6.666 and 2.7775: 6.67 and 2.77, for 9.44 together."""
    text = (
        JOB.replace("at 11.00 each", "at 1.111 per m")
        .replace("price 3.90", "price 1.111")
        .replace("role edge\n  fits 10\n  length 2600", "role edge\n  fits 10\n  length 2500")
    )
    costs = [item.cost for item in ordered_items(handed_over(text=text)) if item.line.item == "edge"]
    assert costs == [Decimal("6.67"), Decimal("2.77")]


def test_the_lined_area_is_that_of_every_panel_as_laid():
    """What the labour is reckoned on; reveals with their wall, so that the rows add up."""
    given = handed_over(text=JOB.replace("at 700 sill 1100", "at 700 sill 1100 reveal 120 lined"))
    rows = [row for row in tables(quotation(given))["Linings, supplied and fitted"].rows if len(row) > 1]
    worked = [dict(work.amounts)["m2"] for work in given.made.taken.work if work.task == "panels"]
    assert len(worked) > 1  # in reveals, and on the walls
    assert rows[-1][3] == given.numerals.area(float(sum(worked)))
    assert sum(Decimal(row[3]) for row in rows[:-1]) == pytest.approx(Decimal(rows[-1][3]), abs=Decimal("0.02"))


def test_a_job_without_prices_says_so_and_gives_no_sum():
    """No price, no validity, no sum of nothing; the order asks for prices."""
    unpriced = re.sub(r"\n  (?:price|rate|extra)[^\n]*| at 11.00 each", "", JOB)
    given = handed_over(text=unpriced)
    assert "No price is given yet: nothing in this job has one." in words(quotation(given))
    assert not any("Valid" in said for said in words(quotation(given)))
    assert "What it comes to" not in tables(quotation(given))
    assert {row[6] for row in tables(order(given))["Items to order"].rows if len(row) > 1} == {"open"}


def test_a_job_with_some_prices_names_what_its_sum_leaves_out():
    """Beside the sum, by the names that the client reads; the validity is that of what is priced."""
    given = handed_over(text=without_line("  price 31.50"))
    said = words(quotation(given))
    assert any(text.startswith("Without what has no price yet: Board, long, openings") for text in said)
    assert any("no supplier's price is given an end" in text for text in said)
    total = tables(order(given))["Items to order"].rows[-1]
    assert total[:2] == ("Material", "without what is open")


@pytest.mark.parametrize(("fit_on", "late"), [("2026-11-26", True), ("2026-11-27", False)])
def test_a_delivery_before_the_date_of_the_order_is_remarked_upon(fit_on, late):
    """Panels that lie in the rooms for two days are there in time if fitting begins two days from the order's date."""
    given = handed_over(text=JOB.replace("fit on 2027-03-08", f"fit on {fit_on}"))
    sheet = order(given)
    first = dict(sheet.facts.rows)["First delivery by"]
    assert first == ("2026-11-24, before the date of this order" if late else "2026-11-25")
    remarks = [said for said in words(sheet) if "before the date of this order, 2026-11-25" in said]
    assert [said.startswith("board must be there") for said in remarks] == [True] * late


def test_panels_are_there_before_fitting_by_what_their_maker_asks():
    """40 h are two days before 8 March; all else comes on the day. 40 panels of 2.6 x 0.25 x 5.5 kg/m2 weigh 143 kg."""
    deliveries = {item.line.item: item.delivery for item in ordered_items(handed_over())}
    assert deliveries["board"].day == datetime.date(2027, 3, 6)
    assert deliveries["board"].weight == 143
    assert deliveries["board"].pack_weight == Decimal("17.875")
    assert deliveries["grab"].day == datetime.date(2027, 3, 8)
    assert deliveries["grab"].weight is None


def test_without_a_fitting_date_no_delivery_is_dated():
    """The order says that it is open, and the survey sheet asks for it."""
    given = handed_over(text=without_line("  fit on"))
    assert {row[3] for row in tables(order(given))["When it must be there, and its weight"].rows[:-1]} == {"open"}
    assert any("fitting begins is not given" in item for item in points(survey(given), "The job"))


def test_the_fitters_cut_every_piece_once():
    """The numbers of the cut list are those of the layout."""
    given = handed_over()
    table = tables(fitters(given, {}))["Panels to cut"]
    counted = sum(int(row[1]) for row in table.rows if len(row) > 1)
    assert counted == sum(finish.pieces for room in given.out.rooms for wall in room.walls for finish in wall.finishes)


def test_the_fitters_sheet_has_its_steps_checks_and_cautions():
    """What the job's text says is there, in the order of the work."""
    sheet = fitters(handed_over(), {})
    steps = points(sheet, "Sequence of work")
    assert "lie in the room for 40 h" in steps[0]
    assert "rail (30 kg)" in steps[-1]
    assert any("wall b was only about 2000 mm" in item.lower() for item in points(sheet, "Checks to tick"))
    assert "licensed trades decide" in points(sheet, "Cautions")[-1]


def test_the_survey_sheet_asks_what_nobody_confirmed():
    """What is `about`, what is lined and not recorded; what was recorded is not asked again."""
    rows = tables(survey(handed_over()))["To confirm on site"].rows
    assert ("Wall b", "width", "about 2000", "", "") in rows
    assert ("Walls a, b, c and d", "surface", "sound, dry and clean", "", "") in rows
    assert not [row for row in rows if len(row) > 1 and row[1] == "what it is made of"]


def test_rooms_that_are_alike_share_a_sheet():
    """One sheet for all of a pattern, named; a handed one has its own. Names that differ by case only stay apart."""
    text = JOB.replace('room 1.01 "{room}"', 'pattern bath "{room}"').replace(
        "panel board", "rooms 1.01 to 1.03 as bath\nroom A as bath mirrored\nroom a as bath mirrored\npanel board", 1
    )
    given = handed_over(text=text)
    assert [same.names for same in given.rooms] == [("1.01", "1.02", "1.03"), ("A", "a")]
    titles = [part.title for part in fitters(given, {}).parts if part.anchor.startswith("room")]
    assert titles == [
        "Rooms 1.01 to 1.03 (3 rooms, each): Shower room",
        "Rooms A, a (2 rooms, each): Shower room, handed",
    ]


def test_a_job_with_nothing_lined_says_so():
    """Bare walls give documents that say there is nothing, and no fault."""
    text = without_line("  finish")
    given: HandOver = handed_over(text=text)
    assert "No wall is lined." in words(fitters(given, {}))
    assert "Nothing is ordered." in words(order(given))
    assert "Nothing is lined." in words(quotation(given))
