"""The estimate as a whole: sums, steps, and what it says it rests on."""

from datetime import date
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace
from sample_walls import TERMS, battened, finish, glued, job, opening, panel, region, seal, trim, wall

from roomspec.analysis.session import Session
from roomspec.analysis.world import MemoryWorld
from roomspec.layout.lay_room import lay_room
from roomspec.model.job import Job, Terms
from roomspec.model.method import Gang, Takes
from roomspec.model.product import Price as UnitPrice
from roomspec.model.room import Diagonal, Room
from roomspec.model.wall import Boxing, Extra, Layer, Obstacle, Removal, Substrate, Surface, Wall, WallPoint, Wet
from roomspec.pricing.build_up import build_up
from roomspec.pricing.cautions import CAUTIONS, LAST
from roomspec.pricing.estimate import Estimate, price_job
from roomspec.quantities.length import MM
from roomspec.quantities.money import rounded
from roomspec.reports.estimate_out import estimate_of
from roomspec.reports.estimate_sections import estimate_sections
from roomspec.takeoff.job import take_off_job
from roomspec.takeoff.room import take_off_room

GANG = Gang("two", rate=Decimal("62.00"), takes=(Takes(Decimal("0.30"), "m2", "panels", "vertical"),))
SKIP = Extra("Skip, 6 yd", UnitPrice(Decimal("240.00")))
SOUND = {"substrates": (Substrate((Layer("masonry"),)),), "surfaces": (Surface("sound"),)}


def estimate(one: Job) -> Estimate:
    """A job laid, taken off and priced."""
    taken = [take_off_room(room, lay_room(room, one.terms), one.terms) for room in one.rooms]
    return price_job(one, take_off_job(one, taken))


def plain_job(**changed: object) -> Job:
    """One wall 3000 x 2400, glued on sound masonry, with a gang and a skip."""
    one = wall(3000, 2400, finish(glued(start=trim("start"))), **SOUND)
    return job(Room("1", walls=(one,)), **{"gang": GANG, "extras": (SKIP,), **changed})


def test_sums_are_of_printed_lines() -> None:
    """15 panels 472.50, 2 trims 19.60, 7 tubes 43.40 (35.4 m); labour 7.2 x 0.3 x 62 = 133.92; a skip 240.00."""
    terms = replace(TERMS, overhead=Decimal(8), profit=Decimal(10), contingency=Decimal(5), tax=Decimal(20))
    found = estimate(plain_job(terms=terms))
    price = found.price
    assert [line.cost for line in found.order] == [Decimal("472.50"), Decimal("19.60"), Decimal("43.40")]
    assert (price.material, price.labour, price.extras) == (Decimal("535.50"), Decimal("133.92"), Decimal("240.00"))
    assert price.cost == Decimal("909.42")
    assert price.overhead == Decimal("72.75")  # 8 % of it, 72.7536
    assert price.profit == Decimal("98.22")  # 10 % of 982.17
    assert price.contingency == Decimal("54.02")  # 5 % of 1080.39
    assert (price.net, price.tax, price.total) == (Decimal("1134.41"), Decimal("226.88"), Decimal("1361.29"))


def test_nothing_is_assumed_where_all_is_known() -> None:
    """A full survey with prices, rate and times needs no assumption but for the task without a time."""
    found = estimate(plain_job(assumptions=("Power is isolated by others.",), exclusions=("Sanitary ware.",)))
    assert found.assumptions == ("Power is isolated by others.", "No time is given for trims: the totals leave it out.")
    assert found.exclusions == ("Sanitary ware.",)


def test_what_was_not_surveyed_is_assumed_aloud() -> None:
    """Unconfirmed sizes, substrates and surfaces, once for all rooms of a pattern."""
    rough = wall(2410, 2400, finish(glued()), confirmed=False)
    rooms = [
        Room(name, pattern="bath-a", walls=(rough,), diagonals=(Diagonal("a", "a", 3, confirmed=False),))
        for name in ("101", "102")
    ]
    assert estimate(job(*rooms, gang=GANG)).assumptions == (
        "Wall a of pattern bath-a is taken as about 2410 mm wide: confirm on site.",
        "The diagonal a a of pattern bath-a is approximate: confirm on site.",
        "The substrate of wall a of pattern bath-a was not recorded: taken as fit to carry the lining.",
        "The surface of wall a of pattern bath-a was not recorded: taken as sound, dry and clean.",
    )


