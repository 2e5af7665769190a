"""A room made from a pattern is the same room written out by hand: wall for wall, and in the order and the price.

Written out, every line stands under its wall: the pattern's for the room, the room's own, the wall's. In a mirrored
room walls come in reverse, places count from the other end, and each wall butts where its neighbour ran through.
"""

import datetime
from collections.abc import Callable, Sequence
from typing import NamedTuple

from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from roomspec.analysis.session import Session
from roomspec.analysis.world import MemoryWorld
from roomspec.model.room import Room
from roomspec.model.wall import Wall
from roomspec.pricing.estimate import Estimate

TODAY = datetime.date(2026, 11, 25)
CATALOGUE = """
panel lime
  length 2600
  cover 250
  thick 10
  price 31.50 each
  lay vertical
panel oak
  length 2400
  cover 190
  thick 12
  price 17.77 per m2
  lay horizontal
adhesive grab
  tube 290 ml
  price 6.20 each
trim edge
  role edge
  fits 10
  length 2600
  price 3.33 per m
method glued
  glue grab bead 8 every 300
  edge edge
  inside-corner butted
gang two
  rate 62.00 per h
  takes 0.30 h/m2 for panels
"""


class Line(NamedTuple):
    """A line's first word, its text in a wall of a width, mirrored or not, and whether it hides what is under it."""

    kind: str
    write: Callable[[int, bool], str]
    hides: bool = False


Walls = dict[str, tuple[int, list[Line]]]


def plain(text: str) -> Line:
    """A line without places."""
    return Line(text.split()[0], lambda _width, _handed: text, True)


def region(text: str, left: int, right: int) -> Line:
    """A line for a part of a wall."""

    def write(width: int, handed: bool) -> str:
        return f"{text} from {width - right if handed else left} to {width - left if handed else right}"

    return Line(text.split()[0], write)


def thing(text: str, wide: int, at: int) -> Line:
    """A thing on a wall that is so wide; `@` in its text is where it begins."""
    return Line(text.split()[0], lambda width, handed: text.replace("@", str(width - at - wide if handed else at)))


def finish(start: str, part: tuple[int, int] | None) -> Line:
    """A finish that starts at an end, or balanced, on all of the wall or a part."""

    def write(width: int, handed: bool) -> str:
        end = {"left": "right", "right": "left"}.get(start, start) if handed else start
        text = f"finish lime by glued vertical start {end}"
        return region(text, *part).write(width, handed) if part is not None else text

    return Line("finish", write, True)


PARTS = st.sampled_from([(0, 700), (300, 1200), (1000, 1500)])
FINISHES = st.builds(finish, st.sampled_from(["left", "right", "balanced", "centre"]), st.none() | PARTS)
LAYERS = (
    st.sampled_from(
        ["on plaster", "on plasterboard", "surface sound", "surface painted", "wet splash", "flat 3 under 2 m"]
    ).map(plain)
    | st.builds(lambda part: region("surface loose", *part), PARTS)
    | st.builds(lambda part: region("wet direct", *part), PARTS)
)
HEIGHTS = st.sampled_from(["height 2400", "height 2300"]).map(plain)
THINGS = st.builds(lambda at: thing("door 826 x 2040 at @", 826, at), st.integers(100, 600)) | st.builds(
    lambda at: thing("socket at @ up 450", 0, at), st.integers(1, 1500)
)
OF_ROOM = st.lists(LAYERS | FINISHES, max_size=4)
OF_WALL = st.lists(LAYERS | FINISHES | st.just(plain("bare")), max_size=2)


@st.composite
def some_walls(draw: st.DrawFn, names: str) -> Walls:
    """Walls by these names, each with a thing at most, so that none overlap."""
    found: Walls = {}
    for name in names:
        lines = draw(OF_WALL) + draw(st.lists(THINGS, max_size=1)) + draw(st.lists(HEIGHTS, max_size=1))
        bare = any(one.kind == "bare" for one in lines)
        found[name] = draw(st.integers(1600, 3300)), [one for one in lines if not (bare and one.kind == "finish")]
    return found


