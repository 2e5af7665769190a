"""How a lining goes round openings and obstacles, and into reveals."""

import pytest
from walls import BATTENED, blanks, finish, laid, only, opening, outline, panel, region, trim, wall

from roomspec.layout.laid import Lining
from roomspec.model.method import Method
from roomspec.model.wall import Keep, Obstacle
from roomspec.quantities.length import MM

SQUARE_MM = MM * MM
DOOR = opening("door", 1000, 900, 2000)
WINDOW = opening("window", 1000, 900, 1000, sill=900)
EDGED = Method("m", edge=trim("edge", 4), outside_corner=trim("outside-corner", 3))


def round_opening(lining: Lining, index: int = 0) -> list[tuple[str, str, tuple[int, ...]]]:
    """The borders along an opening: kind, treatment, line in millimetres."""
    return [
        (b.kind, b.treatment, tuple(v // MM for v in (b.line.x0, b.line.y0, b.line.x1, b.line.y1)))
        for b in lining.borders
        if b.opening == index
    ]


def test_edge_trim_round_a_window() -> None:
    """The trim takes 4 on all four sides."""
    lining = only(wall(3000, 2400, finish(EDGED), openings=(WINDOW,)))
    assert round_opening(lining) == [
        ("opening", "trim", (996, 896, 1904, 896)),
        ("opening", "trim", (996, 1904, 1904, 1904)),
        ("opening", "trim", (996, 896, 996, 1904)),
        ("opening", "trim", (1904, 896, 1904, 1904)),
    ]
    assert lining.area == (2992 * 2400 - 908 * 1008) * SQUARE_MM


def test_edge_trim_round_a_door() -> None:
    """Head and jambs; at the floor there is nothing, and the start trim stops at the door."""
    lining = only(wall(3000, 2400, finish(EDGED), openings=(DOOR,)))
    assert [line for *_, line in round_opening(lining)] == [
        (996, 2004, 1904, 2004), (996, 0, 996, 2004), (1904, 0, 1904, 2004)
    ]  # fmt: skip
    starts = [(b.line.x0 // MM, b.line.x1 // MM) for b in lining.borders if b.kind == "start"]
    assert starts == [(4, 996), (1904, 2996)]


def test_a_kept_architrave() -> None:
    """Panels stop at the architrave of 70 without trim; a passage has none."""
    face = wall(3000, 2400, finish(EDGED), openings=(DOOR,), keeps=(Keep("architrave", 70 * MM),))
    assert round_opening(only(face)) == [
        ("keep", "none", (930, 2070, 1970, 2070)),
        ("keep", "none", (930, 0, 930, 2070)),
        ("keep", "none", (1970, 0, 1970, 2070)),
    ]
    passage = wall(3000, 2400, finish(EDGED), openings=(opening("void", 1000, 900, 2000),), keeps=face.keeps)
    assert {kind for kind, *_ in round_opening(only(passage))} == {"opening"}


def test_lined_reveals() -> None:
    """Head and jambs of a window: pieces as deep as the reveal of 110 and the build-up of 10; the sill is an edge."""
    lined = opening("window", 1000, 900, 1000, sill=900, reveal=110 * MM, lined=("head", "jambs"))
    lining = only(wall(3000, 2400, finish(EDGED), openings=(lined,)))
    pieces = [p for p in lining.pieces if p.where != "wall"]
    assert [(p.where, p.length // MM, p.width // MM, p.edges) for p in pieces] == [
        ("window left jamb", 1000, 120, "none"),
        ("window right jamb", 1000, 120, "none"),
        ("window head", 900, 120, "none"),
    ]
    assert pieces[0].outline == outline((0, 0), (120, 0), (120, 1000), (0, 1000))
    assert pieces[2].outline == outline((0, 0), (900, 0), (900, 120), (0, 120))
    assert [p.number for p in pieces] == [len(lining.pieces) - 2 + step for step in range(3)]
    assert round_opening(lining) == [
        ("opening", "trim", (997, 896, 1903, 896)),
        ("reveal", "trim", (997, 1903, 1903, 1903)),
        ("reveal", "trim", (997, 896, 997, 1903)),
        ("reveal", "trim", (1903, 896, 1903, 1903)),
    ]
    assert lining.area == sum(p.area for p in lining.pieces if p.where == "wall")


@pytest.mark.parametrize(("treatment", "says"), [("mitred", "mitred"), ("butted", "butted"), (None, "none")])
def test_a_reveal_without_trim_takes_nothing(treatment: str | None, says: str) -> None:
    """The opening is the hole in the finish, whichever way the corner is made."""
    lined = opening("door", 1000, 900, 2000, reveal=110 * MM, lined=("head", "jambs"))
    lining = only(wall(3000, 2400, finish(Method("m", outside_corner=treatment)), openings=(lined,)))
    assert round_opening(lining)[0] == ("reveal", says, (1000, 2000, 1900, 2000))


def test_a_deep_reveal_takes_strips() -> None:
    """300 deep on battens: 335, so a panel of 250 and one of 85 that meet in a factory edge; a sill where named."""
    lined = opening("window", 500, 900, 1000, sill=900, reveal=300 * MM, lined=("sill",))
    lining = only(wall(2000, 2400, finish(Method("m", battens=BATTENED)), openings=(lined,)))
    pieces = [(p.where, p.length // MM, p.width // MM, p.edges) for p in lining.pieces if p.where != "wall"]
    assert pieces == [("window sill", 900, 250, "right"), ("window sill", 900, 85, "left")]


def test_a_tall_reveal_is_broken_at_the_panel() -> None:
    """A passage 2700 high, panels of 2600."""
    lined = opening("void", 500, 900, 2700, reveal=110 * MM, lined=("jambs",))
    lining = only(wall(2000, 3000, finish(board=panel(joined="all edges")), openings=(lined,)))
    pieces = [(p.row, p.length // MM, p.ends) for p in lining.pieces if p.where == "void left jamb"]
    assert pieces == [(1, 2600, "right"), (2, 100, "left")]


def test_only_one_lining_lines_a_reveal() -> None:
    """Where a dado and what is over it both touch a lined door, the first has the reveal."""
    lined = opening("door", 1000, 900, 2000, reveal=110 * MM, lined=("head", "jambs"))
    dado, over = finish(region=region(top=1000)), finish(direction="horizontal", region=region(bottom=1000))
    lower, upper = laid(wall(3000, 2400, dado, over, openings=(lined,))).linings
    assert [p.where for p in lower.pieces if p.where != "wall"] == ["door left jamb", "door right jamb", "door head"]
    assert {p.where for p in upper.pieces} == {"wall"}


def test_a_reveal_without_a_depth_is_not_lined() -> None:
    """`lined` says which faces, `reveal` how deep; and a niche is as deep as it says, whatever its reveal."""
    for kind, more in (("door", {}), ("niche", {"reveal": 90 * MM})):
        lining = only(
            wall(3000, 2400, finish(), openings=(opening(kind, 500, 600, 600, sill=900, lined=("head",), **more),))
        )
        assert {p.where for p in lining.pieces} == {"wall"}
        assert {kind for kind, *_ in round_opening(lining)} == {"opening"}


def test_a_bath() -> None:
    """Issue's example, wall 2500 x 2400, bath 1700 x 560: six of 1840, one notched of 2400, three of 2400; 5.048 m2."""
    face = laid(wall(2500, 2400, finish(), obstacles=(Obstacle("bath", 0, 1700 * MM, 560 * MM),)))
    (lining,) = face.linings
    assert blanks(lining) == [(1840, 250)] * 6 + [(2400, 250)] * 4
    assert lining.area == face.net == 5_048_000 * SQUARE_MM
    assert round_opening(lining) == [
        ("rim", "none", (0, 560, 1700, 560)), ("rim", "none", (1700, 0, 1700, 560))
    ]  # fmt: skip


def test_a_bath_with_a_sloping_rim() -> None:
    """The rim rises from 560 to 577 over 1700: a piece is cut to the lower end of its stretch."""
    bath = Obstacle("bath", 0, 1700 * MM, 560 * MM, 577 * MM)
    lining = only(wall(2500, 2400, finish(), obstacles=(bath,)))
    assert [length for length, _ in blanks(lining)][:3] == [1840, 1837.5, 1835]
    assert lining.pieces[0].outline == ((0, 560 * MM), (250 * MM, 562_500_000), (250 * MM, 2400 * MM), (0, 2400 * MM))


def test_openings_may_overlap() -> None:
    """Overlapping openings are a mistake of their own; their common area is deducted once."""
    face = laid(wall(3000, 2400, finish(), openings=(DOOR, opening("window", 1500, 1000, 1000, sill=900))))
    assert face.net == (3000 * 2400 - 900 * 2000 - 600 * 1000) * SQUARE_MM
    assert face.linings[0].area == face.net
