"""Methods of measurement against their published thresholds and worked examples."""

from decimal import Decimal

import pytest
from sample_walls import finish, glued, one_wall, opening, region, wall

from roomspec.model.wall import Keep, Opening, Upstand, Wall
from roomspec.quantities.area import m2_decimal
from roomspec.quantities.length import FOOT, MM
from roomspec.takeoff.measured import Measure, measure_wall


def measured(one: Wall, method: str) -> Measure:
    """The measure of one wall."""
    _, laid = one_wall(one)
    return measure_wall(one, laid.walls[0].linings, method)


def m2(*walls: Wall, method: str) -> Decimal:
    """Square metres of walls."""
    return sum((m2_decimal(measured(one, method).area) for one in walls), start=Decimal(0))


def lined(width: int, height: int, *openings: Opening, **changed: object) -> Wall:
    """A wall lined all over."""
    return wall(width, height, finish(glued()), openings=openings, **changed)


WINDOW = opening("window", 1500, 1200, 1000, sill=900)
DOOR = opening("door", 900, 2100, 1000)
PATIO = opening("door", 2000, 2100, 1000)
VENT = opening("void", 600, 600, 1000, sill=1000)
M64 = (
    lined(5000, 2500, WINDOW),
    lined(4000, 2500, DOOR),
    lined(5000, 2500, PATIO),
    lined(4000, 2500, VENT),
)


@pytest.mark.parametrize(
    ("method", "expected"), [("net", "36.75"), ("vob", "40.80"), ("smm7", "37.11"), ("nrm2", "37.11")]
)
def test_one_room_under_four_methods(method: str, expected: str) -> None:
    """M-64: 5.00 x 4.00 x 2.50 with a window, a door, a patio door and a vent."""
    assert m2(*M64, method=method) == Decimal(expected)


def test_gross_of_that_room() -> None:
    """M-64: 45.00 m2 before any opening."""
    walls = [lined(width, 2500) for width in (5000, 4000, 5000, 4000)]
    assert m2(*walls, method="net") == 45


def test_that_room_by_is1200() -> None:
    """M-11 on the room of M-64: only the vent, 0.36 m2, is not deducted, as a lining has one face."""
    assert m2(*M64, method="is1200") == Decimal("37.11")


@pytest.mark.parametrize(
    ("width", "height", "deducted"), [(1180, 2100, False), (1250, 2000, False), (1200, 2100, True)]
)
def test_vob_measures_over_up_to_and_including_2_5(width: int, height: int, deducted: bool) -> None:
    """M-01, M-02, VOB/C ATV DIN 18363 and 18340 section 5: 2.478 and exactly 2.50 m2 measured over, 2.52 deducted."""
    area = Decimal(width * height) / 1_000_000
    expected = Decimal("12.5") - (area if deducted else 0)
    assert m2(lined(5000, 2500, opening("door", width, height, 1000)), method="vob") == expected


@pytest.mark.parametrize(("sill", "deducted"), [(900, False), (0, True), (1700, True)])
@pytest.mark.parametrize(("method", "width"), [("smm7", 625), ("nrm2", 1250)])
def test_void_minimum_counts_inside_only(method: str, width: int, sill: int, deducted: bool) -> None:
    """M-08 (0.50 m2), M-09 (1.00 m2, from memory), M-10: at the floor or the ceiling line always deducted."""
    void = opening("void", width, 800, 1000, sill=sill)
    expected = Decimal("12.5") - (Decimal(width * 800) / 1_000_000 if deducted else 0)
    assert m2(lined(5000, 2500, void), method=method) == expected


@pytest.mark.parametrize(("method", "width"), [("smm7", 626), ("nrm2", 1251)])
def test_void_over_the_minimum_is_deducted(method: str, width: int) -> None:
    """M-08, M-09 (from memory): a millimetre more and the void is deducted."""
    void = opening("void", width, 800, 1000, sill=800)
    assert m2(lined(5000, 2500, void), method=method) == Decimal("12.5") - Decimal(width * 800) / 1_000_000


@pytest.mark.parametrize(("method", "limit"), [("smm7", 300), ("nrm2", 600)])
def test_narrow_work_by_length(method: str, limit: int) -> None:
    """M-09 (600 mm, from memory) and M-08 (300 mm): work that narrow is measured by length."""
    narrow, wider = measured(lined(limit, 2400), method), measured(lined(limit + 1, 2400), method)
    assert (narrow.area, narrow.length) == (0, 2400 * MM)
    assert (wider.area, wider.length) == ((limit + 1) * MM * 2400 * MM, 0)


