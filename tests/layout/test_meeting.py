"""Finishes that touch have one trim between them; a region that ends along an opening ends as the opening does."""

import pytest
from random_rooms import HAND
from walls import finish, laid, opening, panel, region, room, trim, wall

from roomspec.compile.mirror import mirrored_walls
from roomspec.layout.laid import Lining
from roomspec.layout.lay_wall import lay_wall
from roomspec.model.job import Terms
from roomspec.model.method import Method
from roomspec.model.wall import Wall
from roomspec.quantities.length import MM

EDGED = Method("edged", edge=trim("edge", 4), outside_corner=trim("outside-corner", 2))
PLAIN = Method("plain")
NARROW = panel(cover=200)


def edges(lining: Lining) -> list[tuple[str, str, tuple[int, ...]]]:
    """Kind, treatment and line in millimetres of what is neither floor nor ceiling."""
    return [
        (b.kind, b.treatment, (b.line.x0 // MM, b.line.y0 // MM, b.line.x1 // MM, b.line.y1 // MM))
        for b in lining.borders
        if b.kind not in ("start", "top")
    ]


def pair(first: Method, second: Method, right_first: bool = False) -> list[Lining]:
    """3000 x 2400 lined in two halves of different panels."""
    halves = [finish(first, region=region(right=1000)), finish(second, board=NARROW, region=region(left=1000))]
    return list(laid(wall(3000, 2400, *(halves[::-1] if right_first else halves))).linings)


def test_the_first_bears_the_trim_and_the_later_butts() -> None:
    """Left half first: its trim takes 4 up to 1000, where the right half begins."""
    left, right = pair(EDGED, EDGED)
    assert edges(left) == [("edge", "trim", (4, 0, 4, 2400)), ("edge", "trim", (996, 0, 996, 2400))]
    assert edges(right) == [("edge", "butted", (1000, 0, 1000, 2400)), ("edge", "trim", (2996, 0, 2996, 2400))]
    assert [border.shared for border in right.borders if border.kind == "edge"] == [True, False]
    assert (sum(left.strips), sum(right.strips)) == (992 * MM, 1996 * MM)


def test_the_first_is_the_one_that_stands_first_in_the_text() -> None:
    """Right half first: it begins at 1004, and the left half runs up to 1000."""
    right, left = pair(EDGED, EDGED, right_first=True)
    assert edges(right)[0] == ("edge", "trim", (1004, 0, 1004, 2400))
    assert edges(left)[1] == ("edge", "butted", (1000, 0, 1000, 2400))


def test_where_only_the_later_has_a_trim_it_bears_it() -> None:
    """The first butts against the other's trim; where neither has one both are plain edges."""
    left, right = pair(PLAIN, EDGED)
    assert edges(left)[1] == ("edge", "butted", (1000, 0, 1000, 2400))
    assert edges(right)[0] == ("edge", "trim", (1004, 0, 1004, 2400))
    assert [edge[1] for lining in pair(PLAIN, PLAIN) for edge in edges(lining)] == ["none"] * 4


def test_a_cap_serves_what_stands_on_it() -> None:
    """A dado's cap takes 6 below 1000; the panels over it stand on it."""
    capped = Method("capped", cap=trim("cap", 6), edge=trim("edge", 4))
    dado, over = finish(capped, region=region(top=1000)), finish(EDGED, board=NARROW, region=region(bottom=1000))
    lower, upper = laid(wall(3000, 2400, dado, over)).linings
    assert [(b.trim.name, b.line.y0 // MM) for b in lower.borders if b.trim and b.line.y0 == b.line.y1] == [
        ("cap-6", 994)
    ]
    assert edges(upper)[0] == ("edge", "butted", (4, 1000, 2996, 1000))


def test_beyond_what_it_meets_an_edge_is_its_own() -> None:
    """A dado to 2000 under a lining to 3000, free beyond: butted on the dado, then its own trim of 4 at 1004."""
    dado = finish(EDGED, board=NARROW, region=region(right=2000, top=1000))
    over = finish(EDGED, region=region(bottom=1000))
    _, upper = laid(wall(3000, 2400, dado, over)).linings
    lower = [edge for edge in edges(upper) if edge[2][1] == edge[2][3]]
    assert lower == [("edge", "butted", (4, 1000, 2000, 1000)), ("edge", "trim", (2000, 1004, 2996, 1004))]


VOID = opening("void", 1000, 800, 1000, sill=1000, reveal=200 * MM, lined=("sill", "jambs", "head"))


@pytest.mark.parametrize("upper_first", [False, True])
def test_one_trim_under_the_lined_sill_of_a_void_over_a_dado(upper_first: bool) -> None:
    """Under the void the dado ends at the sill's outside corner; the lining beside the void lines its reveals."""
    both = [finish(EDGED, region=region(top=1000)), finish(EDGED, board=NARROW, region=region(bottom=1000))]
    faces = laid(wall(3000, 2400, *(both[::-1] if upper_first else both), openings=(VOID,))).linings
    lower, upper = faces[::-1] if upper_first else faces
    under = [b for b in lower.borders if b.kind == "reveal" and b.line.y0 == b.line.y1]
    (corner,) = under
    assert corner.trim == EDGED.outside_corner
    assert {edge[1] for edge in edges(lower) if edge[0] == "edge" and edge[2][1] == edge[2][3]} == {
        "butted" if upper_first else "trim"
    }
    assert {p.where for p in lower.pieces} == {"wall"}
    assert len({p.where for p in upper.pieces}) == 5


def test_a_finish_that_ends_at_a_door_ends_as_the_door_does() -> None:
    """Up to the jamb at 1000: an opening's edge trim to 2000, the finish's own above the door."""
    door = (opening("door", 1000, 900, 2000),)
    (lining,) = laid(wall(3000, 2400, finish(EDGED, region=region(right=1000)), openings=door)).linings
    assert edges(lining)[1:] == [("opening", "trim", (996, 0, 996, 2000)), ("edge", "trim", (996, 2000, 996, 2400))]


def test_a_handed_pair_has_the_same_trims_and_blanks() -> None:
    """The order in the text decides, so the mirror image has its trim on the same finish."""

    def needs(one: Wall, handed: bool) -> list[tuple[object, ...]]:
        return [
            (at, p.length, p.width, HAND[p.edges] if handed else p.edges)
            for at, lining in enumerate(lay_wall(room(one), 0, Terms()).linings)
            for p in sorted(lining.pieces, key=lambda p: -p.number if handed else p.number)
        ]

    halves = finish(EDGED, region=region(right=1020)), finish(EDGED, board=NARROW, region=region(left=1020))
    one = wall(3000, 2400, *halves)
    (other,) = mirrored_walls((one,))
    assert sorted(needs(one, False), key=repr) == sorted(needs(other, True), key=repr)
