"""Boxes from their line to figures: worked by hand on a wall 3000 x 2400, cover 250, thick 10."""

from decimal import Decimal

import pytest
from jobs import CATALOGUE, TRIMS, estimate, ordered, task, wall_of

from roomspec.analysis.engine import Estimated
from roomspec.layout.laid import Lining
from roomspec.quantities.area import SQUARE_METRE
from roomspec.quantities.length import MM

ROOM = "room r\n  height 2400\n  wall a 3000\n    boxing {}\n    finish board by {} {}\n"
METHODS = """
method mitred "Glued, mitred arrises"
  glue grab bead 8 every 100
  outside-corner mitred
method trimmed "Glued and trimmed"
  glue grab bead 8 every 100
  start st
  inside-corner ic
  outside-corner oc
method battened "On battens"
  battens lath every 400
  screw screw
  outside-corner oc
support lath
  section 25 x 50
  length 2400
fixing screw
  size 3.5 x 35
"""


def boxed(line: str, method: str = "plain", direction: str = "vertical") -> Estimated:
    """The wall with this box, lined by this method."""
    return estimate(ROOM.format(line, method, direction), CATALOGUE + METHODS + TRIMS)


def faces(made: Estimated) -> dict[str, Lining]:
    """The linings of the wall's boxes by face."""
    return {face.where: face.linings[0] for face in wall_of(made).faces}


def blanks(lining: Lining) -> list[tuple[float, float]]:
    """Lengths and widths in millimetres, in order."""
    return [(piece.length / MM, piece.width / MM) for piece in lining.pieces]


def test_a_box_on_the_floor_has_a_front_two_ends_and_a_top() -> None:
    """The wall behind is unlined; the ends and the top butt against the wall's lining, 10 deep."""
    made = boxed("500 x 900 at 1000 deep 200")
    wall = wall_of(made)
    assert (wall.gross, wall.net) == (Decimal("7.2") * SQUARE_METRE, Decimal("6.75") * SQUARE_METRE)
    assert {name: blanks(lining) for name, lining in faces(made).items()} == {
        "boxing front": [(900, 250), (900, 250)],
        "boxing left end": [(900, 190)],
        "boxing right end": [(900, 190)],
        "boxing top": [(500, 190)],
    }
    assert blanks(wall.linings[0])[4:6] == [(1500, 250), (1500, 250)]


def test_pieces_are_numbered_on_along_the_wall() -> None:
    """Twelve on the wall, then the box's front, ends and top; each is a blank once."""
    made = boxed("500 x 900 at 1000 deep 200")
    assert [piece.number for lining in faces(made).values() for piece in lining.pieces] == [13, 14, 15, 16, 17]
    blanks_of = dict(made.taken.rooms[0].panels)
    assert [blank.name for found in blanks_of.values() for blank in found] == [f"a/{number}" for number in range(1, 18)]
    assert ordered(made).net == Decimal("7.637") * SQUARE_METRE


def test_mitred_arrises_gain_the_build_up() -> None:
    """The front is 10 wider at each end and higher by 10; so are the ends, and the top longer and deeper."""
    made = boxed("500 x 900 at 1000 deep 200", "mitred")
    assert {name: blanks(lining) for name, lining in faces(made).items()} == {
        "boxing front": [(910, 250), (910, 250), (910, 20)],
        "boxing left end": [(910, 200)],
        "boxing right end": [(910, 200)],
        "boxing top": [(520, 200)],
    }


def test_trims_at_a_box_are_counted_once() -> None:
    """Inside corners by the wall: both ends and the top; arrises by the front, and by the top at its ends."""
    made = boxed("500 x 900 at 1000 deep 200", "trimmed")
    taken = made.taken.rooms[0].walls[0]
    runs: dict[str, list[tuple[str, float]]] = {}
    for where, linings in (("wall", taken.linings), *((face.where, face.linings) for face in taken.faces)):
        runs[where] = sorted((run.role, run.length / MM) for run in linings[0].trims if run.role != "start")
    assert runs == {
        "wall": [("inside-corner", 506), ("inside-corner", 901), ("inside-corner", 901)],
        "boxing front": [("outside-corner", 492), ("outside-corner", 894), ("outside-corner", 894)],
        "boxing left end": [],
        "boxing right end": [],
        "boxing top": [("outside-corner", 193), ("outside-corner", 193)],
    }