def test_every_size_that_is_about_is_assumed_aloud() -> None:
    """A wall's height, an opening, what stands against it and a boxing, one sentence a wall."""
    rough = wall(
        2410, 2400, finish(glued()), **SOUND,
        height_confirmed=False,
        openings=(opening("door", 926, 2040, 100, confirmed=False), opening("window", 600, 600, 1500, sill=900)),
        obstacles=(Obstacle("bath", 0, 900 * MM, 560 * MM, confirmed=False),),
        boxing=(Boxing(0, 300 * MM, 300 * MM, 200 * MM, confirmed=False),),
    )  # fmt: skip
    said = "On wall a of room 1 the height, the door, the bath and the boxing are approximate: confirm on site."
    assert said in estimate(job(Room("1", walls=(rough,)), gang=GANG)).assumptions
    one = wall(2410, 2400, finish(glued()), **SOUND, height_confirmed=False)
    assert estimate(job(Room("1", walls=(one,)), gang=GANG)).assumptions == (
        "On wall a of room 1 the height is approximate: confirm on site.",
    )


def test_what_is_not_priced_is_left_out_aloud() -> None:
    """No price, no gang: the totals leave both out and say so."""
    one = wall(3000, 2400, finish(glued(), laid=panel(price=None)), **SOUND)
    found = estimate(job(Room("1", walls=(one,))))
    assert found.assumptions == (
        "No price is given for panel plain-long: the totals leave it out.",
        "No gang is named: the totals leave labour out.",
    )
    assert found.price.total == Decimal("37.20")
    assert [str(amount) for amount in (found.price.labour, found.price.extras)] == ["0.00", "0.00"]


def test_a_gang_without_a_rate() -> None:
    """Hours without money are said to be."""
    found = estimate(plain_job(gang=replace(GANG, rate=None)))
    assert "Gang two has no rate: the totals leave labour out." in found.assumptions


def cautions(one: Wall, **terms: int) -> tuple[str, ...]:
    """The cautions of a job of one wall."""
    return estimate(job(Room("1", walls=(one,)), terms=replace(TERMS, **terms))).cautions  # type: ignore[arg-type]


def words(found: tuple[str, ...]) -> set[str]:
    """Which kinds of caution were printed, by a word of each."""
    marks = ("asbestos", "lead", "cables", "faceplate", "hangs", "dust", "vapour", "Lift", "heaviest pack")
    return {mark for mark in marks if any(mark in text for text in found)}


def test_a_glued_wall_of_a_new_building() -> None:
    """Dust, vapour and lifting; no asbestos, as nothing is drilled and the building is new."""
    found = cautions(wall(3000, 2400, finish(glued())), built=2010)
    assert words(found) == {"dust", "vapour", "Lift", "heaviest pack"}
    assert found[-1] == LAST


@pytest.mark.parametrize(("built", "called"), [(1962, True), (1999, True), (2000, False)])
def test_asbestos_before_2000(built: int, called: bool) -> None:
    """H-01: battens drilled into a building from before 2000."""
    assert ("asbestos" in words(cautions(wall(3000, 2400, finish(battened())), built=built))) == called


def test_asbestos_where_the_age_is_unknown() -> None:
    """H-01: an unrecorded age is no all-clear."""
    assert any("age of the building is not recorded" in text for text in cautions(wall(3000, 2400, finish(battened()))))


def test_old_tile_worked_over() -> None:
    """H-01: old tile adhesive, though the lining is glued."""
    tiled = (Substrate((Layer("tile"), Layer("plaster"))),)
    assert "asbestos" in words(cautions(wall(3000, 2400, finish(glued()), substrates=tiled), built=1970))


@pytest.mark.parametrize(("built", "called"), [(1979, True), (1980, False)])
def test_lead_before_1980(built: int, called: bool) -> None:
    """H-04: painted surfaces, or stripping out, before 1980."""
    painted = wall(3000, 2400, finish(glued()), surfaces=(Surface("painted"),))
    stripped = wall(3000, 2400, finish(glued()), removals=(Removal("skirting"),))
    assert ("lead" in words(cautions(painted, built=built))) == called
    assert ("lead" in words(cautions(stripped, built=built))) == called


