"""What is drawn is what was laid: read back from the SVG, every outline equals the model to the nanometre."""

from collections.abc import Iterator
from fractions import Fraction

import pytest
from drawn_jobs import JOBS, drawings_of, made_of
from read_svg import Shape, parsed, shapes_of

from roomspec.layout.face import obstacle_slab, opening_slab
from roomspec.layout.laid import Line, Lining
from roomspec.layout.slabs import Slab
from roomspec.model.wall import Wall
from roomspec.quantities.length import MM
from roomspec.reports.drawing.sheet import SCALES
from roomspec.takeoff.face import outline_of
from roomspec.takeoff.taken import LiningTakeOff, WallTakeOff


def walls_of(name: str) -> Iterator[tuple[str, str, Wall | None, tuple[Lining, ...], WallTakeOff]]:
    """Each finished wall and ceiling: room, its name on drawings, the wall, its linings on all faces, its take-off."""
    made = made_of(name)
    for room, laid, taken in zip(made.job.rooms, made.laid, made.taken.rooms, strict=True):
        for wall, layout, off in zip(room.walls, laid.walls, taken.walls, strict=True):
            linings = (*layout.linings, *(lining for face in layout.faces for lining in face.linings))
            if linings:
                yield room.name, f"wall {wall.name}", wall, linings, off
        for overhead, off in zip(laid.ceilings, taken.ceilings, strict=True):
            faces = (overhead.own, *overhead.faces)
            linings = tuple(lining for face in faces for lining in face.linings)
            if linings:
                yield room.name, f"ceiling {overhead.name}", None, linings, off


def drawn_on(name: str, room: str, part: str, stretches: bool = False) -> list[Shape]:
    """All that is drawn as built on the sheets of a room's wall; without the stretches of a long one, unless wanted."""
    return [
        shape
        for drawing in drawings_of(name)
        if room in drawing.rooms and drawing.part.split(", ")[0] == part
        if stretches or drawing.part in (part, f"{part}, other faces")
        for shape in shapes_of(parsed(drawing.svg))
    ]


def of_kind(shapes: list[Shape], kind: str, face: str = "") -> list[Shape]:
    """Those of a kind, on one face where it is named."""
    return [shape for shape in shapes if shape.kind == kind and face in ("", shape.face)]


def lines_in(shapes: list[Shape]) -> list[tuple[tuple[int, int], ...]]:
    """Their lines, sorted."""
    return sorted(line for shape in shapes for line in shape.lines)


def as_lines(lines: Iterator[Line] | list[Line]) -> list[tuple[tuple[int, int], ...]]:
    """The model's lines, sorted."""
    return sorted(((line.x0, line.y0), (line.x1, line.y1)) for line in lines)


@pytest.mark.parametrize("name", JOBS)
def test_every_piece_is_drawn_once_with_its_outline(name):
    """On the sheets of each wall stands each piece's outline, its holes after it, and no other piece."""
    for room, part, _, linings, _ in walls_of(name):
        expected = {str(piece.number): (piece.outline, *piece.holes) for lining in linings for piece in lining.pieces}
        drawn = of_kind(drawn_on(name, room, part, stretches=True), "piece")
        assert len(drawn) == len(expected)
        assert {shape.data["data-piece"]: shape.lines for shape in drawn} == expected


@pytest.mark.parametrize("name", JOBS)
def test_joints_trims_and_battens_are_drawn_where_they_lie(name):
    """Every joint, run of trim and batten of each wall, from end to end, and no other."""
    for room, part, _, linings, off in walls_of(name):
        drawn = drawn_on(name, room, part)
        taken: tuple[LiningTakeOff, ...] = off.every_lining
        for kind in ("long", "end"):
            shapes = [shape for shape in of_kind(drawn, "joint") if shape.data["data-kind"] == kind]
            joints = [joint.line for lining in linings for joint in lining.joints if joint.kind == kind]
            assert lines_in(shapes) == as_lines(joints)
        assert lines_in(of_kind(drawn, "trim")) == as_lines([run.line for one in taken for run in one.trims])
        assert lines_in(of_kind(drawn, "batten")) == as_lines([b.line for one in taken for b in one.battens])


@pytest.mark.parametrize("name", JOBS)
def test_faces_openings_and_obstacles_are_drawn_as_surveyed(name):
    """The wall's outline, and that of each opening and of what stands against it."""
    for room, part, wall, _, off in walls_of(name):
        if wall is None or not off.linings:
            continue
        drawn = drawn_on(name, room, part)
        assert [shape.lines for shape in of_kind(drawn, "face", "wall")] == [(outline_of(wall),)]
        openings = [ring(opening_slab(wall, one, 0)) for one in wall.openings]
        assert [shape.lines[0] for shape in of_kind(drawn, "opening", "wall")] == openings
        obstacles = [ring(obstacle_slab(wall, one, 0)) for one in wall.obstacles]
        assert [shape.lines[0] for shape in of_kind(drawn, "obstacle", "wall")] == obstacles


def ring(slab: Slab) -> tuple[tuple[int, int], ...]:
    """A slab's corners, anticlockwise from its lower left."""
    x0, x1, bottom0, bottom1, top0, top1 = slab[:6]
    return (x0, bottom0), (x1, bottom1), (x1, top1), (x0, top0)


@pytest.mark.parametrize("name", JOBS)
def test_the_scale_is_what_the_title_says(name):
    """What is as built is divided by the scale, 1, 2 or 5 times a power of ten (ISO 5455:1979, from memory)."""
    for drawing in drawings_of(name):
        root = parsed(drawing.svg)
        for shape in shapes_of(root):
            assert abs(shape.scale * drawing.scale - 1) < Fraction(1, 10**12)
        assert not drawing.scale or drawing.scale in SCALES
        assert str(drawing.scale).strip("0") in ("", "1", "2", "5")
        told = {text.text for text in root.iter("{http://www.w3.org/2000/svg}text")}
        assert (f"1 : {drawing.scale}" if drawing.scale else "none") in told


@pytest.mark.parametrize("name", JOBS)
def test_all_that_is_built_lies_within_the_frame(name):
    """20 mm of border on the left, 10 mm elsewhere (ISO 5457:1999, from memory)."""
    for drawing in drawings_of(name):
        wide, high = {"A4": (297, 210), "A3": (420, 297)}[drawing.paper]
        for shape in shapes_of(parsed(drawing.svg)):
            for x, y in (place for line in shape.lines for place in line):
                px = shape.origin[0] + x / MM / drawing.scale
                py = shape.origin[1] - y / MM / drawing.scale
                assert 20 <= px <= wide - 10
                assert 10 <= py <= high - 10


@pytest.mark.parametrize("name", JOBS)
def test_plans_are_the_rooms_own(name):
    """Walls on the plan, beside their openings, lie on the corners that the survey gives."""
    made = made_of(name)
    for room, laid in zip(made.job.rooms, made.laid, strict=True):
        (plan,) = [one for one in drawings_of(name) if one.kind == "plan" and room.name in one.rooms]
        drawn = {shape.data["data-wall"]: shape.lines for shape in shapes_of(parsed(plan.svg)) if shape.kind == "wall"}
        for at, wall in enumerate(room.walls):
            if not wall.openings:
                assert drawn[wall.name] == ((laid.plan.corners[at], laid.plan.corners[at + 1]),)
            else:
                built = sum(max(abs(a[0] - b[0]), abs(a[1] - b[1])) for a, b in drawn[wall.name])
                assert built <= wall.width - min(one.width for one in wall.openings)
