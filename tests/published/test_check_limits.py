"""Published thresholds that the checks use, each at its edge (trade-facts.md sections 3, 4, 5, 8, 9 and 10)."""

from fractions import Fraction
from itertools import pairwise

import pytest

from roomspec.checks.flatness_limits import THIN_BED, gap_allowed, plumb_allowed
from roomspec.checks.lining_class import class_of, parts_may_be, wanted, worse
from roomspec.checks.rules.fire_and_safety import heavy_pack, socket_near_bath
from roomspec.checks.rules.laying import offset_too_large
from roomspec.checks.rules.water import wet_zone_too_low
from roomspec.layout.rows import JOINTS_APART
from roomspec.quantities.area import SQUARE_METRE
from roomspec.quantities.length import METRE, MM, mm


def metres(value: str) -> int:
    """Nanometres in so many metres."""
    return int(Fraction(value) * METRE)


@pytest.mark.parametrize(
    ("row", "gaps"),
    [
        (2, (5, 8, 12, 15, 20)),
        (3, (2, 4, 10, 12, 15)),
        (4, (1, 3, 9, 12, 15)),
        (5, (5, 10, 15, 25, 30)),
        (6, (3, 5, 10, 20, 25)),
        (7, (2, 3, 8, 15, 20)),
    ],
)
def test_flatness_at_the_columns_of_the_table(row: int, gaps: tuple[int, ...]) -> None:
    """DIN 18202 Table 3. Trap: a trade page prints 2 in row 4 at 1 m; the handbook and others give 3."""
    assert [gap_allowed(row, metres(at)) // MM for at in ("0.1", "1", "4", "10", "15")] == list(gaps)


@pytest.mark.parametrize(
    ("row", "printed"),
    [
        (5, {"0.6": 8, "1.5": 11, "2": 12, "2.5": 13, "3": 13, "3.5": 14, "6": 18, "8": 22}),
        (6, {"0.6": 4, "1.5": 6, "2": 7, "2.5": 8, "3": 8, "3.5": 9, "6": 13, "8": 17}),
        (7, {"1.5": 4, "2": 5, "2.5": 6, "3": 6, "3.5": 7, "6": 10, "8": 13}),
    ],
)
def test_flatness_between_them(row: int, printed: dict[str, int]) -> None:
    """F-01: the handbook's interpolated values (Zentralverband Deutsches Baugewerbe), linear, to whole mm."""
    assert {at: gap_allowed(row, metres(at)) // MM for at in printed} == printed


@pytest.mark.parametrize(("row", "at", "printed", "right"), [(7, "0.6", 2, 3), (2, "3.5", 12, 11)])
def test_two_slips_of_the_printed_table(row: int, at: str, printed: int, right: int) -> None:
    """Traps: row 7 at 0.6 m is printed 2 (linear 2.56), row 2 at 3.5 m is printed 12 (linear 11.33)."""
    assert gap_allowed(row, metres(at)) == right * MM != printed * MM


def test_flatness_beyond_the_table_keeps_its_nearest_column() -> None:
    """DIN 18202 Table 3, row 6: nothing is said below 0.1 m and above 15 m."""
    assert (gap_allowed(6, metres("0.05")), gap_allowed(6, metres("30"))) == (3 * MM, 25 * MM)


@pytest.mark.parametrize(
    ("height", "most"), [("2400", 8), ("2999.999999", 8), ("3000", 8), ("3000.000001", 12), ("6000", 12)]
)
def test_plumb(height: str, most: int) -> None:
    """F-12b: NHBC Standards 2020 9.1.3, 8 mm up to 3 m, taller 12 in all. Trap: the 2019 edition changes at 2.5 m."""
    assert plumb_allowed(mm(height)) == most * MM


@pytest.mark.parametrize(
    ("purpose", "square_metres", "least"),
    [
        ("wc", "3.9", "D"),  # R-10, and the worked example: a WC of 3.9 m2 may be all D
        ("wc", "4", "D"),
        ("wc", "4.000001", "C"),
        ("bedroom", "12", "C"),
        ("office", "29.99", "D"),  # R-11, from memory
        ("office", "30", "D"),
        ("office", "30.000001", "C"),
        ("corridor", "3", "B"),
        ("garage", "40", "C"),  # R-12, unresolved: C as printed, D from memory
        ("stair", "60", "B"),
    ],
)
def test_lining_classes_by_room_size(purpose: str, square_metres: str, least: str) -> None:
    """Approved Document B, volume 1 Table 4.1 and volume 2 Table 6.1 (its 30 m2 from memory)."""
    assert wanted("england", purpose, Fraction(square_metres) * SQUARE_METRE).least == least


def test_a_room_whose_size_is_not_known_is_taken_as_large() -> None:
    """R-13: a feature wall has no floor area, so the class for other rooms is asked."""
    assert wanted("england", "wc", None).least == "C"


def test_a_homes_garage_of_up_to_40_m2_is_left_open() -> None:
    """Approved Document B volume 1 Table 4.1, R-12: 40 m2 seen, the class garbled: D is not refused for certain."""
    perhaps = [wanted("england", "garage", Fraction(size) * SQUARE_METRE).perhaps for size in ("39.9", "40", "40.01")]
    assert perhaps == ["D", "D", ""]
    assert wanted("england", "garage", None).perhaps == "D" and not wanted("england", "living", None).perhaps


@pytest.mark.parametrize(
    ("purpose", "floor", "area", "allowed"),
    [
        ("living", "12", "5.999999", True),  # less than half of 12 m2 is 6
        ("living", "12", "6", False),
        ("living", "60", "20", True),  # the cap of a dwelling
        ("living", "60", "20.000001", False),
        ("office", "60", "29.999999", True),  # half of the floor: the cap of 60 is not reached
        ("office", "60", "30", False),
        ("office", "200", "60", True),  # the cap governs
        ("office", "200", "60.000001", False),
        ("corridor", "60", "1", False),  # no parts in circulation spaces
    ],
)
def test_parts_of_walls_may_be_lower(purpose: str, floor: str, area: str, allowed: bool) -> None:
    """Approved Document B volume 1, 4.4 (R-15): under half of the floor, 20 m2 at most; elsewhere 60 (R-16, BB100)."""
    size = Fraction(floor) * SQUARE_METRE
    assert parts_may_be(wanted("england", purpose, size), Fraction(area) * SQUARE_METRE, size) is allowed


@pytest.mark.parametrize(
    ("purpose", "least"),
    [
        ("stair", "A"),
        ("corridor", "B"),
        ("bedroom", "C"),
        ("office", "C"),
        ("assembly", "C"),
        ("classroom", "B"),
        ("ward", "A"),
        ("retail", "B"),
        ("store", "C"),
    ],
)
def test_flame_spread_classes_by_occupancy(purpose: str, least: str) -> None:
    """NFPA 101 Table A.10.2.2, new buildings: exits, exit access corridors, other spaces."""
    assert wanted("nfpa", purpose, None).least == least


@pytest.mark.parametrize(
    ("better", "poorer"), list(pairwise(("A1", "A2-s1,d0", "B-s3,d2", "C-s1,d0", "D-s1,d0", "E", "F")))
)
def test_euroclasses_in_order(better: str, poorer: str) -> None:
    """EN 13501-1 (R-01): the letter ranks; a requirement X-s3,d2 is met by any better letter."""
    one, other = class_of(better, "england"), class_of(poorer, "england")
    assert one is not None and other is not None and worse(other, one, "england") and not worse(one, other, "england")


def test_classes_of_two_schemes_are_not_mixed() -> None:
    """ASTM E84 knows A, B and C (R-30), EN 13501-1 no plain A: a class of the other scheme is no class."""
    stated = ("A", "C", "B-s2,d0", "D", "A2", None)
    assert [class_of(one, "nfpa") for one in stated] == ["A", "C", None, None, None, None]
    assert [class_of(one, "england") for one in stated] == [None, "C", "B", "D", "A2", None]


def test_single_thresholds() -> None:
    """Those whose edges the case files walk: each by its source."""
    assert wet_zone_too_low.LEAST == 1800 * MM  # NCC 2022 10.2.2, AS 3740 (Z-10)
    assert offset_too_large.LONGEST == 460 * MM  # ANSI A108.02: 18 in, offset 33 % (L-04)
    assert JOINTS_APART == 150 * MM  # wood-flooring practice: 6 in (L-05)
    assert heavy_pack.MOST == 25  # HSE L23, INDG143 (H-07)
    assert THIN_BED == 3 * MM  # NHBC 9.2.5, under 2 m (F-12)
    assert socket_near_bath.ZONE_2 == 600 * MM  # IEC 60364-7-701 (Z-32)
    assert socket_near_bath.HIGH == 2250 * MM  # (Z-31)
    assert socket_near_bath.SOCKETS_FROM == 2500 * MM  # BS 7671:2018+A2:2022, from memory (Z-33)
