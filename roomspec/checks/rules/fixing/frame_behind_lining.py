"""A lining stands out beyond the door or window frame that it comes up to."""

from collections.abc import Iterator

from roomspec.checks.example import PANEL
from roomspec.checks.facts import RoomFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.lined import finish_box
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Related
from roomspec.model.wall import Opening, Wall
from roomspec.quantities.in_units import figure_text
from roomspec.quantities.length import MM
from roomspec.takeoff.clip import Box

STANDS_OUT = 12 * MM
"""How far a kept architrave or a frame stands out from the wall, where nobody measured it: common practice."""

_JOB = """\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    on     masonry
    keep   architrave 70
    door   826 x 2040 at 500{}
    finish limestone-long by on-battens vertical
"""
_BATTENS = """\
support sw-25x50 "Softwood batten"
  section 25 x 50
  length  2400
  price   3.20 each
fixing panel-screw
  size  3.5 x 35
  price 11.40 per pack
fixing frame-fixing
  size  5 x 80
  price 14.60 per pack
method on-battens
  battens sw-25x50 every 400
  screw   panel-screw
  fix     frame-fixing every 600
"""


@finds(
    Check(
        name="frame-behind-lining",
        group="fixing",
        severity="hint",
        scope="room",
        needs=("openings",),
        summary="a lining stands out beyond the kept architrave or the frame that it comes up to",
        why=(
            "Battens and panel together come out further than the architrave or the frame, so that its edge lies in a"
            " recess and the panels' cut edges show. The frame is widened, a new architrave is planted on the lining,"
            " or the reveal is lined. Frames and architraves are taken to stand out 12 mm, as nobody measures them."
        ),
        source=(COMMON_PRACTICE,),
        bad=_JOB.format("") + PANEL + _BATTENS,
        good=_JOB.format(" reveal 100 lined") + PANEL + _BATTENS,
    )
)
def frame_behind_lining(facts: RoomFacts) -> Iterator[Finding]:
    """Each opening whose frame or kept architrave the lining comes up to, and is deeper than."""
    units = facts.terms.units
    for wall in facts.room.walls:
        for finish in wall.finishes if wall.openings and not wall.bare else ():
            beyond = finish.build_up - STANDS_OUT
            box = finish_box(wall, finish) if beyond > 0 else None
            for at, opening in enumerate(wall.openings if box else ()):
                what = _stands_there(wall, opening)
                hole = Box(opening.x, opening.right, opening.sill, opening.top)
                if not what or box is None or box.common(hole) is None:
                    continue
                method = facts.elsewhere(f"method {finish.method.name}")
                deep = written(method, ("battens",)) or method(())
                yield Finding(
                    at=facts.here(("wall", wall.name, "openings", at)),
                    message=(
                        f"the lining is {figure_text(finish.build_up, units, STANDS_OUT)} deep and stands"
                        f" {figure_text(beyond, units)} out beyond the"
                        f" {opening.kind}'s {what}, taken to stand out {figure_text(STANDS_OUT, units)}"
                    ),
                    help="widen the frame, or line the reveal: `reveal N lined`; price it as an `extra` of the wall",
                    about=(f"wall {wall.name}", f"method {finish.method.name}", f"panel {finish.panel.name}"),
                    related=(Related("what makes it that deep", deep),),
                    face=f"wall {wall.name}",
                )


def _stands_there(wall: Wall, opening: Opening) -> str:
    """What the lining comes up to at an opening; a frame set back in a reveal, and a window's, are out of the way."""
    if opening.kind not in ("door", "window", "hatch") or opening.lined or opening.panelled:
        return ""
    if wall.keep("architrave"):
        return "kept architrave"
    return "frame" if opening.kind != "window" and opening.reveal is None else ""
