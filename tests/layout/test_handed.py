"""A handed room needs the same panels but for handed edges, whatever the start, the rows, the bond and the sizes."""

from collections import Counter

from hypothesis import given, settings
from hypothesis import strategies as st
from random_rooms import HAND
from walls import finish, opening, panel, trim, wall

from roomspec.compile.mirror import mirrored_walls
from roomspec.layout.laid import Lining
from roomspec.layout.lay_wall import lay_wall
from roomspec.model.job import Terms
from roomspec.model.method import Method
from roomspec.model.room import Room
from roomspec.model.shape import SetOut, level
from roomspec.model.wall import Wall
from roomspec.quantities.length import MM

PLACE = st.integers(0, 6000 * MM)
WAYS = ("left", "right", "centre", "joint", "balanced")


@st.composite
def laid_flat(draw: st.DrawFn) -> Wall:
    """A wall of any width to the nanometre, with a window, panels of odd sizes and a joint trim or none."""
    width = draw(st.integers(300 * MM, 6000 * MM))
    way = draw(st.sampled_from(WAYS))
    method = Method("m", joint=draw(st.sampled_from((None, trim("joint", 3)))), edge=trim("edge", 2))
    lining = finish(
        method,
        draw(st.sampled_from(("horizontal", "vertical"))),
        board=panel(
            draw(st.sampled_from((903, 1201, 2600))), 251, joined=draw(st.sampled_from(("long edges", "all edges")))
        ),
        start=SetOut(way, draw(st.none() | PLACE) if way in ("centre", "joint") else None),
        rows=SetOut(draw(st.sampled_from(("bottom", "top", "centre", "joint", "balanced")))),
        bond=draw(st.sampled_from(("stacked", "half", "third", "run-on"))),
    )
    window = opening("window", 100, draw(st.integers(100, 900)), 600, sill=700)
    return Wall("a", width, width, level(width, 2411 * MM), level(width, 0), openings=(window,), finishes=(lining,))


def needed(lining: Lining, handed: bool) -> Counter[tuple[object, ...]]:
    """The blanks to the nanometre, as seen from the other hand if `handed`."""
    upright, out = lining.direction == "vertical", Counter[tuple[object, ...]]()
    for piece in lining.pieces:
        edges, ends = piece.edges, piece.ends
        if handed:
            edges, ends = (HAND[edges], ends) if upright else (edges, HAND[ends])
        out[piece.length, piece.width, edges, ends] += 1
    return out


@given(laid_flat())
@settings(max_examples=150, deadline=None)
def test_a_handed_wall_needs_the_same_blanks(one: Wall) -> None:
    """Blank for blank, with the edges and ends of the other hand; and every joint is as far from the other end."""
    (mine,) = lay_wall(Room("1", walls=(one,)), 0, Terms()).linings
    (other,) = lay_wall(Room("1", walls=mirrored_walls((one,))), 0, Terms()).linings
    assert needed(mine, False) == needed(other, True)
    turned = sorted((one.width - line.x1, line.y0) for line in (joint.line for joint in other.joints))
    within = 1 if mine.method.joint else 0
    for (x, y), (at, up) in zip(sorted((j.line.x0, j.line.y0) for j in mine.joints), turned, strict=True):
        assert abs(x - at) <= within
        assert y == up


def test_rows_of_a_handed_room_shift_the_other_way() -> None:
    """4000 wide, panels of 1200, a joint at 2000, so one at 800, in row two at 1200, in row three at 1600 or 400."""
    lining = finish(direction="horizontal", board=panel(1200), start=SetOut("joint"), bond="third")
    one = wall(4000, 750, lining)
    rows = [
        [
            [length // MM for length in row]
            for row in lay_wall(Room("1", walls=walls), 0, Terms()).linings[0].joints_along
        ]
        for walls in ((one,), mirrored_walls((one,)))
    ]
    assert rows[0] == [[800, 1200, 1200, 800], [1200, 1200, 1200, 400], [400, 1200, 1200, 1200]]
    assert rows[1] == [row[::-1] for row in rows[0]]