def test_electricity_and_loads() -> None:
    """H-10 to H-13: screws call for a search, sockets for an electrician, a rail for a fixing in the wall behind."""
    points = (WallPoint("socket", 300, 450), WallPoint("fixture", 700, 850, load=Decimal(110)))
    found = words(cautions(wall(3000, 2400, finish(battened()), points=points), built=2010))
    assert found == {"cables", "faceplate", "hangs", "dust", "Lift", "heaviest pack"}


def test_every_caution_has_a_source() -> None:
    """Each names its word, and each text is a sentence."""
    assert all(caution.source and caution.text.endswith(".") for caution in CAUTIONS)


MONEY = st.decimals(0, 100_000, places=2)
PERCENT = st.decimals(0, 60, places=1)


@given(material=MONEY, labour=MONEY, extras=MONEY, overhead=PERCENT, rate=PERCENT, reserve=PERCENT, tax=PERCENT)
def test_steps_add_up(
    material: Decimal,
    labour: Decimal,
    extras: Decimal,
    overhead: Decimal,
    rate: Decimal,
    reserve: Decimal,
    tax: Decimal,
) -> None:
    """Whatever the figures: each sum is of the printed steps before it, and a margin leaves its share of the price."""
    terms = Terms(overhead=overhead, profit=rate, contingency=reserve, tax=tax)
    price = build_up(material, labour, extras, terms)
    assert price.cost == material + labour + extras
    assert price.net == price.cost + price.overhead + price.profit + price.contingency
    assert price.total == price.net + price.tax
    margin = build_up(material, labour, extras, replace(terms, profit=None, margin=rate))
    priced = margin.cost + margin.overhead + margin.profit
    assert abs(margin.profit - priced * rate / 100) <= Decimal("0.01")
    assert margin.profit >= price.profit


def test_a_margin_that_no_price_leaves() -> None:
    """A margin of 100 per cent is said to be impossible and reckons nothing."""
    price = build_up(Decimal(100), Decimal(0), Decimal(0), Terms(margin=Decimal(100)))
    assert (price.profit, price.net) == (0, 100)
    assert any("no price leaves that margin" in step.note for step in price.steps)


def test_currencies_without_cents() -> None:
    """Yen are whole: 8 per cent of 1001 is 80."""
    price = build_up(Decimal(1001), Decimal(0), Decimal(0), Terms(currency="JPY", overhead=Decimal(8)))
    assert price.overhead == Decimal(80)


def test_a_wet_room_is_priced_with_its_sealant() -> None:
    """A shower of 1200: 4 joints x 2.1 m of 5 mm bead is 165 ml, one tube at 5.10."""
    wet = (Wet("direct", region(0, 1200, 0, 2100)),)
    one = wall(
        3000, 2400, finish(glued(seals=(seal("joints"),))), wet=wet, openings=(opening("door", 700, 2000, 2000),)
    )
    lines = {line.item: line for line in estimate(job(Room("1", walls=(one,)))).order}
    assert (lines["clear"].needed, lines["clear"].bound, lines["clear"].cost) == (1, None, Decimal("5.10"))


def test_an_extra_in_feet_costs_what_its_line_says() -> None:
    """70 ft2 at 4.00: 280.00, though 6.5032128 m2 is no round figure and its price per m2 none at all."""
    text = 'job j\n  extra "Carpet" 70 ft2 at 4.00 per ft2\n  extra "Cable" 20 ft at 1.05 per ft\n'
    snapshot = Session(MemoryWorld({"j.room": text}, date(2026, 11, 25))).snapshot("j.room")
    assert snapshot is not None
    out = estimate_of(snapshot)
    assert [line.cost for line in out.extras] == [Decimal("280.00"), Decimal("21.00")]
    for line in out.extras:
        assert rounded(Decimal(str(line.quantity)) * line.unit_price) == line.cost
    (told,) = (section for section in estimate_sections(out) if section.title == "Labour and extras")
    assert [row[1:3] for row in told.rows] == [("70 ft2", "4.00 per ft2"), ("20 ft", "1.05 per ft")]
