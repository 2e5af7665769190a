"""A panel is laid where it gets wetter than it is made for."""

from collections.abc import Iterator

from roomspec.checks.example import GLUED
from roomspec.checks.facts import RoomFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.lined import finish_box, lined_faces
from roomspec.checks.record import Check, finds
from roomspec.diagnostics.diagnostic import Citation, Related
from roomspec.takeoff.clip import box_of
from roomspec.takeoff.parts import divide

_WETTER = {"dry": 0, "splash": 1, "direct": 2}

_ROOM = """\
job example
room 1 "Shower room"
  height 2400
  wall a 3000
    on      masonry
    surface sound
    wet     splash
    finish  ash-plank by glued vertical
panel ash-plank "Ash print, plank"
  length 2600
  cover  200
  thick  10
  price  24.80 each
  wet    {}
"""


@finds(
    Check(
        name="panel-not-for-wet",
        group="water",
        severity="error",
        scope="room",
        needs=("wet",),
        summary="a finish gets wetter than its panel is made for",
        why=(
            "A panel whose maker allows splashes or less swells or delaminates where water falls on it, and the"
            " guarantee is gone with it. Choose one that is made for the place, or end the finish before the wet"
            " region."
        ),
        source=(Citation("maker's data", "the panel's `wet`"),),
        bad=_ROOM.format("dry") + GLUED,
        good=_ROOM.format("splash") + GLUED,
    )
)
def panel_not_for_wet(facts: RoomFacts) -> Iterator[Finding]:
    """Hold the exposure of each part of a finish against what its panel is made for, where the maker says it."""
    for kind, face in lined_faces(facts.room):
        most = max([_WETTER[wet.exposure] for wet in face.wet], default=0)
        if all(finish.panel.wet is None or _WETTER[finish.panel.wet] >= most for finish in face.finishes):
            continue
        parts = divide(((wet.region, wet.exposure) for wet in face.wet), "dry")
        for at, finish in enumerate(face.finishes):
            box, made_for = finish_box(face, finish), finish.panel.wet
            if box is None or made_for is None:
                continue
            exposures = {part.value for part in parts if part.box.common(box)}
            worst = max(exposures, key=_WETTER.__getitem__, default="dry")
            if _WETTER[worst] <= _WETTER[made_for]:
                continue
            wet = next((i for i, w in enumerate(face.wet) if w.exposure == worst and box_of(w.region).common(box)), 0)
            data = written(facts.elsewhere(f"panel {finish.panel.name}"), ("wet",))
            yield Finding(
                at=facts.here((kind, face.name, "finishes", at, "panel")),
                message=f"{finish.panel.name} is made for `wet {made_for}` at most and lies in `wet {worst}`",
                help="choose a panel that is made for it, or end this finish before the wet region",
                about=(f"{kind} {face.name}", f"panel {finish.panel.name}"),
                related=(
                    Related(f"wet {worst}", facts.here((kind, face.name, "wet", wet))),
                    *((Related("the maker says what it is made for", data),) if data else ()),
                ),
                face=f"{kind} {face.name}",
            )
