"""Ceilings worked by hand: a room 3000 x 2000, cover 250, panel 2600, thick 10."""

from decimal import Decimal

import pytest
from jobs import CATALOGUE, estimate, ordered, read, task

from roomspec.analysis.engine import Estimated
from roomspec.layout.laid import CeilingLayout
from roomspec.quantities.area import SQUARE_METRE
from roomspec.quantities.length import MM

WALLS = "  wall a 3000\n  wall b 2000\n  wall c 3000\n  wall d 2000\n"
METHODS = """
method trimmed "Glued and trimmed"
  glue grab bead 8 every 100
  seal clear bead 5 at joints ceiling
  edge ed
  top tp
  gap 4 at ends
method corniced "With a cornice"
  glue grab bead 8 every 100
  edge ed
  top tp
  cornice co
method deep "A deep top trim"
  glue grab bead 8 every 100
  top dp
method battened "On battens"
  battens lath every 400
  screw screw
sealant clear
  tube 310 ml
trim ed
  role edge
  length 2600
  allows 5
trim tp
  role top
  length 2600
  allows 3
trim dp
  role top
  length 2600
  allows 15
trim co
  role cornice
  length 2600
support lath
  section 25 x 50
  length 2400
fixing screw
  size 3.5 x 35
gang g
  rate 60 per h
  takes 0.3 h/m2 for panels vertical
  takes 0.5 h/m2 for panels on ceilings
"""


def room(*lines: str, faces: str = WALLS, above: str = "") -> Estimated:
    """A room with these lines of a ceiling, and one above its first wall."""
    ceiling = "".join(f"    {line}\n" for line in lines)
    text = f"  labour g\nroom r\n  height 2400\n{above}{faces}  ceiling over\n    on concrete\n{ceiling}"
    return estimate(text, CATALOGUE + METHODS)


def ceiling(made: Estimated) -> CeilingLayout:
    """The one ceiling."""
    (found,) = made.laid[0].ceilings
    return found


