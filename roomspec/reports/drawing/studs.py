"""Studs behind a face, as taking off counts them: at their spacing from its left end, level ones from its floor."""

from roomspec.layout.face import ceiling_line
from roomspec.layout.laid import Line
from roomspec.layout.slabs import height_at
from roomspec.model.wall import Wall
from roomspec.quantities.length import MM
from roomspec.takeoff.clip import box_of, part_of
from roomspec.takeoff.ground import spans_in

CLOSEST = 10 * MM


def stud_lines(wall: Wall) -> tuple[Line, ...]:
    """One line a stud, within its region; where they really stand has to be found on site."""
    top = ceiling_line(wall)
    left, right = wall.floor[0][0], wall.floor[-1][0]
    foot, head = min(y for _, y in wall.floor), max(y for _, y in top)
    lines: list[Line] = []
    for studs in wall.studs:
        region, every = box_of(studs.region), max(studs.every, CLOSEST)
        low, high = (left, right) if studs.direction == "vertical" else (foot, head)
        for at in range(-(-low // every) * every, high + 1, every):
            if studs.direction == "vertical":
                floor = height_at(wall.floor, at)
                line = Line(at, floor, at, max(floor, height_at(top, at)))
            else:
                line = Line(left, at, right, at)
            lines += (part_of(line, span) for span in spans_in(line, region, wall.floor))
    return tuple(lines)
