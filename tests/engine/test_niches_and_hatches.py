"""Lined niches and panelled leaves, worked by hand on a wall 3000 x 2400."""

from jobs import CATALOGUE, TRIMS, estimate, task, wall_of

from roomspec.analysis.engine import Estimated
from roomspec.layout.laid import Lining
from roomspec.quantities.length import MM

ROOM = "room r\n  height 2400\n  wall a 3000\n    {}\n    finish board by {} vertical\n"
TRIMMED = """
method trimmed "Glued and trimmed"
  glue grab bead 8 every 100
  inside-corner ic
  outside-corner oc
  edge ed
"""


def lined(line: str, method: str = "plain") -> Estimated:
    """The wall with this opening."""
    return estimate(ROOM.format(line, method), CATALOGUE + TRIMMED + TRIMS)


def faces(made: Estimated) -> dict[str, Lining]:
    """The linings of the wall's openings by face."""
    return {face.where: face.linings[0] for face in wall_of(made).faces}


def blanks(lining: Lining) -> list[tuple[float, float]]:
    """Lengths and widths in millimetres, in order."""
    return [(piece.length / MM, piece.width / MM) for piece in lining.pieces]


def test_a_lined_niche_has_every_inner_face() -> None:
    """The back as large as the hole; jambs, head and sill as deep as the niche, long way along."""
    made = lined("niche 300 x 600 at 500 sill 1000 deep 100 lined")
    assert {name: blanks(lining) for name, lining in faces(made).items()} == {
        "niche back": [(600, 250), (600, 50)],
        "niche left jamb": [(600, 100)],
        "niche right jamb": [(600, 100)],
        "niche sill": [(300, 100)],
        "niche head": [(300, 100)],
    }
    assert {border.kind for border in wall_of(made).linings[0].borders} >= {"reveal"}


def test_named_faces_of_a_niche() -> None:
    """The back always; of the others those that are named."""
    made = lined("niche 300 x 600 at 500 sill 1000 deep 100 lined sill")
    assert set(faces(made)) == {"niche back", "niche sill"}


def test_a_niche_without_lined_is_left_open() -> None:
    """Its sides are edges of the wall's lining."""
    made = lined("niche 300 x 600 at 500 sill 1000 deep 100")
    assert wall_of(made).faces == ()
    assert "reveal" not in {border.kind for border in wall_of(made).linings[0].borders}


def test_trims_in_a_niche() -> None:
    """The wall bears the outer edge, 4 allowed each side; the back four inside corners, head and sill the rest."""
    made = lined("niche 300 x 600 at 500 sill 1000 deep 100 lined", "trimmed")
    taken = made.taken.rooms[0].walls[0]
    assert sorted(run.length / MM for run in taken.linings[0].trims if run.role == "outside-corner") == [
        308,
        308,
        608,
        608,
    ]
    found = {face.where: sorted(run.length / MM for run in face.linings[0].trims) for face in taken.faces}
    assert found == {
        "niche back": [294, 294, 594, 594],
        "niche left jamb": [],
        "niche right jamb": [],
        "niche sill": [97, 97],
        "niche head": [97, 97],
    }


def test_a_panelled_hatch_gets_a_leaf_with_its_edge_trim() -> None:
    """A leaf 400 x 400 less 5 all round; its joints are the wall's, a cover of 250 from the wall's own."""
    made = lined("hatch 400 x 400 at 1500 sill 500 panelled", "trimmed")
    leaf = faces(made)["hatch leaf"]
    assert blanks(leaf) == [(390, 250), (390, 140)]
    wall_joints = {joint.line.x0 - 1500 * MM for joint in wall_of(made).linings[0].joints}
    assert {joint.line.x0 for joint in leaf.joints} <= wall_joints
    (taken,) = made.taken.rooms[0].walls[0].faces
    assert [(run.role, run.length / MM, run.mitres) for run in taken.linings[0].trims] == [("edge", 390, 2)] * 4


def test_niches_are_reveals_to_the_gang() -> None:
    """Inner faces go by the constant for reveals, a leaf by that of its wall."""
    gang = "gang g\n  rate 60 per h\n  takes 0.3 h/m2 for panels vertical\n  takes 0.9 h/m2 for panels in reveals\n"
    made = estimate(
        "  labour g\n" + ROOM.format("niche 300 x 600 at 500 sill 1000 deep 100 lined", "plain"),
        CATALOGUE + gang,
    )
    assert task(made, "panels in reveals") == (0.36, "m2")