def test_the_build_up_counts_at_a_box() -> None:
    """Battens 25 and panel 10: the ends lose 35 at the wall; a corner trim of 4 stands off by the battens' depth."""
    made = boxed("500 x 2400 at 1000 deep 200", "battened")
    found = faces(made)
    assert sum(found["boxing front"].strips) == (500 + 2 * (25 - 4)) * MM
    assert blanks(found["boxing left end"]) == [(2400, 200 - 35 + 25 - 4)]
    assert set(found) == {"boxing front", "boxing left end", "boxing right end"}


@pytest.mark.parametrize(
    ("line", "shown"),
    [
        ("500 x 300 at 1000 sill 2100 deep 200", {"front", "left end", "right end", "underside"}),
        ("500 x 300 at 1000 sill 1000 deep 200", {"front", "left end", "right end", "underside", "top"}),
        ("3000 x 300 at 0 sill 2100 deep 200", {"front", "left end", "right end", "underside"}),
    ],
)
def test_which_faces_show(line: str, shown: set[str]) -> None:
    """At the ceiling there is no top, off the floor there is an underside; a feature wall's bulkhead has its ends."""
    assert {name.removeprefix("boxing ") for name in faces(boxed(line))} == shown


@pytest.mark.parametrize(("rise", "left", "right"), [(300, 925, 875), (1500, 1025, 775)])
def test_a_box_on_a_rising_floor_has_ends_of_two_heights(rise: int, left: float, right: float) -> None:
    """Its top is level, 900 over the floor under its middle; its ends reach down to the floor, 500 apart."""
    made = estimate(
        f"room r\n  height 2400\n  wall a 3000\n    floor 0 to {rise}\n"
        "    boxing 500 x 900 at 1000 deep 200\n    finish board by trimmed vertical\n",
        CATALOGUE
        + METHODS
        + TRIMS.replace("allows 2", "allows 0").replace("allows 3", "allows 0").replace("allows 4", "allows 0"),
    )
    found = faces(made)
    assert blanks(found["boxing left end"]) == [(left, 200)]
    assert blanks(found["boxing right end"]) == [(right, 200)]
    front = next(face for face in made.taken.rooms[0].walls[0].faces if face.where == "boxing front")
    runs = sorted(run.length / MM for run in front.linings[0].trims if run.role == "outside-corner")
    assert runs == sorted([500, left, right])


def test_a_box_under_a_raked_ceiling_goes_up_to_it_at_both_ends() -> None:
    """From 2400 to 2700 over 3000: 2500 high at 1000 and 2550 at 1500, whatever height over that was written."""
    made = estimate(
        "room r\n  height 2400\n  wall a 3000\n    height 2400 to 2700\n"
        "    boxing 500 x 2500 at 1000 deep 200\n    finish long by plain vertical\n",
        CATALOGUE + CATALOGUE[: CATALOGUE.index("method")].replace("panel board", "panel long").replace("2600", "3000"),
    )
    found = faces(made)
    assert set(found) == {"boxing front", "boxing left end", "boxing right end"}
    assert blanks(found["boxing front"]) == [(2525, 250), (2550, 250)]
    assert (blanks(found["boxing left end"]), blanks(found["boxing right end"])) == ([(2500, 190)], [(2550, 190)])


def test_a_lined_ceiling_takes_from_the_boxes_that_reach_it_too() -> None:
    """Lined first it takes 10 from the walls, and from a box up to it its front and its end; none from a lower box."""
    heights = {}
    for high in (2400, 1200):
        made = estimate(
            "room r\n  height 2400\n  finish board by plain vertical\n  wall a 3000\n"
            f"    boxing 500 x {high} at 0 deep 200\n  wall b 2000\n  wall c 3000\n  wall d 2000\n"
            "  ceiling over\n    on plasterboard\n    finish board by plain crosswise\n"
        )
        found = faces(made)
        heights[high] = [blanks(found[f"boxing {name}"])[0][0] for name in ("front", "right end")]
    assert heights == {2400: [2390, 2390], 1200: [1200, 1200]}


