"""A socket's or switch's box is left behind a combustible lining."""

from collections.abc import Iterator, Sequence

from roomspec.checks.facts import Path, RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.lined import lined_faces
from roomspec.checks.record import Check, finds
from roomspec.checks.used import finish_at
from roomspec.diagnostics.diagnostic import Citation
from roomspec.model.product import Panel
from roomspec.model.wall import Finish
from roomspec.quantities.in_units import figure_text, length_text
from roomspec.quantities.length import MM

SET_BACK = 6 * MM
"""How far a box may be left behind the face: 1/4 in by US wiring practice, from memory."""

_JOB = """\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    on      plaster
    surface sound
    socket  at 600 up 450
    finish  limestone-long by glued vertical
panel limestone-long "Limestone print, long"
  length   2600
  cover    250
  thick    10
  price    31.50 each
  reaction {}
adhesive grab
  tube  290 ml
  price 6.20 each
method glued
  glue grab bead 8 every 100
"""


@finds(
    Check(
        name="box-not-flush",
        group="fixing",
        severity="warning",
        scope="room",
        needs=("wired",),
        summary="the box of a socket or switch lies behind a combustible lining",
        why=(
            "A box that stays in the wall leaves an open ring of combustible panel round live terminals, and the"
            " faceplate's screws no longer reach. Boxes are brought forward flush with the lining's face, by a"
            " licensed electrician, before it goes up. Panels of class A1 or A2 are not asked about; local wiring"
            " rules decide."
        ),
        source=(Citation("wiring-rule practice", "US 1/4 in, from memory"),),
        bad=_JOB.format("C-s2,d0"),
        good=_JOB.format("A2-s1,d0"),
    )
)
def box_not_flush(facts: RoomFacts) -> Iterator[Finding]:
    """One finding for each build-up in the room, at its first socket or switch under such a lining."""
    units = facts.terms.units
    found: dict[int, list[tuple[Path, Finish]]] = {}
    for kind, face in lined_faces(facts.room):
        for at, point in enumerate(face.points):
            finish = finish_at(face, point.x, point.up) if point.kind in ("socket", "switch") else None
            if finish is not None and finish.build_up > SET_BACK and is_combustible(finish.panel):
                found.setdefault(finish.build_up, []).append(((kind, face.name, "points", at), finish))
    for deep, boxes in found.items():
        yield Finding(
            at=facts.here(boxes[0][0]),
            message=(
                f"boxes of sockets and switches lie behind {length_text(deep, units, SET_BACK)} of combustible lining;"
                f" over {figure_text(SET_BACK, units)} they must come forward"
            ),
            help=(
                "have a licensed electrician bring them forward flush, and price it as an `extra`; or say who does:"
                ' `allow box-not-flush because "..."` in the job'
            ),
            about=_shared(boxes),
            face=f"room {facts.room.name}",
        )


def _shared(boxes: Sequence[tuple[Path, Finish]]) -> tuple[str, ...]:
    """What all of the boxes have in common: the face, the panel, the method."""
    faces, finishes = {path[:2] for path, _ in boxes}, {finish for _, finish in boxes}
    panels, methods = {finish.panel for finish in finishes}, {finish.method for finish in finishes}
    return (
        *(f"{kind} {name}" for kind, name in faces if len(faces) == 1),
        *(f"panel {panel.name}" for panel in panels if len(panels) == 1),
        *(f"method {method.name}" for method in methods if len(methods) == 1),
    )


def is_combustible(panel: Panel) -> bool:
    """Anything but classes A1 and A2 (EN 13501-1); a panel of no stated class too, as most are wood or plastic."""
    return not (panel.reaction or "").startswith(("A1", "A2"))