@pytest.mark.parametrize(
    ("width", "area", "reveals"),
    [(500, "12.50", "0"), (501, "11.999", "0"), (2500, "10.00", "0"), (3001, "9.499", "0.5001")],
)
def test_is1200_three_steps(width: int, area: str, reveals: str) -> None:
    """M-11, IS 1200 parts 12, 13: to 0.5 m2 nothing, to 3 m2 deducted, beyond with reveals (0.1 x 2 x 1.000 + head)."""
    hole = opening("window", width, 1000, 1000, sill=800, reveal=100 * MM, lined=("jambs", "head"))
    assert m2(lined(5000, 2500, hole), method="is1200") == Decimal(area) + Decimal(reveals)


def test_vob_reveals_by_length_whatever_the_opening_size() -> None:
    """M-20, M-22, DIN 18340 5.2.6: two jambs of 1.200 and a head of 1.500 make 3.900 m; none where it is not lined."""
    hole = opening("window", 1500, 1200, 1000, sill=900, reveal=250 * MM, lined=("jambs", "head"))
    assert measured(lined(5000, 2500, hole), "vob").length == 3900 * MM
    assert measured(lined(5000, 2500, WINDOW), "vob").length == 0


def test_vob_deep_reveals_by_area() -> None:
    """M-20: a reveal deeper than 1 m is measured by area: 1.001 x 1.500 for the head, over 12.5 m2."""
    hole = opening("window", 1500, 1200, 1000, sill=900, reveal=1001 * MM, lined=("head",))
    result = measured(lined(5000, 2500, hole), "vob")
    assert (m2_decimal(result.area), result.length) == (Decimal("14.0015"), 0)


@pytest.mark.parametrize(
    ("method", "deep", "area", "length"),
    [
        ("net", 250, "11.675", 0),
        ("nrm2", 600, "10.700", 3900),
        ("nrm2", 601, "13.0439", 0),
        ("smm7", 300, "10.700", 3900),
        ("smm7", 301, "11.8739", 0),
    ],
)
def test_lined_reveals_are_never_left_out(method: str, deep: int, area: str, length: int) -> None:
    """M-08, M-09 (600 mm from memory): 3.900 m of reveals by length where that narrow, else by area.

    The window of 1.80 m2 is deducted from 12.5 m2 by each of these methods: 10.70 m2.
    """
    hole = opening("window", 1500, 1200, 1000, sill=900, reveal=deep * MM, lined=("jambs", "head"))
    result = measured(lined(5000, 2500, hole), method)
    assert (m2_decimal(result.area), result.length) == (Decimal(area), length * MM)


@pytest.mark.parametrize(
    ("method", "area", "length"), [("net", "10.325", 0), ("nrm2", "9.5", 5500), ("vob", "12.5", 5500)]
)
def test_reveals_in_two_surfaces_are_measured_once(method: str, area: str, length: int) -> None:
    """A door of 1.5 x 2.0 in a dado and the lining above, 0.15 deep: jambs and head, 5.5 m, stand once. No source."""
    low, high = finish(glued(), region=region(top=1000)), finish(glued(), "horizontal", region=region(bottom=1000))
    hole = opening("door", 1500, 2000, 1000, reveal=150 * MM, lined=("jambs", "head"))
    result = measured(wall(5000, 2500, low, high, openings=(hole,)), method)
    assert (m2_decimal(result.area), result.length) == (Decimal(area), length * MM)


def test_reveals_in_narrow_work_are_not_lost() -> None:
    """M-09 (from memory): work 600 wide goes by length, 2.400 m, and so do reveals in it, 2 x 0.5 + 0.4 m."""
    hole = opening("window", 400, 500, 100, sill=900, reveal=150 * MM, lined=("jambs", "head"))
    result = measured(lined(600, 2400, hole), "nrm2")
    assert (result.area, result.length) == (0, (2400 + 1400) * MM)


@pytest.mark.parametrize(("size", "expected"), [(100, "12.5"), (101, "11.995")])
def test_vob_skirting(size: int, expected: str) -> None:
    """M-06: a skirting of up to 10 cm is measured over, a higher one is not."""
    kept = lined(5000, 2500, keeps=(Keep("skirting", size * MM),))
    assert m2(kept, method="vob") == Decimal(expected)


