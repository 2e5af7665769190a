"""Rooms at random: their walls share what they found or have their own, and one room may be made many times."""

from decimal import Decimal

from drawn_faces import BOXING, OBSTACLES, POINTS, SURVEYED, Fields, extras, finishes, openings
from drawn_values import HEIGHT, METRE, MM, NAMES, NOTES, TITLES, WALL, few, lengths, numbers
from drawn_wares import Wares
from hypothesis import strategies as st
from msgspec.structs import replace

from roomspec.model.room import Diagonal, Room
from roomspec.model.shape import WHOLE, Profile, level
from roomspec.model.wall import Ceiling, Corner, Upstand, Wall

LAYERED = ("substrates", "surfaces", "flatness", "studs", "wet")
PURPOSES = ("", "bathroom", "stair", "hall", "wc")
UPSTANDS = lengths(1, 5 * METRE).flatmap(lambda high: st.builds(Upstand, st.just(high), st.none() | lengths(1, high)))


@st.composite
def profiles(draw: st.DrawFn, width: int, least: int) -> Profile:
    """Level, raked, with a peak or a valley, or in two parts with a step between them; no height is 0 but at an end."""
    heights = lengths(least, HEIGHT)
    one, two, three, four = (draw(heights) for _ in range(4))
    middle = draw(lengths(1, width - 1))
    ways = (
        level(width, one),
        ((0, 0), (width, one)),
        ((0, one), (width, two)),
        ((0, one), (middle, two), (width, three)),
        ((0, one), (middle, one), (middle, two), (width, two)),
        ((0, one), (middle, two), (middle, three), (width, four)),
    )
    found = draw(st.sampled_from(ways))
    return tuple(point for number, point in enumerate(found) if number == 0 or point != found[number - 1])


@st.composite
def shared(draw: st.DrawFn, surveyed: Fields) -> dict[str, object]:
    """What walls of one room have in common."""
    found = {field: draw(own) for field, own in surveyed.items()}
    return found | {"upstand": draw(st.none() | UPSTANDS), "high": draw(lengths(1, HEIGHT))}


@st.composite
def walls(draw: st.DrawFn, name: str, alone: bool, surveyed: Fields, common: dict[str, object]) -> Wall:
    """A wall. Of each field that rooms may state it has the room's, its own, or the room's and more."""
    width = draw(lengths(10 * MM, WALL))
    fields: dict[str, object] = {}
    for field, own in surveyed.items():
        way = draw(st.sampled_from(("shared", "own", "both")))
        said = () if way == "shared" else draw(own)
        more = way == "both" and field in LAYERED and all(one.region != WHOLE for one in said)
        fields[field] = said if way == "own" else common[field] + (said if more else ())
    bare = draw(st.integers(0, 4)) == 4
    fields |= {"finishes": ()} if bare else {}
    kind = draw(st.sampled_from(("open", "outside") if alone else ("inside", "outside", "open")))
    angle = Decimal(90) if kind == "open" else draw(st.just(Decimal(90)) | numbers("0.01", "179.99"))
    return Wall(
        name,
        width,
        draw(st.just(width) | lengths(10 * MM, WALL)),
        draw(st.just(level(width, common["high"])) | profiles(width, 1)),
        draw(st.just(level(width, 0)) | profiles(width, -HEIGHT)),
        confirmed=draw(st.booleans()),
        corner=Corner(kind, angle),
        butts=draw(st.booleans()),
        bare=bare,
        openings=draw(few(openings("door", "window", "hatch", "void", "niche"))),
        obstacles=draw(few(OBSTACLES)),
        boxing=draw(few(BOXING)),
        upstand=draw(st.just(common["upstand"]) | UPSTANDS),
        points=draw(few(POINTS)),
        extras=draw(few(extras())),
        joints_up=draw(few(lengths(1, HEIGHT))),
        notes=draw(NOTES),
        height_confirmed=draw(st.booleans()),
        **fields,
    )


@st.composite
def ceilings(draw: st.DrawFn, surveyed: Fields) -> Ceiling:
    """A ceiling, with a size or the room's own plan."""
    sides = draw(st.none() | st.tuples(lengths(1, WALL), lengths(1, WALL)))
    fields = {field: draw(own) for field, own in surveyed.items()}
    bare = draw(st.integers(0, 4)) == 4
    return Ceiling(
        draw(NAMES),
        *(sides or (None, None)),
        confirmed=sides is None or draw(st.booleans()),
        bare=bare,
        openings=draw(few(openings("hatch", "void"))),
        points=draw(few(POINTS)),
        extras=draw(few(extras())),
        notes=draw(NOTES),
        **fields | ({"finishes": ()} if bare else {}),
    )


@st.composite
def rooms(draw: st.DrawFn, wares: Wares, number: int) -> tuple[Room, ...]:
    """A room, or two that are made from one pattern."""
    surveyed = SURVEYED | {"finishes": finishes(wares, "vertical", "horizontal")}
    overhead = SURVEYED | {"finishes": finishes(wares, "lengthwise", "crosswise")}
    common = draw(shared(surveyed))
    names = draw(st.lists(NAMES, max_size=3, unique=True))
    faces = tuple(draw(walls(name, len(names) == 1, surveyed, common)) for name in names)
    ends = st.sampled_from(names or [""])
    lines = st.builds(Diagonal, ends, ends, lengths(1, 2 * WALL), st.booleans())
    room = Room(
        f"{number}.01",
        draw(TITLES),
        draw(st.just("") | NAMES | TITLES),
        draw(st.sampled_from(PURPOSES)),
        walls=faces,
        ceilings=draw(few(ceilings(overhead), lambda ceiling: ceiling.name)),
        diagonals=draw(few(lines)) if names else (),
        extras=draw(few(extras())),
        access=draw(st.none() | lengths(1, HEIGHT)),
        notes=draw(NOTES),
    )
    if not draw(st.booleans()):
        return (room,)
    one = replace(room, pattern=f"{number}")
    return one, replace(one, name=f"{number}.02")
