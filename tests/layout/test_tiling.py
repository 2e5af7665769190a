"""Random rooms: pieces tile the finish area, strips fill the run, a handed room needs the same blanks."""

from collections import Counter
from decimal import Decimal

from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, unary_union
from walls import BATTENED, finish, gap, panel, region, trim

from roomspec.layout.face import obstacle_slab, opening_slab
from roomspec.layout.laid import Lining, Piece, WallLayout
from roomspec.layout.lay_wall import lay_wall
from roomspec.model.job import Terms
from roomspec.model.method import Method
from roomspec.model.room import Room
from roomspec.model.shape import Profile, Region, SetOut
from roomspec.model.wall import Corner, Finish, Keep, Obstacle, Opening, Wall
from roomspec.quantities.length import MM

METHODS = (
    Method("plain"),
    Method("trimmed", start=trim("start", 2), top=trim("top", 3), edge=trim("edge", 4), inside_corner=trim("inside-corner", 2)),
    Method("battened", battens=BATTENED, outside_corner="mitred", scribe=10 * MM, gaps=(gap(6, "ceiling"), gap(4, "ends"))),
    Method("butted", inside_corner="butted", outside_corner=trim("outside-corner", 2), edge=trim("edge", 2)),
)
# Even places, so that halves are whole and a mirrored strip has no nanometre to spare.
PLACES = st.integers(0, 350).map(lambda at: at * 10 * MM)


@st.composite
def walls(draw: st.DrawFn, name: str) -> Wall:
    """A wall with openings and an obstacle; its finishes may be two that touch, and its top may slope or step."""
    width = draw(st.integers(100, 400)) * 10 * MM
    heights = draw(st.lists(st.integers(150, 320), min_size=3, max_size=3))
    middle = width // (2 * MM) * MM
    top: Profile = draw(
        st.sampled_from([
            ((0, heights[0] * 10 * MM), (width, heights[0] * 10 * MM)),
            ((0, heights[0] * 10 * MM), (width, heights[1] * 10 * MM)),
            ((0, heights[0] * 10 * MM), (middle, heights[1] * 10 * MM), (width, heights[2] * 10 * MM)),
            ((0, heights[0] * 10 * MM), (middle, heights[0] * 10 * MM), (middle, heights[1] * 10 * MM), (width, heights[1] * 10 * MM)),
        ])
    )  # fmt: skip
    openings = tuple(
        Opening(kind, x, draw(st.integers(20, 120)) * 10 * MM, 0 if kind == "door" else sill, draw(st.integers(20, 200)) * 10 * MM,
                reveal=110 * MM, lined=draw(st.sampled_from(((), ("head", "jambs")))))
        for kind, x, sill in draw(st.lists(st.tuples(st.sampled_from(("door", "window")), PLACES, PLACES), max_size=3))
    )  # fmt: skip
    obstacles = tuple(Obstacle("bath", x, 900 * MM, 500 * MM) for x in draw(st.lists(PLACES, max_size=1)))
    keeps = draw(st.sampled_from(((), (Keep("skirting", 120 * MM), Keep("architrave", 70 * MM)))))
    return Wall(
        name, width, width, top, ((0, 0), (width, 0)), openings=openings, obstacles=obstacles, keeps=keeps,
        corner=Corner(draw(st.sampled_from(("inside", "outside", "open"))), Decimal(draw(st.sampled_from((90, 60, 135))))),
        butts=draw(st.booleans()), finishes=draw(finishes(width)),
    )  # fmt: skip


