"""Boxes beside doors and windows, worked by hand on walls 2400 high: trims of 2, 3, 4 and 5 mm, panels 10 thick."""

from jobs import CATALOGUE, TRIMS, estimate

from roomspec.quantities.length import MM

TRIMMED = """
method trimmed "Glued and trimmed"
  glue grab bead 8 every 100
  start st
  inside-corner ic
  outside-corner oc
  edge ed
"""


def trims(*lines: str, more: str = "") -> dict[str, list[tuple[str, float]]]:
    """The trims of wall a, which is 3000 wide, by face: role and length, without starts."""
    text = "room r\n  height 2400\n  finish board by trimmed vertical\n  wall a 3000\n"
    text += "".join(f"    {line}\n" for line in lines) + more
    taken = estimate(text, CATALOGUE + TRIMMED + TRIMS).taken.rooms[0].walls[0]
    faces = {"wall": taken.linings, **{face.where: face.linings for face in taken.faces}}
    return {
        where: sorted((run.role, run.length / MM) for run in linings[0].trims if run.role != "start")
        for where, linings in faces.items()
    }


def test_a_boxes_end_along_a_door_has_an_edge_trim() -> None:
    """The door 900 x 2000 begins where the box ends: from the start trim to the lining over the door 2005 - 2 = 2003.

    Over it the wall bears the corner: 2400 - 2005 = 395. On its left the whole 2398 is a corner.
    """
    found = trims("door 900 x 2000 at 1000", "boxing 500 x 2400 at 500 deep 200")
    assert found["boxing right end"] == [("edge", 2003)]
    assert found["boxing left end"] == []
    assert [run for run in found["wall"] if run[0] == "inside-corner"] == [
        ("inside-corner", 395),
        ("inside-corner", 2398),
    ]


def test_a_boxes_top_under_a_window_has_an_edge_trim() -> None:
    """The sill 900 is the box's top, the window 600 wide at 1200, the box 1000 at 1000, its corner trims 3 and 4.

    The lining stops 5 beside the window: of the top's edge from 996 + 8 to 1996 the part from 1195 to 1805 is free.
    """
    found = trims("window 600 x 900 at 1200 sill 900", "boxing 1000 x 900 at 1000 deep 200")
    assert [run for run in found["boxing top"] if run[0] == "edge"] == [("edge", 610)]
    assert sorted(run for run in found["wall"] if run[0] == "inside-corner") == [
        ("inside-corner", 198), ("inside-corner", 198), ("inside-corner", 901), ("inside-corner", 901),
    ]  # fmt: skip


def test_a_front_in_a_corner_beside_the_next_walls_door() -> None:
    """A box 250 deep at the end of a, a door at 250 on b: the front's right edge is free for 2003 there."""
    found = trims(
        "boxing 500 x 2400 at 2500 deep 250",
        more="  wall b 2000\n    door 900 x 2000 at 250\n  wall c 3000\n  wall d 2000\n",
    )
    assert [run for run in found["boxing front"] if run[0] == "edge"] == [("edge", 2003)]


def test_a_door_that_does_not_reach_the_box_changes_nothing() -> None:
    """One 100 further on: the wall's own strip between them bears the corner over all of its height."""
    found = trims("door 900 x 2000 at 1100", "boxing 500 x 2400 at 500 deep 200")
    assert found["boxing right end"] == []
    assert [run for run in found["wall"] if run[0] == "inside-corner"] == [("inside-corner", 2398)] * 2


def test_an_arris_that_stands_off_by_its_battens_is_an_arris_all_along() -> None:
    """Battens 25 and a panel 10: mitred faces go 35 beyond the box at its top, where neither ends in an edge trim."""
    method = """
method battened
  battens lath every 400
  screw screw
  outside-corner mitred
  edge ed
support lath
  section 25 x 50
  length 2400
fixing screw
  size 3.5 x 35
"""
    text = "room r\n  height 2400\n  wall a 3000\n    boxing 500 x 900 at 1000 deep 200\n"
    made = estimate(f"{text}    finish board by battened vertical\n", CATALOGUE + TRIMMED + TRIMS + method)
    faces = made.laid[0].walls[0].faces
    assert {border.kind for face in faces for border in face.linings[0].borders} == {
        "start", "inside-corner", "outside-corner",
    }  # fmt: skip
    front = next(face.linings[0] for face in faces if face.where == "boxing front")
    arrises = [border.line.y1 - border.line.y0 for border in front.borders if border.line.x0 == border.line.x1]
    assert arrises == [935 * MM] * 2
