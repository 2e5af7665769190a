"""Recesses, boxes and sloping faces against published rules of measurement: M-20 to M-26, M-60, M-61, S-07, S-08.

The rules of DIN 18340 and DIN 18363 are as a trade journal works them (malerblatt.de, "Fit im Aufmass" 2, 4 and 6).
"""

from decimal import Decimal
from fractions import Fraction

import pytest
from msgspec.structs import replace
from sample_walls import TERMS, finish, glued, opening, region, wall

from roomspec.layout.lay_room import lay_room
from roomspec.model.room import Room
from roomspec.model.wall import Boxing, Ceiling, Corner, Opening, Wall
from roomspec.quantities.area import m2_decimal
from roomspec.quantities.length import MM
from roomspec.takeoff.measured import Measure
from roomspec.takeoff.room import take_off_room
from roomspec.takeoff.taken import RoomTakeOff

FACES = ("jambs", "head", "sill")


def taken(*walls: Wall, ceilings: tuple[Ceiling, ...] = (), method: str = "vob") -> RoomTakeOff:
    """A room of these walls and ceilings, measured by a method."""
    room, terms = Room("1", walls=walls, ceilings=ceilings), replace(TERMS, measured=method)
    return take_off_room(room, lay_room(room, terms), terms)


def lined(*openings: Opening, **changed: object) -> Wall:
    """A wall 5.00 x 2.50 lined all over, 12.5 m2."""
    return wall(5000, 2500, finish(glued()), openings=openings, **changed)


def niche(width: int, height: int, deep: int, at: int = 1000, sill: int = 200) -> Opening:
    """A lined niche."""
    return opening("niche", width, height, at, sill=sill, deep=deep * MM, lined=FACES)


def said(measure: Measure) -> tuple[Decimal, int]:
    """Square metres and millimetres."""
    return m2_decimal(measure.area), measure.length // MM


def test_reveals_of_a_niche_by_length_up_to_a_metre_deep() -> None:
    """M-20, DIN 18340 5.2.6: a niche of 1.2 m2 is measured over, its four reveals by length: 2 x 1.0 + 2 x 1.2 m."""
    (found,) = taken(lined(niche(1200, 1000, 300))).walls
    assert said(found.measured) == (Decimal("12.5"), 4400)


def test_deeper_reveals_by_area() -> None:
    """M-20: deeper than 1 m they go by area: (2 x 1.0 + 2 x 1.2) x 1.001 over the wall's 12.5 m2."""
    (found,) = taken(lined(niche(1200, 1000, 1001))).walls
    assert said(found.measured) == (Decimal("16.9044"), 0)


@pytest.mark.parametrize(("width", "height", "wall_area"), [(1200, 1000, "12.5"), (2000, 1300, "9.9")])
def test_the_back_of_a_niche_is_measured_separately(width: int, height: int, wall_area: str) -> None:
    """M-21, M-22, DIN 18340 4.2: whatever its size, over 2.5 m2 or under it, the back is measured by itself."""
    (found,) = taken(lined(niche(width, height, 300))).walls
    assert m2_decimal(found.measured.area) == Decimal(wall_area)
    backs = [face for face in found.faces if face.where == "niche back"]
    assert [face.measured.area for face in backs] == [Fraction(width * height * MM * MM)]
    assert all(not face.measured.lines for face in found.faces if face not in backs)


def test_different_recesses_are_judged_apart() -> None:
    """M-23: a window of 1.8 m2 and a niche of 1.5 m2 under it are judged each for itself: both measured over.

    Two windows that a pier parts are judged apart too.
    """
    under = niche(1500, 1000, 100, at=1000, sill=0)
    (found,) = taken(lined(opening("window", 1500, 1200, 1000, sill=1000), under)).walls
    assert m2_decimal(found.measured.area) == Decimal("12.5")
    pair = (opening("window", 1200, 1500, 800, sill=800), opening("window", 1200, 1500, 2100, sill=800))
    (found,) = taken(lined(*pair)).walls
    assert m2_decimal(found.measured.area) == Decimal("12.5")


