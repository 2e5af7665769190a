"""Regions, what stays on the wall, gaps: which finishes are one run and how far it goes."""

from walls import blanks, finish, gap, laid, only, region, room, trim, wall, widths

from roomspec.layout.extent import runs_of_wall
from roomspec.layout.laid import Lining
from roomspec.model.method import Method
from roomspec.model.wall import Keep, Upstand
from roomspec.quantities.length import MM

SQUARE_MM = MM * MM


def bounds(lining: Lining) -> tuple[int, ...]:
    """Left, right, bottom, top of a run in millimetres."""
    r = lining.region
    return tuple((side or 0) // MM for side in (r.left, r.right, r.bottom, r.top))


def kinds(lining: Lining) -> list[tuple[str, str]]:
    """What each border meets and how it is finished."""
    return [(border.kind, border.treatment) for border in lining.borders]


EDGED = Method("edged", start=trim("start", 2), top=trim("top", 3), edge=trim("edge", 4))


def test_all_four_trims() -> None:
    """A free wall: start 2, top 3, edge 4 at both ends."""
    lining = only(wall(3000, 2400, finish(EDGED)))
    assert bounds(lining) == (4, 2996, 2, 2397)
    assert kinds(lining) == [("start", "trim"), ("top", "trim"), ("edge", "trim"), ("edge", "trim")]


def test_a_region_inside_the_wall() -> None:
    """A splash-back 500 to 1500, 900 to 1500: the edge trim all round."""
    lining = only(wall(3000, 2400, finish(EDGED, region=region(500, 1500, 900, 1500))))
    assert bounds(lining) == (504, 1496, 904, 1496)
    assert kinds(lining) == [("edge", "trim")] * 4


def test_a_dado_takes_a_cap_where_there_is_one() -> None:
    """The upper edge of a dado: the cap instead of the edge trim."""
    capped = Method("m", edge=trim("edge", 4), cap=trim("cap", 6))
    lining = only(wall(3000, 2400, finish(capped, region=region(top=1000))))
    assert bounds(lining) == (4, 2996, 0, 994)
    assert [border.trim.role for border in lining.borders if border.trim] == ["cap", "edge", "edge"]


def test_touching_finishes_are_one_run() -> None:
    """Two regions side by side are set out as one, their common line is no edge; so are two on one another."""
    side_by_side = only(
        wall(1100, 2400, finish(EDGED, region=region(right=480)), finish(EDGED, region=region(left=480)))
    )
    assert side_by_side.finishes == (0, 1)
    assert side_by_side.pieces == only(wall(1100, 2400, finish(EDGED))).pieces
    assert widths(side_by_side) == [250, 250, 250, 250, 92]
    assert len(kinds(side_by_side)) == 4
    stacked = only(wall(1000, 2400, finish(region=region(top=1000)), finish(region=region(bottom=1000))))
    assert blanks(stacked) == [(2400, 250)] * 4


def test_an_l_shaped_run() -> None:
    """0 to 500 up 1000 beside 500 to 1000 full height: the free side above 1000 takes its edge trim."""
    edged = Method("m", edge=trim("edge", 4))
    lining = only(
        wall(1000, 2400, finish(edged, region=region(0, 500, 0, 1000)), finish(edged, region=region(500, 1000)))
    )
    assert bounds(lining) == (4, 996, 0, 2400)
    assert blanks(lining) == [(996, 250), (996, 250), (2400, 250), (2400, 242)]
    assert lining.area == (500 * 996 + 492 * 2400) * SQUARE_MM
    inner = [border.line for border in lining.borders if border.line.x0 == border.line.x1 == 504 * MM]
    assert [(line.y0 // MM, line.y1 // MM) for line in inner] == [(996, 2400)]


def test_other_products_make_runs_of_their_own() -> None:
    """A dado ends with its edge trim; what is over it in another direction butts against that and loses nothing."""
    dado = finish(EDGED, region=region(top=1000))
    over = finish(EDGED, "horizontal", region=region(bottom=1000))
    lower, upper = laid(wall(3000, 2400, dado, over)).linings
    assert bounds(lower) == (4, 2996, 2, 996)
    assert bounds(upper) == (4, 2996, 1000, 2397)
    assert kinds(lower) == [("start", "trim"), ("edge", "trim"), ("edge", "trim"), ("edge", "trim")]
    assert kinds(upper) == [("edge", "butted"), ("top", "trim"), ("edge", "trim"), ("edge", "trim")]


def test_the_earlier_of_overlapping_finishes_keeps_the_place() -> None:
    """Overlapping is a mistake of its own; nothing is counted twice."""
    left, right = laid(wall(3000, 2400, finish(region=region(0, 2000)), finish(direction="horizontal"))).linings
    assert left.area + right.area == 3000 * 2400 * SQUARE_MM
    assert {border.kind for border in right.borders} == {"start", "top", "edge"}


def test_kept_skirting_and_cornice() -> None:
    """Panels stop at what stays, without trim; a gap is left on it."""
    kept = {"keeps": (Keep("skirting", 120 * MM), Keep("cornice", 90 * MM))}
    lining = only(wall(3000, 2400, finish(EDGED), **kept))
    assert bounds(lining) == (4, 2996, 120, 2310)
    assert kinds(lining)[:2] == [("keep", "none"), ("keep", "none")]
    gapped = only(wall(3000, 2400, finish(Method("m", gaps=(gap(6, "floor"), gap(5, "ceiling")))), **kept))
    assert bounds(gapped) == (0, 3000, 126, 2305)
    dado = only(wall(3000, 2400, finish(region=region(bottom=120, top=1000)), **kept))
    assert (bounds(dado)[2], kinds(dado)[0]) == (120, ("keep", "none"))


def test_gaps_and_trims_add_up() -> None:
    """6 at the floor and a start trim of 2; 5 at the ceiling and a top trim of 3."""
    method = Method("m", start=trim("start", 2), top=trim("top", 3), gaps=(gap(6, "floor"), gap(5, "ceiling")))
    assert bounds(only(wall(3000, 2400, finish(method)))) == (0, 3000, 8, 2392)


def test_upstands() -> None:
    """Lapped by 50: panels begin at 50 without trim. Butted: on top of it, with the start trim."""
    lapped = only(wall(3000, 2400, finish(EDGED), upstand=Upstand(100 * MM, 50 * MM)))
    assert (bounds(lapped)[2], kinds(lapped)[0]) == (50, ("upstand", "none"))
    butted = only(wall(3000, 2400, finish(EDGED), upstand=Upstand(100 * MM)))
    assert (bounds(butted)[2], kinds(butted)[0]) == (102, ("upstand", "trim"))


def test_bare_walls_have_no_runs() -> None:
    """`bare` means no finish there."""
    assert runs_of_wall(room(wall(3000, 2400, finish(), bare=True)), 0) == ()
    assert runs_of_wall(room(wall(3000, 2400)), 0) == ()


def test_a_corner_met_over_part_of_its_height() -> None:
    """A dado of 1000 on the next wall: an inside corner up to there, an edge above; trims on either."""
    method = Method("m", inside_corner=trim("inside-corner", 2), edge=trim("edge", 4))
    tall, dado = finish(method), finish(method, region=region(top=1000))
    faces = [
        wall(3000, 2400, tall, name="a"),
        wall(3000, 2400, dado, name="b"),
        wall(3000, name="c"),
        wall(3000, name="d"),
    ]
    lining = only(*faces)
    assert bounds(lining) == (4, 2998, 0, 2400)
    at_right = [border for border in lining.borders if border.line.x0 == border.line.x1 == 2998 * MM]
    assert [(b.kind, b.shared, b.line.y0 // MM, b.line.y1 // MM) for b in at_right] == [
        ("inside-corner", False, 0, 1000), ("edge", False, 1000, 2400)
    ]  # fmt: skip
    beside = only(*faces, index=1)
    at_left = [border for border in beside.borders if border.line.x0 == border.line.x1 == 2 * MM]
    assert [(b.kind, b.shared, b.line.y1 // MM) for b in at_left] == [("inside-corner", True, 996)]
