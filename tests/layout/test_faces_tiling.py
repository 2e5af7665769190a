"""Random boxes, niches and ceilings: faces are tiled, no piece is where a box stands, a handed room needs the same."""

from collections import Counter
from decimal import Decimal

from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from random_rooms import HAND, METHODS
from shapely import Polygon, box, unary_union
from shapely.affinity import translate
from walls import finish, opening, panel, wall

from roomspec.compile.mirror import mirrored_ceiling, mirrored_walls
from roomspec.layout.laid import FaceLayout, Lining, RoomLayout
from roomspec.layout.lay_room import lay_room
from roomspec.model.job import Terms
from roomspec.model.method import Method
from roomspec.model.room import Room
from roomspec.model.shape import SetOut
from roomspec.model.wall import Boxing, Ceiling, Corner, Finish, Wall
from roomspec.quantities.length import MM

TERMS = Terms()


@st.composite
def linings(draw: st.DrawFn) -> Finish:
    """One finish for the whole wall."""
    return finish(
        draw(st.sampled_from(METHODS)),
        draw(st.sampled_from(("vertical", "horizontal"))),
        board=panel(2600, draw(st.sampled_from((200, 334))), joined="all edges"),
        start=SetOut(draw(st.sampled_from(("left", "right", "centre", "balanced")))),
        rows=SetOut(draw(st.sampled_from(("bottom", "top", "balanced")))),
    )


@st.composite
def boxes(draw: st.DrawFn, width: int) -> tuple[Boxing, ...]:
    """Boxes that do not overlap: in a corner or free, at the floor, at the ceiling or between."""
    found = []
    left = draw(st.sampled_from((0, 300, 600)))
    for _ in range(draw(st.integers(0, 2))):
        wide, high = draw(st.sampled_from((300, 520))), draw(st.sampled_from((700, 2400)))
        sill = draw(st.sampled_from((0, 900, 1700))) if high == 700 else 0
        if left + wide > width:
            break
        found.append(Boxing(left * MM, wide * MM, high * MM, draw(st.sampled_from((140, 260))) * MM, sill * MM))
        left += wide + draw(st.sampled_from((0, 400)))
    return tuple(found)


@st.composite
def rooms(draw: st.DrawFn) -> Room:
    """Four walls with boxes, one with a lined niche, square or not; a ceiling over them."""
    faces: list[Wall] = []
    for name, width in zip("abcd", (2500, 1800, 2500, 1800), strict=True):
        faces.append(
            wall(
                width, 2400, draw(linings()), name=name, boxing=draw(boxes(width)), butts=draw(st.booleans()),
                corner=Corner("inside", Decimal(draw(st.sampled_from((90, 90, 80, 110))))),
            )
        )  # fmt: skip
    niche = opening("niche", 2100, 300, 400, 1200, deep=90 * MM, lined=("head", "jambs", "sill"))
    faces[2] = replace(faces[2], openings=(niche,), boxing=())
    over = replace(draw(linings()), direction=draw(st.sampled_from(("lengthwise", "crosswise"))))
    return Room("1", walls=tuple(faces), ceilings=(Ceiling("c", 2500 * MM, 1800 * MM, finishes=(over,)),))


def faces_of(room: Room, laid: RoomLayout) -> list[FaceLayout]:
    """Every face of a room, walls first."""
    found = [
        FaceLayout("wall", "", one, (), at.gross, at.net, at.linings, at.hidden)
        for one, at in zip(room.walls, laid.walls, strict=True)
    ]
    found += [face for at in laid.walls for face in at.faces]
    return found + [face for one in laid.ceilings for face in (one.own, *one.faces)]