@pytest.mark.parametrize(
    ("other", "area"),
    [
        (opening("window", 1200, 1000, 1900, sill=1000), "9.5"),
        (opening("window", 1200, 1000, 1910, sill=1000), "12.5"),
        (opening("window", 900, 400, 1000, sill=2000), "12.5"),
        (niche(1200, 1000, 100, at=1900, sill=1000), "12.5"),
    ],
    ids=["beside it", "beyond a pier", "over it, 2.16 m2 in all", "a niche"],
)
def test_a_door_and_what_adjoins_it_are_one_opening(other: Opening, area: str) -> None:
    """M-23: 1.8 m2 of door and 1.2 m2 of window with nothing between them are 3.0 m2, over 2.5: both deducted."""
    (found,) = taken(lined(opening("door", 900, 2000, 1000), other)).walls
    assert m2_decimal(found.measured.area) == Decimal(area)
    together = "door 0.900 x 2.000 = 1.80 m2: with what adjoins it over 2.50 m2, deducted"
    assert (together in found.measured.lines) == (area == "9.5")


def test_a_recess_round_a_corner_is_judged_wall_by_wall() -> None:
    """M-24: 1.5 m2 on one wall and 1.5 m2 on the next, 3.0 m2 in all: each wall measures its own over."""
    left = lined(opening("window", 1000, 1500, 4000, sill=500))
    right = lined(opening("window", 1000, 1500, 0, sill=500))
    assert [m2_decimal(one.measured.area) for one in taken(left, right).walls] == [Decimal("12.5")] * 2


def test_a_recess_in_two_surfaces_is_shared_out() -> None:
    """M-25: a niche of 3.0 m2 half in a dado, half over it, is two of 1.5 m2: measured over twice."""
    low, high = finish(glued(), region=region(top=1000)), finish(glued(), "horizontal", region=region(bottom=1000))
    hole = opening("niche", 1500, 2000, 1000, sill=0, deep=100 * MM)
    (found,) = taken(wall(5000, 2500, low, high, openings=(hole,))).walls
    assert m2_decimal(found.measured.area) == Decimal("12.5")


def test_faces_that_divide_into_simple_shapes_are_not_boxed_in() -> None:
    """M-26: the circumscribing rectangle is for what cannot be divided; an L-shaped ceiling is two rectangles."""
    sides = [(width, "inside") for width in (3000, 2000, 1000, 1000, 2000, 1000)]
    sides[3] = (1000, "outside")
    walls = tuple(
        wall(width, 2400, name=name, corner=Corner(kind)) for name, (width, kind) in zip("abcdef", sides, strict=True)
    )
    over = Ceiling("over", None, None, finishes=(finish(glued(), "crosswise"),))
    found = taken(*walls, ceilings=(over,))
    assert m2_decimal(found.ceilings[0].measured.area) == 4


def test_raked_walls_and_spandrels() -> None:
    """M-60, S-07: low height x width + half the rise x width; M-61, S-08: a spandrel is half of base by height."""
    raked = wall(4000, ((0, 2400 * MM), (4000 * MM, 3400 * MM)), finish(glued()), name="a")
    spandrel = wall(3600, ((0, 0), (3600 * MM, 2700 * MM)), finish(glued()), name="b")
    found = taken(raked, spandrel, method="net")
    assert [m2_decimal(one.measured.area) for one in found.walls] == [Decimal("11.6"), Decimal("4.86")]


@pytest.mark.parametrize("method", ["net", "nrm2", "smm7", "vob", "is1200"])
def test_what_a_box_hides_is_deducted_by_every_method(method: str) -> None:
    """A box is no void: its faces are measured by themselves, so the wall behind it is not measured over.

    The box 0.90 x 1.00, 0.70 deep: front 0.90, ends and top 0.70 and 0.63 m2. Common practice, no source.
    """
    box = Boxing(1000 * MM, 900 * MM, 1000 * MM, 700 * MM)
    (found,) = taken(lined(boxing=(box,)), method=method).walls
    assert m2_decimal(found.measured.area) == Decimal("11.6")
    areas = {face.where.removeprefix("boxing "): m2_decimal(face.measured.area) for face in found.faces}
    assert areas == {
        "front": Decimal("0.9"),
        "left end": Decimal("0.7"),
        "right end": Decimal("0.7"),
        "top": Decimal("0.63"),
    }
