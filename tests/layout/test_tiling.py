"""Random rooms: pieces tile the finish area, strips fill the run, a handed room needs the same blanks."""

from collections import Counter

from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from random_rooms import HAND, ROOMS, mirrored
from shapely import Polygon, unary_union

from roomspec.layout.face import obstacle_slab, opening_slab
from roomspec.layout.laid import Lining, Piece, WallLayout
from roomspec.layout.lay_wall import lay_wall
from roomspec.model.job import Terms
from roomspec.model.room import Room
from roomspec.model.wall import Corner
from roomspec.quantities.length import MM


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
    walls = (replace(wall, corner=Corner()) if wall.corner.kind == "open" else wall for wall in room.walls)
    closed = Room("1", walls=tuple(walls))
    other = mirrored(closed)
    for at in range(3):
        assert needed(lay_wall(closed, at, Terms()), False) == needed(lay_wall(other, 2 - at, Terms()), True)