@given(rooms())
@settings(max_examples=40, deadline=None)
def test_every_face_is_tiled(room: Room) -> None:
    """On each face pieces overlap nowhere, keep off what boxes hide, sum to the area and have borders all round."""
    for face in faces_of(room, lay_room(room, TERMS)):
        hidden = unary_union([box(x0, y0, x1, y1) for x0, x1, y0, y1 in face.hidden])
        for lining in face.linings:
            shapes = [Polygon(p.outline, p.holes) for p in lining.pieces if p.where == lining.where]
            whole = unary_union(shapes)
            assert sum(p.area for p in lining.pieces if p.where == lining.where) == lining.area
            assert abs(whole.area - float(lining.area)) <= 1e-9 * float(lining.area)
            assert whole.intersection(hidden).area <= 1e-9 * float(lining.area)
            around = sum(abs(b.line.x1 - b.line.x0) + abs(b.line.y1 - b.line.y0) for b in lining.borders)
            assert abs(around - whole.length) <= 1000 * max(10, len(shapes))
            assert all(0 < p.length <= 2600 * MM and 0 < p.width <= lining.panel.cover for p in lining.pieces)


def mirrored(room: Room) -> Room:
    """The handed room, as rooms of a pattern are made."""
    return replace(room, walls=mirrored_walls(room.walls), ceilings=tuple(map(mirrored_ceiling, room.ceilings)))


def handed(lining: Lining, hand: bool) -> Counter[tuple[object, ...]]:
    """The blanks of a lining as seen from the other hand."""
    upright = lining.direction in ("vertical", "crosswise")
    out: Counter[tuple[object, ...]] = Counter()
    for piece in lining.pieces:
        across = upright or "jamb" in piece.where
        edges, ends = piece.edges, piece.ends
        if hand:
            edges, ends = (HAND[edges], ends) if across else (edges, HAND[ends])
        out[(piece.length + 500) // 1000, (piece.width + 500) // 1000, edges, ends] += 1
    return out


@given(rooms())
@settings(max_examples=40, deadline=None)
def test_a_handed_room_with_boxes_needs_the_same_blanks(room: Room) -> None:
    """Mirrored, all faces together need the same blanks but for their handed edges; mirrored twice the room is back."""
    other = mirrored(room)
    assert mirrored(other) == room
    one: Counter[tuple[object, ...]] = Counter()
    two: Counter[tuple[object, ...]] = Counter()
    for face in faces_of(room, lay_room(room, TERMS)):
        for lining in face.linings:
            one.update(handed(lining, False))
    for face in faces_of(other, lay_room(other, TERMS)):
        for lining in face.linings:
            two.update(handed(lining, True))
    assert one == two


def stands(room: Room, index: int, one: Boxing) -> Polygon:
    """A box seen from above in a room 2500 x 1800 of right angles: x along wall a, y into the room."""
    left, right, deep = one.x, min(one.x + one.width, room.walls[index].width), one.deep
    wide, long = 2500 * MM, 1800 * MM
    return (
        box(left, 0, right, deep),
        box(wide - deep, left, wide, right),
        box(wide - right, long - deep, wide - left, long),
        box(0, long - right, deep, long - left),
    )[index]


@given(rooms())
@settings(max_examples=40, deadline=None)
def test_a_ceiling_is_what_boxes_that_reach_it_leave_of_the_plan(room: Room) -> None:
    """In a room of right angles, against shapely: the outline and the pieces; mirrored it is as large."""
    (over,) = room.ceilings
    plain = tuple(replace(one, method=Method("plain")) for one in over.finishes)
    walls = tuple(replace(one, corner=Corner("inside")) for one in room.walls)
    room = replace(room, walls=walls, ceilings=(replace(over, finishes=plain),))
    high = [
        stands(room, at, one)
        for at, wall in enumerate(room.walls)
        for one in wall.boxing
        if one.sill + one.height >= 2400 * MM
    ]
    whole = box(0, 0, 2500 * MM, 1800 * MM).difference(unary_union(high))
    for made in (room, mirrored(room)):
        own = lay_room(made, TERMS).ceilings[0].own
        assert abs(float(own.net) - whole.area) <= 1e-9 * whole.area
        if made is room:
            left, bottom, _, _ = whole.bounds
            pieces = unary_union([Polygon(p.outline, p.holes) for p in own.linings[0].pieces])
            assert translate(pieces, left, bottom).symmetric_difference(whole).area <= 1e-9 * whole.area
