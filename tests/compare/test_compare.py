"""What changed between two jobs: everything that did, nothing that did not."""

import json
from decimal import Decimal
from pathlib import Path

import jsonschema
import pytest
from sides import JOB, changed, side

from roomspec.reports import schemas
from roomspec.reports.comparison.compare import compare
from roomspec.reports.comparison.comparison_json import Comparison, comparison_json

LISTS = ("job", "rooms", "quantities", "order", "labour", "extras", "price", "products")


def facts(out: Comparison) -> dict[str, tuple[object, object]]:
    """The facts of its only changed room or pattern."""
    (room,) = out.rooms
    return {fact.what: (fact.before, fact.after) for fact in room.facts}


def is_empty(out: Comparison) -> bool:
    """True where nothing is listed."""
    said = (out.assumptions, out.exclusions)
    return not any(getattr(out, name) for name in LISTS) and not any(one.added or one.removed for one in said)


@pytest.mark.parametrize(
    "edits",
    [
        (),
        (("wall a 3000", "wall   a  3 m   # measured again"),),
        (("panel board", "\n\n# the supplier's\npanel board"),),
    ],
)
def test_what_says_the_same_is_an_empty_comparison(edits):
    """Unchanged text, other spacing, other units, a comment."""
    out = changed(*edits)
    assert not out.changed
    assert is_empty(out)


def test_a_wall_that_moves_changes_its_room_and_all_that_follows():
    """The fact, the areas, the order, the labour, the price, each by the difference of the two estimates."""
    out = changed(("wall b 2000", "wall b 2500"))
    assert out.changed
    assert out.rooms[0].names == ("1.01",)
    told = facts(out)
    assert told["wall b: width"] == (2000, 2500)
    assert told["wall b: lined area"] == (4.236, 5.436)
    assert "wall a: width" not in told
    (order,) = (line for line in out.order if line.item == "board")
    old, new = side(JOB).out, side(JOB.replace("wall b 2000", "wall b 2500")).out
    assert order.needed.difference == new.order[0].needed - old.order[0].needed > 0
    steps = {step.name: step.amount for step in out.price}
    assert steps["total"].difference == new.price.total - old.price.total
    assert steps["net"].before == old.price.net
    assert steps["net"].after == new.price.net
    assert out.labour[0].cost.difference == Decimal("21.60")  # 1.2 m2 at 0.30 h/m2 and 60.00 per h


def test_an_opening_and_a_point_that_move_are_told_though_no_figure_follows():
    """What was surveyed counts, not only what it costs."""
    out = changed(("socket at 700 up 450", "socket at 800 up 450"))
    assert facts(out) == {"wall a socket 1: from the left": (700, 800)}
    assert out.changed
    assert not out.order
    assert not out.price


def test_rooms_of_a_pattern_change_as_one():
    """Five rooms, one entry."""
    out = changed(("    socket at 700 up 450\n", ""))
    assert out.rooms[0].names == ("2.01", "2.02", "2.03", "2.04", "2.05")
    assert facts(out)["wall a socket 1"] == ("there", None)


def test_rooms_come_and_go_whole():
    """With their size in place of every fact of them."""
    out = changed(("rooms 2.01 to 2.05", "rooms 2.02 to 2.06"))
    assert [(room.names, room.change) for room in out.rooms] == [(("2.06",), "added"), (("2.01",), "removed")]
    assert [(fact.what, fact.after) for fact in out.rooms[0].facts] == [("walls", 1), ("lined area", 7.2)]
    assert not out.order


def test_a_price_alone_changes_the_order_and_no_room():
    """A panel that became dearer: no count differs, the cost does."""
    out = changed(("31.50 each", "33.00 each"))
    assert not out.rooms
    (line,) = out.order
    assert line.needed.difference == 0
    assert line.cost.difference == Decimal("1.50") * (line.ordered.after or 0)


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("31.50 each", "33.00 each", ("board: price", "31.50 each", "33.00 each")),
        ("length 2600", "length 2605", ("board length 1: length", 2600, 2605)),
        ("weighs 5.5", "weighs 9.5", ("board: kg/m2", "5.5", "9.5")),
        ("thick 10", "thick 10\n  acclimatise 48 h", ("board: hours to acclimatise", None, "48")),
        ("thick 10", "thick 10\n  pack 5", ("board: pack", "1", "5")),
        ("thick 10", "thick 10\n  valid until 2027-02-28", ("board: valid until", None, "2027-02-28")),
        ('"Board"', '"Planed board"', ("board: title", "Board", "Planed board")),
    ],
)
def test_what_the_catalogue_says_of_an_ordered_product_is_told(old, new, told):
    """The supplier delivers another item, at another rate, or on another day."""
    out = changed((old, new))
    assert [(fact.what, fact.before, fact.after) for fact in out.products] == [told]


def test_a_step_that_stays_at_nothing_differs_by_nothing_to_the_cent():
    """As `0.00`, like the others."""
    (step,) = [step for step in changed(("31.50", "33.00")).price if step.name == "contingency"]
    assert [str(money) for money in (step.amount.before, step.amount.after, step.amount.difference)] == ["0.00"] * 3


def test_what_is_missing_a_price_has_no_difference():
    """A cost that is not known is not nothing."""
    out = changed(("  price 31.50 each\n", ""))
    (line,) = (line for line in out.order if line.item == "board")
    assert line.cost.after is None
    assert line.cost.difference is None


def test_terms_extras_and_sentences_are_told():
    """Tax, an extra, an assumption."""
    out = changed(("tax 20 %", "tax 19 %"), ('"Skip" 240.00 each', '"Lift" 100.00 each'), ("isolated.", "off."))
    assert [(fact.what, fact.before, fact.after) for fact in out.job] == [("tax", "20", "19")]
    assert [(line.what, line.cost.difference) for line in out.extras] == [("Lift", 100), ("Skip", -240)]
    assert out.assumptions.added == ("Power is off.",)
    assert out.assumptions.removed == ("Power is isolated.",)


def test_two_currencies_are_not_subtracted():
    """Before and after are given, no difference."""
    out = changed(("currency EUR", "currency USD"))
    assert {step.amount.difference for step in out.price} == {None}


@pytest.mark.parametrize(
    "edit", [("wall b 2000", "wall b 2500"), ("31.50 each", "33.00 each"), ("rooms 2.01 to 2.05", "room 2.01")]
)
def test_there_and_back_differ_by_the_same(edit):
    """The differences of the way back are the way there's, negated."""
    there, back = changed(edit), changed(edit[::-1], old=JOB.replace(*edit))
    assert [-(step.amount.difference or 0) for step in there.price] == [step.amount.difference for step in back.price]
    forth = {line.item: line.needed.difference for line in there.order}
    assert {line.item: -line.needed.difference for line in back.order} == forth


def test_the_json_is_as_published():
    """Valid against its schema, empty or not."""
    file = Path(schemas.__file__).parent / "comparison.schema.json"
    validator = jsonschema.Draft202012Validator(json.loads(file.read_text(encoding="utf-8")))
    for out in (changed(), changed(("wall b 2000", "wall b 2500")), compare(side(JOB), side('job other "Other"'))):
        validator.validate(json.loads(comparison_json(out)))
