"""What the lines of a catalogue say, value by value."""

from datetime import date
from decimal import Decimal

import pytest
from read_job import compiled, mm, told, words_at

from roomspec.model.product import Compound, Fixing, Panel, Price, Sheet, Stock, Support, Trim
from roomspec.quantities.length import METRE, MM

PANEL = "panel p\n  length 2600\n  cover 250\n  thick 10\n"
BARE = Panel("p", "", (Stock(2600 * MM),), 250 * MM, 10 * MM)


def product(text: str) -> object:
    """The one product of a text without problems."""
    job = compiled(f"job j\n{text}")
    assert not told(job), job.problems
    (value,) = job.catalogue.products.values()
    return value


def test_a_panel_keeps_its_defaults() -> None:
    """Length, cover and thickness are all it needs."""
    assert product(PANEL) == BARE


@pytest.mark.parametrize(
    ("line", "field", "value"),
    [
        ("tongue 8", "tongue", 8 * MM),
        ("weighs 5.5 kg/m2", "weighs", Decimal("5.5")),
        ("pack 5", "pack", 5),
        ("price 31.50 each", "price", Price(Decimal("31.50"), "each")),
        ("price 150.00 per pack", "price", Price(Decimal("150.00"), "pack")),
        ("price 48 per m2", "price", Price(Decimal(48), "m2")),
        ("lay vertical overhead", "lay", ("vertical", "overhead")),
        ("joined all edges", "joined", "all edges"),
        ("joined long edges", "joined", "long edges"),
        ("sequence 4", "sequence", 4),
        ("reaction B-s2, d0", "reaction", "B-s2,d0"),
        ("wet direct", "wet", "direct"),
        ("expands 0.06 mm/m/K", "expands", Decimal("0.06")),
        ("supports every 400", "supports", 400 * MM),
        ("acclimatise 2 days", "acclimatise", 48),
        ("mitre never", "mitre", False),
        ("valid until 2027-06-30", "valid_until", date(2027, 6, 30)),
        ('note "Handle with gloves."', "notes", ("Handle with gloves.",)),
    ],
)
def test_each_line_of_a_panel_is_read(line: str, field: str, value: object) -> None:
    """One line gives one field."""
    found = product(f"{PANEL}  {line}\n")
    assert isinstance(found, Panel)
    assert getattr(found, field) == value


def test_a_price_per_square_foot_stays_as_it_is_written() -> None:
    """Nothing is reckoned that could be off by a hair."""
    found = product(f"{PANEL}  price 4.50 per ft2\n")
    assert isinstance(found, Panel)
    assert found.price == Price(Decimal("4.50"), "ft2")


def test_several_lengths_have_their_own_prices() -> None:
    """Each as it is delivered; the panel's length is the longest."""
    job = compiled(
        "job j\nroom r\n  height 2400\n  finish p by m vertical\n  wall a 3000\nmethod m\n"
        + PANEL.replace("length 2600", "length 2400 at 20.00 each\n  length 2600 at 24.00 per pack")
    )
    panel = job.catalogue.products["panel", "p"]
    assert isinstance(panel, Panel)
    first, second = (Price(Decimal("20.00")), Price(Decimal("24.00"), "pack"))
    assert panel.stocks == (Stock(2400 * MM, first), Stock(2600 * MM, second))
    assert panel.length == 2600 * MM