@st.composite
def finishes(draw: st.DrawFn, width: int) -> tuple[Finish, ...]:
    """No finish, one, or two that touch."""
    direction = draw(st.sampled_from(("vertical", "horizontal")))
    bond = draw(st.sampled_from(("stacked", "half", "run-on")))
    ways = ("left", "right") if bond == "run-on" else ("left", "right", "centre", "joint", "balanced")
    more = {
        "start": SetOut(draw(st.sampled_from(ways))),
        "rows": SetOut(draw(st.sampled_from(("bottom", "top", "balanced")))),
        "bond": bond,
        "board": panel(draw(st.sampled_from((1200, 2600))), draw(st.sampled_from((200, 334))), joined="all edges", sequence=4),
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


def polygon(piece: Piece) -> Polygon:
    """A piece as shapely sees it."""
    return Polygon(piece.outline, piece.holes)


def on_wall(lining: Lining) -> list[Piece]:
    """A lining's pieces on the face itself."""
    return [piece for piece in lining.pieces if piece.where == "wall"]


@given(ROOMS, st.integers(0, 2))
@settings(max_examples=40, deadline=None)
def test_pieces_tile_the_finish(room: Room, index: int) -> None:
    """Pieces overlap nowhere, keep out of openings, sum to the area, fit a panel; borders close round them."""
    wall = room.walls[index]
    for lining in lay_wall(room, index, Terms()).linings:
        pieces = on_wall(lining)
        shapes = [polygon(piece) for piece in pieces]
        assert all(shape.is_valid for shape in shapes)
        assert sum(piece.area for piece in pieces) == lining.area
        whole = unary_union(shapes)
        near = 1000 * MM * max(10, len(pieces))
        assert abs(whole.area - float(lining.area)) <= near + 1e-9 * float(lining.area)
        for hole in [opening_slab(wall, opening, 0) for opening in wall.openings] + [
            obstacle_slab(wall, obstacle, 0) for obstacle in wall.obstacles
        ]:
            x0, x1, b0, b1, t0, t1, _, _ = hole
            assert whole.intersection(Polygon([(x0, b0), (x1, b1), (x1, t1), (x0, t0)])).area <= near
        for piece in lining.pieces:
            assert 0 < piece.length <= lining.panel.length
            assert 0 < piece.width <= lining.panel.cover
            assert 0 <= piece.set_number < 4
        assert [piece.number for piece in lining.pieces] == sorted({piece.number for piece in lining.pieces})
        length = sum(((b.line.x1 - b.line.x0) ** 2 + (b.line.y1 - b.line.y0) ** 2) ** 0.5 for b in lining.borders)
        assert abs(length - whole.length) <= 1000 * max(10, len(pieces))


@given(ROOMS, st.integers(0, 2))
@settings(max_examples=25, deadline=None)
def test_strips_and_joints_fill_the_run(room: Room, index: int) -> None:
    """Strips sum to the run across, lengths to the run along; joints are where pieces share their edges."""
    for lining in lay_wall(room, index, Terms()).linings:
        left, right, bottom, top = (side or 0 for side in (
            lining.region.left, lining.region.right, lining.region.bottom, lining.region.top
        ))  # fmt: skip
        upright = lining.direction == "vertical"
        if lining.troubles:
            continue
        assert sum(lining.strips) == (right - left if upright else top - bottom)
        assert {sum(row) for row in lining.joints_along} == {top - bottom if upright else right - left}
        shapes = [polygon(piece) for piece in on_wall(lining)]
        perimeters = sum(shape.length for shape in shapes)
        joints = sum(abs(j.line.x1 - j.line.x0) + abs(j.line.y1 - j.line.y0) for j in lining.joints)
        assert abs(perimeters - unary_union(shapes).length - 2 * joints) <= 1000 * max(10, len(shapes))
        needing = sum(1 for piece in on_wall(lining) if piece.edges != "none")
        assert (needing > 0) == any(joint.kind == "long" for joint in lining.joints)


HAND = {"left": "right", "right": "left", "both": "both", "none": "none"}


def mirrored(room: Room) -> Room:
    """The handed room: walls in reverse order, every position from the other end, each corner butted the other way."""
    faces = []
    for at in range(len(room.walls) - 1, -1, -1):
        wall, before = room.walls[at], room.walls[at - 1]
        width = wall.width
        faces.append(Wall(
            wall.name, width, width, tuple((width - x, y) for x, y in reversed(wall.top)), wall.floor,
            corner=before.corner, butts=not before.butts, keeps=wall.keeps,
            openings=tuple(Opening(o.kind, width - o.right, o.width, o.sill, o.height, "", o.reveal, o.lined) for o in wall.openings),
            obstacles=tuple(Obstacle(o.kind, width - o.x - o.width, o.width, o.height) for o in wall.obstacles),
            finishes=tuple(
                Finish(f.panel, f.method, f.direction, f.bond, SetOut(HAND.get(f.start.way, f.start.way)), f.rows, Region(
                    None if f.region.right is None else width - f.region.right,
                    None if f.region.left is None else width - f.region.left, f.region.bottom, f.region.top,
                ))
                for f in wall.finishes
            ),
        ))  # fmt: skip
    return Room("1", walls=tuple(faces))


def needed(face: WallLayout, handed: bool) -> Counter[tuple[object, ...]]:
    """The blanks of a wall with the factory edges and ends that they need, as seen from the other hand if `handed`."""
    out: Counter[tuple[object, ...]] = Counter()
    for lining in face.linings:
        upright = lining.direction == "vertical"
        for piece in on_wall(lining):
            edges, ends = piece.edges, piece.ends
            if handed:
                edges, ends = (HAND[edges], ends) if upright else (edges, HAND[ends])
            # A slope's corner may round the other way.
            out[(piece.length + 500) // 1000, (piece.width + 500) // 1000, edges, ends] += 1
    return out


@given(ROOMS)
@settings(max_examples=25, deadline=None)
def test_a_handed_room_needs_the_same_blanks(room: Room) -> None:
    """Mirrored, every wall needs the same blanks but for their handed edges."""
    closed = Room("1", walls=tuple(
        w if w.corner.kind != "open" else Wall(**{f: getattr(w, f) for f in w.__struct_fields__} | {"corner": Corner()})
        for w in room.walls
    ))  # fmt: skip
    other = mirrored(closed)
    for at in range(3):
        assert needed(lay_wall(closed, at, Terms()), False) == needed(lay_wall(other, 2 - at, Terms()), True)
