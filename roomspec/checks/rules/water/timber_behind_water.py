"""Timber lies behind panels that water falls on."""

from collections.abc import Iterator

from roomspec.checks.example import PANEL
from roomspec.checks.facts import RoomFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.lined import finish_box, layers_behind, lined_faces
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Related
from roomspec.model.product import Support
from roomspec.model.wall import Ceiling, Finish, Wall
from roomspec.takeoff.clip import Box
from roomspec.takeoff.parts import direct_water

NOT_TIMBER = ("metal", "steel", "alumin", "galvan", "zinc", "plastic", "pvc", "composite", "cement")
"""Words in the name or title of a batten that say it is none of timber."""

_ROOM = """\
job example
room 1 "Shower room"
  height 2400
  wall a 3000
    on     masonry
    wet    direct from 0 to 1200 up 0 to 2100
    finish limestone-long by on-battens vertical
"""
_BATTENED = """\
sealant clear
  tube  310 ml
  price 5.10 each
fixing panel-screw
  size  3.5 x 35
  price 11.40 per pack
support batten "{}"
  section 25 x 50
  length  2400
  price   3.20 each
method on-battens
  battens batten every 400
  screw   panel-screw
  seal    clear bead 5 at joints floor
"""


@finds(
    Check(
        name="timber-behind-water",
        group="water",
        severity="warning",
        scope="room",
        needs=("direct",),
        summary="timber battens or a timber frame lie behind panels in direct water",
        why=(
            "Water that gets behind a panel stays there, and timber that cannot dry rots and drops its screws. In a"
            " shower glue the panels to a sound wall or a cement board, or batten with metal or plastic."
        ),
        source=(COMMON_PRACTICE,),
        bad=_ROOM + PANEL + _BATTENED.format("Treated softwood batten"),
        good=_ROOM + PANEL + _BATTENED.format("Plastic batten"),
    )
)
def timber_behind_water(facts: RoomFacts) -> Iterator[Finding]:
    """Battens are taken as timber unless their name says otherwise; a frame is timber where it lies bare."""
    for kind, face in lined_faces(facts.room):
        direct = direct_water(face.wet) if face.wet else ()
        for at, finish in enumerate(face.finishes) if direct else ():
            what = _timber(face, finish, direct)
            if not what:
                continue
            wet = next(i for i, wet in enumerate(face.wet) if wet.exposure == "direct")
            battens = written(facts.elsewhere(f"method {finish.method.name}"), ("battens",))
            yield Finding(
                at=facts.here((kind, face.name, "finishes", at, "method")),
                message=f"{what} behind panels that water falls on directly",
                help="glue the panels to a sound wall or a cement board, or name a batten of metal or plastic",
                about=(f"{kind} {face.name}", f"method {finish.method.name}"),
                related=(
                    Related("direct water", facts.here((kind, face.name, "wet", wet))),
                    *((Related("the battens", battens),) if battens and finish.method.battens else ()),
                ),
                face=f"{kind} {face.name}",
            )


def _timber(face: Wall | Ceiling, finish: Finish, direct: tuple[Box, ...]) -> str:
    """What of timber lies there, in words; empty where nothing does."""
    box = finish_box(face, finish)
    if box is None or not any(box.common(wet) for wet in direct):
        return ""
    timber = next((layer.support for layer in finish.method.battens if _is_timber(layer.support)), None)
    if timber is not None:
        return f"timber battens ({timber.name})"
    bare = any(
        layers and layers[0] == "timber-frame" and any(part.common(wet) for wet in direct)
        for part, layers in layers_behind(face, finish)
    )
    return "an open timber frame" if bare and not finish.method.battens else ""


def _is_timber(support: Support) -> bool:
    named = f"{support.name} {support.title}".lower()
    return not any(word in named for word in NOT_TIMBER)