def test_a_box_in_a_corner_hides_the_next_wall_too() -> None:
    """No end in the corner; wall b, 2000 wide, is set out from the box's front: 200 and the front's build-up of 10."""
    made = estimate(
        "room r\n  height 2400\n  finish board by plain vertical\n  wall a 3000\n"
        "    boxing 500 x 2400 at 0 from right deep 200\n" + "  wall b 2000\n    corner open\n",
    )
    assert set(faces(made)) == {"boxing front", "boxing left end"}
    (lining,) = wall_of(made, "b").linings
    assert lining.region.left == 210 * MM
    assert wall_of(made, "b").net == Decimal("4.32") * SQUARE_METRE
    assert lining.strips == (250 * MM,) * 7 + (40 * MM,)


def test_two_boxes_that_touch_share_an_inside_corner() -> None:
    """The deeper one's end is hidden as far as the shallower one reaches; that one's front butts against it."""
    made = estimate(
        "room r\n  height 2400\n  wall a 3000\n    boxing 500 x 2400 at 500 deep 300\n"
        "    boxing 500 x 2400 at 1000 deep 100\n    finish board by plain vertical\n"
    )
    found = faces(made)
    assert blanks(found["boxing 1 left end"]) == [(2400, 40), (2400, 250)]
    assert blanks(found["boxing 1 right end"]) == [(2400, 200)]
    assert sum(found["boxing 2 front"].strips) == 490 * MM
    assert found["boxing 2 left end"].pieces == ()


def test_what_stands_in_a_box_is_its_front_s() -> None:
    """A socket on the front is cut out there once; an access hatch is deducted there."""
    made = estimate(
        "  labour g\nroom r\n  height 2400\n  wall a 3000\n    boxing 500 x 900 at 1000 deep 200\n"
        "    socket at 1100 up 450\n    hatch 300 x 300 at 1150 sill 500\n    finish board by plain vertical\n",
        CATALOGUE + "gang g\n  rate 60 per h\n  takes 0.3 h/m2 for panels vertical\n"
        "  takes 0.7 h/m2 for panels on boxing\n  takes 1.5 h each for boxing\n"
        "  takes 0.1 h each for cut-outs\n  takes 0.4 h each for openings\n",
    )  # fmt: skip
    assert faces(made)["boxing front"].area == Decimal("0.36") * SQUARE_METRE
    assert task(made, "cut-outs") == (1, "each")
    assert task(made, "openings") == (1, "each")
    assert task(made, "boxing") == (1, "each")
    assert task(made, "panels on boxing") == (0.797, "m2")
    assert task(made, "panels vertical") == (6.75, "m2")


def test_a_bare_wall_s_box_is_bare() -> None:
    """A box is lined as its wall is."""
    made = estimate("room r\n  height 2400\n  wall a 3000\n    bare\n    boxing 500 x 900 at 1000 deep 200\n")
    assert wall_of(made).faces == ()


def test_a_hatch_in_a_box_is_no_hole_in_the_wall_behind() -> None:
    """7.20 less the box's 1.20 on the wall; 1.20 less the hatch's 0.16 on the front."""
    made = estimate(
        ROOM.format("1000 x 1200 at 500 deep 150\n    hatch 400 x 400 at 700 up 400", "plain", "vertical"),
        CATALOGUE,
    )
    taken = made.taken.rooms[0].walls[0]
    assert taken.measured.area == wall_of(made).net == 6 * SQUARE_METRE
    front = next(face for face in taken.faces if face.where == "boxing front")
    assert front.measured.area == Decimal("1.04") * SQUARE_METRE


def test_a_box_on_a_rising_floor_is_measured_where_it_stands() -> None:
    """It hides 500 x 900 on average of the wall: 7.20 less 0.45; its ends are 925 and 875 high by 200."""
    made = estimate(
        "room r\n  height 2400\n  wall a 3000\n    floor 0 to 300\n"
        "    boxing 500 x 900 at 1000 deep 200\n    finish board by plain vertical\n"
    )
    taken = made.taken.rooms[0].walls[0]
    assert taken.measured.area == wall_of(made).net == Decimal("6.75") * SQUARE_METRE
    ends = {face.where: face.measured.area for face in taken.faces}
    assert ends["boxing left end"] == Decimal("0.185") * SQUARE_METRE
    assert ends["boxing right end"] == Decimal("0.175") * SQUARE_METRE
