"""Random rooms to lay, and their mirror images."""

from decimal import Decimal

from hypothesis import strategies as st
from walls import BATTENED, finish, gap, panel, region, trim

from roomspec.compile.mirror import mirrored_walls
from roomspec.model.method import Method
from roomspec.model.room import Room
from roomspec.model.shape import Profile, Region, SetOut
from roomspec.model.wall import Corner, Finish, Keep, Obstacle, Opening, Wall
from roomspec.quantities.length import MM

METHODS = (
    Method("plain"),
    Method(
        "trimmed",
        start=trim("start", 2),
        top=trim("top", 3),
        edge=trim("edge", 4),
        inside_corner=trim("inside-corner", 2),
    ),
    Method(
        "battened", battens=BATTENED, outside_corner="mitred", scribe=10 * MM, gaps=(gap(6, "ceiling"), gap(4, "ends"))
    ),
    Method("butted", inside_corner="butted", outside_corner=trim("outside-corner", 2), edge=trim("edge", 2)),
)
# Even places, so that halves are whole and a mirrored strip has no nanometre to spare.
PLACES = st.integers(0, 350).map(lambda at: at * 10 * MM)


@st.composite
def walls(draw: st.DrawFn, name: str) -> Wall:
    """A wall with openings and an obstacle; its finishes may be two that touch, and its top may slope or step."""
    width = draw(st.integers(100, 400)) * 10 * MM
    one, other, third = (height * 10 * MM for height in draw(st.lists(st.integers(150, 320), min_size=3, max_size=3)))
    middle = width // (2 * MM) * MM
    tops: list[Profile] = [
        ((0, one), (width, one)),
        ((0, one), (width, other)),
        ((0, one), (middle, other), (width, third)),
        ((0, one), (middle, one), (middle, other), (width, other)),
    ]
    angle = Decimal(draw(st.sampled_from((90, 60, 135))))
    return Wall(
        name,
        width,
        width,
        draw(st.sampled_from(tops)),
        ((0, 0), (width, 0)),
        openings=tuple(draw(st.lists(openings(), max_size=3))),
        obstacles=tuple(Obstacle("bath", x, 900 * MM, 500 * MM) for x in draw(st.lists(PLACES, max_size=1))),
        keeps=draw(st.sampled_from(((), (Keep("skirting", 120 * MM), Keep("architrave", 70 * MM))))),
        corner=Corner(draw(st.sampled_from(("inside", "outside", "open"))), angle),
        butts=draw(st.booleans()),
        finishes=draw(finishes(width)),
    )


@st.composite
def openings(draw: st.DrawFn) -> Opening:
    """A door or a window, its reveal lined or not."""
    kind = draw(st.sampled_from(("door", "window")))
    width, height = draw(st.integers(20, 120)) * 10 * MM, draw(st.integers(20, 200)) * 10 * MM
    lined = draw(st.sampled_from(((), ("head", "jambs"))))
    sill = 0 if kind == "door" else draw(PLACES)
    return Opening(kind, draw(PLACES), width, sill, height, reveal=110 * MM, lined=lined)


@st.composite
def finishes(draw: st.DrawFn, width: int) -> tuple[Finish, ...]:
    """No finish, one, or two that touch."""
    direction = draw(st.sampled_from(("vertical", "horizontal")))
    way = draw(st.sampled_from(("left", "right", "centre", "joint", "balanced")))
    more = {
        "start": SetOut(way, draw(st.none() | PLACES) if way in ("centre", "joint") else None),
        "rows": SetOut(draw(st.sampled_from(("bottom", "top", "centre", "joint", "balanced")))),
        "bond": draw(st.sampled_from(("stacked", "half", "third", "run-on"))),
        "board": panel(
            draw(st.sampled_from((1200, 2600))), draw(st.sampled_from((200, 334))), joined="all edges", sequence=4
        ),
    }
    method = draw(st.sampled_from(METHODS))
    splits: list[tuple[Region, ...]] = [
        (),
        (Region(),),
        (region(top=1000),),
        (Region(right=width // 2), Region(left=width // 2)),
        (region(top=1000), region(bottom=1000)),
        (Region(right=width // 2, top=1000 * MM), Region(left=width // 2)),
    ]
    return tuple(finish(method, direction, region=part, **more) for part in draw(st.sampled_from(splits)))


ROOMS = st.tuples(walls("a"), walls("b"), walls("c")).map(lambda faces: Room("1", walls=faces))


HAND = {"left": "right", "right": "left", "both": "both", "none": "none"}


def mirrored(room: Room) -> Room:
    """The handed room."""
    return Room("1", walls=mirrored_walls(room.walls))