def body(lines: Sequence[Line], walls: Walls) -> str:
    """A pattern's or a room's lines."""
    text = "".join(f"  {line.write(0, False)}\n" for line in lines)
    for name, (width, own) in walls.items():
        text += f"  wall {name} {width}\n" + "".join(f"    {line.write(width, False)}\n" for line in own)
    return text


def over(under: list[tuple[Line, bool]], lines: list[tuple[Line, bool]]) -> list[tuple[Line, bool]]:
    """Lines over lines: what hides takes the place of all of its kind before it, other lines come after."""
    gone = {line.kind for line, _ in lines if line.hides}
    gone |= {"finish"} if "bare" in gone else set()
    return [one for one in under if one[0].kind not in gone] + lines


def written_out(base: list[Line], walls: Walls, own: list[Line], own_walls: Walls, handed: bool) -> str:
    """The room with all lines under its walls."""
    text = ""
    for name in reversed(walls) if handed else walls:
        width, lines = own_walls.get(name, walls[name])
        turned = handed and name not in own_walls
        all_lines = over([(one, handed) for one in base], [(one, False) for one in own])
        all_lines = over(all_lines, [(one, turned) for one in lines])
        text += f"  wall {name} {width}\n" + "".join(f"    {line.write(width, turn)}\n" for line, turn in all_lines)
        text += "    butts\n" if turned else ""
    return text


def made(session: Session, text: str) -> tuple[Room, Estimate]:
    """The first room of a text, as if written by hand, and what the job comes to; assumptions name the pattern."""
    session.world = MemoryWorld({"job.room": text + CATALOGUE}, TODAY)
    snapshot = session.snapshot("job.room")
    assert snapshot is not None and snapshot.job is not None
    assert not [one for one in snapshot.compiled.problems if one.severity == "error"], snapshot.compiled.problems
    room = snapshot.job.rooms[0]
    room = replace(room, pattern="", handed=False, walls=tuple(map(unturned, room.walls)))
    return room, replace(snapshot.estimate().priced, assumptions=())


def unturned(wall: Wall) -> Wall:
    """The wall without the note that its finishes were turned over."""
    return replace(
        wall,
        finishes=tuple(
            replace(one, start=replace(one.start, handed=False), rows=replace(one.rows, handed=False))
            for one in wall.finishes
        ),
    )


JOB = "job j\n  date 2026-11-25\n  labour two\n"
PATTERNS = st.tuples(OF_ROOM, some_walls("abcd"))


@given(
    before=PATTERNS,
    pattern=PATTERNS,
    own=OF_ROOM,
    taller=st.booleans(),
    own_walls=st.sampled_from(["", "", "b", "ad"]).flatmap(some_walls),
    handed=st.booleans(),
)
@settings(max_examples=30, deadline=None)
def test_a_room_of_a_pattern_is_the_room_written_out(
    before: tuple[list[Line], Walls],
    pattern: tuple[list[Line], Walls],
    own: list[Line],
    taller: bool,
    own_walls: Walls,
    handed: bool,
) -> None:
    """With lines and walls of its own or none, handed or not, and after the pattern was another one."""
    session = Session(MemoryWorld({}, TODAY))
    own = [*own, plain("height 2550")] if taller else own
    heading = f"room 1 as p{' mirrored' if handed else ''}\n"
    height = [plain("height 2400")]
    for lines, walls in (before, pattern, before):
        base = [*height, *lines]
        found = made(session, JOB + heading + body(own, own_walls) + "pattern p\n" + body(base, walls))
        by_hand = "room 1\n" + written_out(base, walls, own, own_walls, handed)
        assert found == made(Session(MemoryWorld({}, TODAY)), JOB + by_hand)