def test_over_the_rooms_own_plan_crosswise_and_lengthwise() -> None:
    """Across 2000: twelve pieces of 2000. Along 3000: eight rows of 2600 and 400."""
    across = ceiling(room("finish board by plain crosswise")).own.linings[0]
    assert [(p.length // MM, p.width // MM) for p in across.pieces] == [(2000, 250)] * 12
    along = ceiling(room("finish board by plain lengthwise")).own.linings[0]
    assert sorted(p.length // MM for p in along.pieces) == [400] * 8 + [2600] * 8
    assert across.area == along.area == 6 * SQUARE_METRE


def test_pieces_are_named_after_the_ceiling() -> None:
    """`over/1`; labour has its own constant for ceilings."""
    made = room("finish board by plain crosswise")
    assert [blank.name for _, blanks in made.taken.rooms[0].panels for blank in blanks][:2] == ["over/1", "over/2"]
    assert task(made, "panels on ceilings") == (6, "m2")


def walls(*widths: str) -> str:
    """Walls a, b, c ...; a width with `out` has an outside corner at its right end."""
    lines = ""
    for name, width in zip("abcdefgh", widths, strict=False):
        lines += f"  wall {name} {width.removesuffix(' out')}\n"
        lines += "    corner outside\n" if width.endswith(" out") else ""
    return lines


L_SHAPES = {
    "the deep part last": (
        walls("3000", "2000", "1000", "1000 out", "2000", "1000"),
        [1000] * 8 + [2000] * 4,
        4,
    ),
    "the deep part first": (
        walls("3000", "2000", "1000 out", "1000", "2000", "3000"),
        [3000] * 8 + [2000] * 4,
        8,
    ),
    "a U": (
        walls("3000", "2000", "1000", "1000 out", "1000 out", "1000", "1000", "2000"),
        [2000] * 4 + [1000] * 4 + [2000] * 4,
        5,
    ),
}


@pytest.mark.parametrize("shape", L_SHAPES)
def test_a_plan_that_is_no_rectangle(shape: str) -> None:
    """Strips across the first side, each as long as the room is deep there."""
    faces, lengths, area = L_SHAPES[shape]
    made = room("finish board by plain crosswise", faces=faces)
    (lining,) = ceiling(made).own.linings
    columns: dict[int, int] = {}
    for piece in lining.pieces:
        columns[piece.column] = columns.get(piece.column, 0) + piece.length // MM
    assert list(columns.values()) == lengths
    assert lining.area == ceiling(made).own.net == area * SQUARE_METRE


def test_rows_across_a_u_stop_at_its_wings() -> None:
    """Where the plan has two wings a row ends in each; the joint at 2600 is all rows'."""
    made = room("finish board by plain lengthwise", faces=L_SHAPES["a U"][0])
    (lining,) = ceiling(made).own.linings
    upper = [piece for piece in lining.pieces if piece.row > 4]
    assert [piece.length // MM for piece in upper] == [1000, 600, 400] * 4


def test_trims_go_round_and_take_their_allowance() -> None:
    """An edge trim of 5 and a gap of 4 on every side; an L has six sides, its re-entrant corner takes them inwards."""
    made = room("finish board by trimmed crosswise", faces=L_SHAPES["the deep part last"][0])
    (lining,) = ceiling(made).own.linings
    assert (
        lining.area == Decimal("4") * SQUARE_METRE - (10 - 8 * Decimal("0.009") / 2) * Decimal("0.009") * SQUARE_METRE
    )
    runs = [run for run in made.taken.rooms[0].ceilings[0].linings[0].trims if run.role == "edge"]
    assert len(runs) == 6
    assert sum(run.length for run in runs) == (10000 - 8 * 9) * MM


def test_the_ceiling_is_lined_before_the_walls() -> None:
    """Walls lose its build-up: 10, or 35 on battens; a top trim of 15 covers 10; a kept cornice covers all."""
    lined = "finish board by plain crosswise"
    tops = {}
    for name, line, above in (
        ("plain", lined, "  finish board by plain vertical\n"),
        ("battened", "finish board by battened crosswise", "  finish board by plain vertical\n"),
        ("top trim", lined, "  finish board by trimmed vertical\n"),
        ("deep trim", lined, "  finish board by deep vertical\n"),
        ("kept", lined, "  keep cornice 90\n  finish board by plain vertical\n"),
    ):
        made = room(line, above=above)
        tops[name] = 2400 - (made.laid[0].walls[0].linings[0].region.top or 0) // MM
        said = "The ceiling of room r is taken as lined before its walls"
        assert any(sentence.startswith(said) for sentence in made.priced.assumptions)
    assert tops == {"plain": 10, "battened": 35, "top trim": 13, "deep trim": 15, "kept": 90}


def test_a_slope_is_a_face_by_itself() -> None:
    """Its size along the slope; the walls under it are surveyed to it and lose nothing."""
    text = (
        "room r\n  height 2400\n  finish board by plain vertical\n"
        + WALLS
        + "  ceiling slope 3000 x 1500\n    on concrete\n    finish board by plain crosswise\n"
    )
    made = estimate(text)
    assert ceiling(made).own.linings[0].area == Decimal("4.5") * SQUARE_METRE
    assert made.laid[0].walls[0].linings[0].region.top == 2400 * MM


def test_a_cornice_goes_round_once() -> None:
    """On the walls' linings where they have it; round the ceiling where they have none."""
    bare = room("finish board by corniced crosswise")
    both = room("finish board by corniced crosswise", above="  finish board by corniced vertical\n")
    for made, walls, overhead in ((bare, 0, 4), (both, 4, 0)):
        taken = made.taken.rooms[0]
        on_walls = [
            run for wall in taken.walls for lining in wall.linings for run in lining.trims if run.role == "cornice"
        ]
        on_ceiling = [run for run in taken.ceilings[0].linings[0].trims if run.role == "cornice"]
        assert (len(on_walls), len(on_ceiling)) == (walls, overhead)
        assert not [run for run in taken.ceilings[0].linings[0].trims if run.role == "edge"]


def test_fixtures_hatches_and_showers() -> None:
    """A lamp is a cut-out, a hatch 400 x 400 a hole with its leaf; over the shower joints and the edge are sealed."""
    made = room(
        "finish board by trimmed crosswise",
        "wet direct from 0 to 1000",
        "hatch 400 x 400 at 1500 up 500 panelled",
        'fixture "lamp" at 500 up 500',
    )
    found = ceiling(made)
    assert [face.where for face in found.faces] == ["hatch leaf"]
    assert found.own.net == Decimal("5.84") * SQUARE_METRE
    taken = made.taken.rooms[0].ceilings[0].linings[0]
    assert taken.cut_outs == 1
    inner = 2000 - 18
    # Joints at 259, 509 and 759 from the wall; the edge along the left wall and 991 along either wall beside it.
    assert {seal.place: seal.length / MM for seal in taken.seals} == {"joints": 3 * inner, "ceiling": inner + 2 * 991}


def test_a_mirrored_room_s_ceiling_is_its_mirror_image() -> None:
    """Over its own plan: the same blanks, the hatch as far from the other end; with a size too."""
    for size in ("", " 3000 x 2000"):
        text = (
            f"pattern p\n  height 2400\n{WALLS}  ceiling over{size}\n    on concrete\n"
            "    finish board by plain crosswise\n    hatch 400 x 400 at 300 up 500\n"
            "room 1 as p\nroom 2 as p mirrored\n"
        )
        one, two = (laid.ceilings[0].own for laid in estimate(text).laid)
        assert one.linings[0].area == two.linings[0].area == Decimal("5.84") * SQUARE_METRE
        assert [o.x // MM for o in one.as_wall.openings] == [300]
        assert [o.x // MM for o in two.as_wall.openings] == [2300]
        pieces = [sorted((p.length, p.width) for p in face.linings[0].pieces) for face in (one, two)]
        assert pieces[0] == pieces[1]


def test_a_ceiling_without_a_plan_says_so() -> None:
    """A feature wall closes no plan; nothing is laid, and the finding and the estimate say why."""
    snapshot = read(
        "room r\n  height 2400\n  wall a 3000\n  ceiling over\n    on concrete\n    finish board by plain crosswise\n"
    )
    made = snapshot.estimate()
    assert made.laid[0].ceilings[0].own.linings[0].pieces == ()
    assert any("close no plan" in trouble for trouble in made.taken.troubles)
    assert [f.name for f in snapshot.findings if f.severity == "error"] == ["ceiling-without-plan"]


def test_a_ceiling_named_like_a_wall_keeps_its_pieces_apart() -> None:
    """Both are called a: the ceiling's pieces say that they are the ceiling's."""
    text = "room r\n  height 2400\n  finish board by plain vertical\n" + WALLS
    made = estimate(text + "  ceiling a\n    on concrete\n    finish board by plain crosswise\n")
    names = [blank.name for _, blanks in made.taken.rooms[0].panels for blank in blanks]
    assert len(names) == len(set(names))
    assert "ceiling-a/1" in names
    assert ordered(made).needed == ordered(made).bound
