"""What holds a lining: the frame that its screws go into, where nothing else behind it would hold them."""

from collections.abc import Iterator

from roomspec.checks.lined import finish_box, layers_behind
from roomspec.model.method import Method
from roomspec.model.wall import Ceiling, Finish, Studs, Wall
from roomspec.takeoff.lines import panels_run_up
from roomspec.takeoff.parts import divide

SOLID = frozenset(("masonry", "concrete", "plywood"))
"""Layers that hold a screw or a plug wherever it is set."""
FRAMES = frozenset(("timber-frame", "metal-frame"))


def hangs_on_glue(method: Method) -> bool:
    """True where nothing but glue holds the panels to the wall itself."""
    return method.glue is not None and method.screw is None and not method.battens


def battens_cross(method: Method, upright: bool) -> bool:
    """True where the method's battens lie at right angles to its panels, so that one backs each line of end joints."""
    if not method.battens:
        return False
    direction = method.battens[0].direction
    return direction is None or (direction == "vertical") != upright


def direction_of(finish: Finish) -> str:
    """`vertical` where the panels' length lies along the face's y, else `horizontal`: as battens and studs say it."""
    return "vertical" if panels_run_up(finish.direction) else "horizontal"


def studs_behind(face: Wall | Ceiling, finish: Finish) -> Iterator[tuple[int, Studs]]:
    """The `studs` lines of a face that alone hold a finish screwed to them: no battens, no glue, nothing solid."""
    method, box = finish.method, finish_box(face, finish)
    if method.screw is None or method.battens or method.glue is not None or box is None or not face.studs:
        return
    soft = [part for part, layers in layers_behind(face, finish) if SOLID.isdisjoint(layers)]
    seen = set()
    for part in divide(((studs.region, at) for at, studs in enumerate(face.studs)), -1):
        over = part.box.common(box)
        if part.value >= 0 and part.value not in seen and over and any(over.common(one) for one in soft):
            seen.add(part.value)
            yield part.value, face.studs[part.value]
