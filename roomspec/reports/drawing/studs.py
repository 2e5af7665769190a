"""Studs behind a face, as taking off counts them: at their spacing from its left end, level ones from its floor."""

from roomspec.layout.face import ceiling_line
from roomspec.layout.laid import Line
from roomspec.layout.slabs import height_at
from roomspec.model.wall import Wall
from roomspec.quantities.length import MM
from roomspec.takeoff.clip import Box, box_of

CLOSEST = 10 * MM


def stud_lines(wall: Wall) -> tuple[Line, ...]:
    """One line a stud, within its region; where they really stand has to be found on site."""
    top = ceiling_line(wall)
    face = Box(wall.floor[0][0], wall.floor[-1][0], min(y for _, y in wall.floor), max(y for _, y in top))
    lines: list[Line] = []
    for studs in wall.studs:
        within = face.common(box_of(studs.region))
        if within is None:
            continue
        every = max(studs.every, CLOSEST)
        upright = studs.direction == "vertical"
        low, high = (within.left, within.right) if upright else (within.bottom, within.top)
        for at in range(-(-low // every) * every, high + 1, every):
            if upright:
                start, end = max(within.bottom, height_at(wall.floor, at)), min(within.top, height_at(top, at))
                lines.append(Line(at, start, at, max(start, end)))
            else:
                lines.append(Line(within.left, at, within.right, at))
    return tuple(lines)
