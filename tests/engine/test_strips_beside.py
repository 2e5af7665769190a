"""Strips that boxes and voids as high as the wall leave: 3000 wide, cover 250, by trims of the method."""

from jobs import CATALOGUE, read

TRIMMED = """
method trimmed "Glued and trimmed"
  glue grab bead 8 every 100
  inside-corner ic
  edge ed
trim ic
  role inside-corner
  length 2600
  allows 3
trim ed
  role edge
  length 2600
  allows 5
"""


def said(*lines: str) -> list[str]:
    """What is found of narrow strips on a wall with these lines."""
    text = "room r\n  height 2400\n  wall a 3000\n" + "".join(f"    {line}\n" for line in lines)
    findings = read(f"{text}    finish board by trimmed vertical\n", CATALOGUE + TRIMMED).findings
    return [f"{one.severity}: {one.message}" for one in findings if one.name == "narrow-strip"]


def test_a_box_from_floor_to_ceiling() -> None:
    """Joints at 5 + 250 n, the box 500 to 1000 and its trims 3: from 1003 to the joint at 1005 are 2."""
    assert said("boxing 500 x 2400 at 500 deep 200") == [
        "warning: wall a: a joint near the boxing leaves a strip of 2 mm at its right; the narrowest wanted is 60"
    ]


def test_a_passage_as_high_as_the_wall() -> None:
    """The void 500 to 1700 and edge trims of 5: from 1705 to the joint at 1755 are 50, from 255 to 495 are 240."""
    assert said("void 1200 x 2400 at 500") == [
        "warning: wall a: a joint near the void leaves a strip of 50 mm at its right; the narrowest wanted is 60"
    ]
