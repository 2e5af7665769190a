"""Properties of the mirror image: twice is the room again, and every place is as far from the other end."""

from hypothesis import given, settings
from hypothesis import strategies as st

from roomspec.compile.mirror import from_right, mirrored, mirrored_walls
from roomspec.model.method import Method
from roomspec.model.product import Panel, Stock
from roomspec.model.shape import Region, SetOut, level
from roomspec.model.wall import Boxing, Corner, Finish, Obstacle, Opening, Removal, Wall, WallPoint, Wet

PANEL = Panel("p", "", (Stock(2600),), 250, 10)
METHOD = Method("m")
PLACE = st.integers(0, 1000)
REGION = st.builds(Region, st.none() | PLACE, st.none() | PLACE, st.none() | PLACE, st.none() | PLACE)
SET_OUT = st.builds(SetOut, st.sampled_from(["left", "right", "centre", "joint", "balanced"]), st.none() | PLACE)
CORNER = st.builds(Corner, st.sampled_from(["inside", "outside"]), st.decimals(1, 179, places=1))


@st.composite
def walls(draw: st.DrawFn) -> tuple[Wall, ...]:
    """A room of walls with everything that has a place; at most its last corner is open."""
    made = []
    count = draw(st.integers(1, 5))
    for number in range(count):
        width = draw(st.integers(1, 3000))
        last = number == count - 1
        made.append(
            Wall(
                f"w{number}",
                width,
                width,
                ((0, draw(PLACE)), (draw(st.integers(0, width)), draw(PLACE)), (width, draw(PLACE))),
                level(width, 0),
                corner=Corner("open") if last and draw(st.booleans()) else draw(CORNER),
                butts=draw(st.booleans()),
                wet=tuple(draw(st.lists(st.builds(Wet, st.just("direct"), REGION), max_size=2))),
                openings=(Opening("door", draw(PLACE), draw(PLACE), 0, 2000),),
                obstacles=(Obstacle("bath", draw(PLACE), draw(PLACE), 560, draw(st.none() | PLACE)),),
                boxing=(Boxing(draw(PLACE), draw(PLACE), 300, 200),),
                points=(WallPoint("socket", draw(PLACE), 450),),
                removals=(Removal("tile", None, draw(st.none() | PLACE), draw(REGION)),),
                finishes=(Finish(PANEL, METHOD, "vertical", "half", draw(SET_OUT), SetOut("top"), draw(REGION)),),
            )
        )
    return tuple(made)


@settings(max_examples=80)
@given(walls())
def test_mirrored_twice_is_the_room_again(room: tuple[Wall, ...]) -> None:
    """Nothing is lost and nothing is rounded."""
    assert mirrored_walls(mirrored_walls(room)) == room


@settings(max_examples=80)
@given(walls())
def test_every_place_is_as_far_from_the_other_end(room: tuple[Wall, ...]) -> None:
    """Names, widths and counts stay; a place at x is at width - x."""
    for wall, image in zip(reversed(room), mirrored_walls(room), strict=True):
        assert (wall.name, wall.width) == (image.name, image.width)
        assert [(wall.width - x, y) for x, y in wall.top] == list(reversed(image.top))
        assert image.openings[0].x + wall.openings[0].right == wall.width
        assert image.points[0].x + wall.points[0].x == wall.width
        for before, after in zip(wall.wet, image.wet, strict=True):
            assert (before.region.bottom, before.region.top) == (after.region.bottom, after.region.top)
            assert (before.region.left is None) == (after.region.right is None)
            assert before.region.left is None or before.region.left + (after.region.right or 0) == wall.width


@settings(max_examples=80)
@given(walls())
def test_the_same_walls_meet_in_the_same_corners(room: tuple[Wall, ...]) -> None:
    """Each pair of neighbours keeps its corner, and the wall that butts there."""

    def meetings(ring: tuple[Wall, ...]) -> list[tuple[tuple[str, ...], Corner, str]]:
        following = (*ring[1:], ring[0])
        return sorted(
            (
                (tuple(sorted((left.name, right.name))), left.corner, left.name if left.butts else right.name)
                for left, right in zip(ring, following, strict=True)
                if left.corner.kind != "open"
            ),
            key=repr,
        )

    if len(room) > 2:
        assert meetings(room) == meetings(mirrored_walls(room))


@settings(max_examples=50)
@given(PLACE, PLACE, st.none() | PLACE)
def test_from_the_right_moves_and_does_not_turn(x: int, width: int, end: int | None) -> None:
    """A sloping rim keeps its left and its right height."""
    bath = Obstacle("bath", x, width, 560, end)
    moved = from_right(bath, 2000)
    assert moved == Obstacle("bath", 2000 - x - width, width, 560, end)
    turned = mirrored(bath, 2000)
    assert isinstance(turned, Obstacle)
    assert (turned.x, turned.height, turned.end_height) == (
        2000 - x - width,
        *((560, None) if end is None else (end, 560)),
    )