@pytest.mark.parametrize(
    ("method", "height", "lap", "expected"),
    [
        ("vob", 100, None, "12.5"),
        ("vob", 101, None, "11.995"),
        ("vob", 150, 50, "12.5"),
        ("nrm2", 150, 50, "12"),
        ("nrm2", 150, None, "11.75"),
    ],
)
def test_a_covering_turned_up_is_measured_as_a_tile_base(
    method: str, height: int, lap: int | None, expected: str
) -> None:
    """M-06 (DIN 18363 names the tile base with the skirting): by what it shows, under the panels that lap it."""
    kept = lined(5000, 2500, upstand=Upstand(height * MM, None if lap is None else lap * MM))
    assert m2(kept, method=method) == Decimal(expected)


def test_vob_share_of_an_opening_in_two_surfaces() -> None:
    """M-25: a door of 3.0 m2 in a dado and the lining above is judged share by share, 1.5 m2 each: measured over."""
    low, high = finish(glued(), region=region(top=1000)), finish(glued(), "horizontal", region=region(bottom=1000))
    both = wall(5000, 2500, low, high, openings=(opening("door", 1500, 2000, 1000),))
    assert m2(both, method="vob") == Decimal("12.5")
    assert m2(both, method="net") == Decimal("9.5")


def test_wallpaper_example_net() -> None:
    """M-53: 70 ft of wall 9 ft high, three windows 4 x 5 and a door 3 x 7: 630 - 81 = 549 square feet."""
    walls = [_in_feet(20, 9, (4, 5), (4, 5), (4, 5)), _in_feet(20, 9, (3, 7)), _in_feet(15, 9), _in_feet(15, 9)]
    assert sum(measured(one, "net").area for one in walls) == 549 * FOOT * FOOT


def test_four_walls_example_net() -> None:
    """M-51: four walls 12 x 8 ft, a door 3 x 7 and two windows 3 x 4: 384 gross, 339 net."""
    walls = [_in_feet(12, 8, (3, 7)), _in_feet(12, 8, (3, 4), (3, 4)), _in_feet(12, 8), _in_feet(12, 8)]
    assert sum(measured(one, "net").area for one in walls) == 339 * FOOT * FOOT


def test_raked_and_gable_walls() -> None:
    """M-60: low height x width + half the rise x width; M-61: a triangle is half of base by height."""
    raked = wall(3000, ((0, 2400 * MM), (3000 * MM, 2700 * MM)), finish(glued()))
    spandrel = wall(2000, ((0, 0), (2000 * MM, 1500 * MM)), finish(glued()))
    assert m2(raked, method="net") == Decimal("7.65")
    assert m2(spandrel, method="net") == Decimal("1.5")


def test_every_step_is_said() -> None:
    """Each line of a measure says what was judged and how."""
    assert measured(lined(5000, 2500, DOOR), "vob").lines == (
        "5.000 x 2.500 = 12.50 m2",
        "door 0.900 x 2.100 = 1.89 m2: not over 2.50 m2, measured over",
    )


def test_a_raked_area_is_no_product_of_its_sides() -> None:
    """M-60 in words: the overall size and the area stand apart where one does not give the other."""
    raked = wall(3000, ((0, 2400 * MM), (3000 * MM, 2700 * MM)), finish(glued()))
    assert measured(raked, "net").lines == ("overall 3.000 x 2.700, area 7.65 m2",)


def test_steps_in_feet_and_inches() -> None:
    """M-51 in words for a job in feet: 12 x 8 ft less a door of 3 x 7 ft."""
    one = _in_feet(12, 8, (3, 7))
    _, laid = one_wall(one)
    assert measure_wall(one, laid.walls[0].linings, "net", "in").lines == (
        "12' x 8' = 96.00 ft2",
        "window 3' x 7' = 21.00 ft2: deducted",
    )


def _in_feet(width: int, height: int, *holes: tuple[int, int]) -> Wall:
    openings = tuple(
        Opening("window", (1 + 5 * at) * FOOT, w * FOOT, FOOT, h * FOOT) for at, (w, h) in enumerate(holes)
    )
    top, floor = ((0, height * FOOT), (width * FOOT, height * FOOT)), ((0, 0), (width * FOOT, 0))
    return Wall("a", width * FOOT, width * FOOT, top, floor, openings=openings, finishes=(finish(glued()),))