@pytest.mark.parametrize(
    ("text", "value"),
    [
        (
            'trim t "Edge"\n  role outside-corner\n  fits 10\n  length 2600\n  allows 2\n  price 9.80 per m',
            Trim("t", "Edge", "outside-corner", (Stock(2600 * MM),), *mm(10, 2), 1, Price(Decimal("9.80"), "m")),
        ),
        (
            "adhesive grab\n  tube 290 ml\n  pack 12\n  price 6.20 each",
            Compound("adhesive", "grab", "", Decimal(290), 12, Price(Decimal("6.20"))),
        ),
        ("sealant clear\n  tube 0.31 l", Compound("sealant", "clear", "", Decimal(310))),
        ("support b\n  section 25 x 50\n  length 2.4 m", Support("b", "", *mm(25, 50), (Stock(2400 * MM),))),
        ("fixing s\n  size 3.5 x 35\n  pack 200", Fixing("s", "", *mm(3.5, 35), 200)),
        ("sheet f\n  roll 1200 x 50 m\n  laps 100", Sheet("f", "", 1200 * MM, 50 * METRE, 100 * MM)),
    ],
)
def test_every_other_product_is_read(text: str, value: object) -> None:
    """Each kind from its own lines."""
    assert product(f"{text}\n") == value


@pytest.mark.parametrize(
    ("text", "lines"),
    [
        ("panel p\n  thick 10", ["length", "cover"]),
        ("trim p\n  fits 10", ["role", "length"]),
        ("adhesive p\n  pack 2", ["tube"]),
        ("sealant p\n  pack 2", ["tube"]),
        ("support p\n  pack 2", ["section", "length"]),
        ("fixing p\n  pack 2", ["size"]),
        ("sheet p\n  laps 20", ["roll"]),
    ],
)
def test_what_a_product_lacks_is_told_at_its_name(text: str, lines: list[str]) -> None:
    """One `missing-line` for each line that its use needs; the product is not made."""
    job = compiled(f"job j\n{text}\n")
    problems = told(job)
    assert [problem.name for problem in problems] == ["missing-line"] * len(lines)
    for problem, line in zip(problems, lines, strict=True):
        assert f"says no `{line}`" in problem.message
        assert words_at(problem.at, f"job j\n{text}\n") == "p"
        assert problem.help.startswith(f"add a line such as `{line} ")
    assert not job.catalogue.products


@pytest.mark.parametrize(
    ("old", "new", "words", "message"),
    [
        ("cover 250", "cover 0", "0", "a cover width of 0 mm"),
        ("cover 250", "cover -250", "-250", "a cover width of -250 mm"),
        ("cover 250", "cover 100\n  tongue 100", "tongue 100", "wider than the cover"),
        ("length 2600", "length 26000", "26000", "a length of 26 m"),
        ("length 2600", "length 2600\n  length 2600", "length 2600", "stands twice"),
        ("thick 10", "thick 1000", "1000", "a thickness of 1000 mm"),
        ("thick 10", "thick 10\n  sequence 0", "0", "a sequence of 0"),
        ("thick 10", "thick 10\n  pack 0", "0", "a pack of 0"),
        ("thick 10", "thick 10\n  weighs 0 kg/m2", "0 kg/m2", "a weight of 0 kg/m2"),
        ("thick 10", "thick 10\n  price -3 each", "-3", "a price of -3"),
        ("thick 10", "thick 10\n  price 3 per h", "h", "a price per h"),
        ("thick 10", "thick 10\n  wet direct up 0 to 900", "up 0 to 900", "a product has no region"),
        ("thick 10", "thick " + "1" * 40, "1" * 40, "too many digits"),
    ],
)
def test_a_product_that_cannot_be_is_told_at_its_words(old: str, new: str, words: str, message: str) -> None:
    """Each is one problem, at the very words, and nothing is said to be missing beside it."""
    text = "job j\n" + PANEL.replace(old, new)
    (problem,) = told(compiled(text))
    assert message in problem.message
    assert words_at(problem.at, text) == words


@pytest.mark.parametrize("text", ["trim t\n  role edge\n", "support t\n  section 25 x 50\n"])
def test_a_length_of_a_trim_or_a_batten_stands_once(text: str) -> None:
    """The second of two equal lengths is told of, at its line."""
    found = compiled(f"job j\n{text}  length 2400 at 3.00 each\n  length 2400 at 4.00 each\n")
    (problem,) = (one for one in found.problems if one.name == "repeated-line")
    assert (problem.at.line, problem.message) == (text.count("\n") + 1, "the length 2400 mm stands twice")
