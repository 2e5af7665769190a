"""A layer ends behind a finish that cannot bridge the step."""

from collections.abc import Iterator

from roomspec.checks.example import BATTENED, GLUED, PANEL
from roomspec.checks.facts import RoomFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.insert import above
from roomspec.checks.lined import layers_behind, lined_faces
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.checks.starting import ALL_WALLS, for_the_room
from roomspec.diagnostics.diagnostic import Edit, Fix, Related
from roomspec.model.wall import Ceiling, Finish, Wall

_THICK = ("tile", "stone")


@finds(
    Check(
        name="step-in-substrate",
        group="survey",
        severity="warning",
        scope="room",
        needs=("layers",),
        summary="a layer such as old tile ends behind a finish that is glued across it",
        why=(
            "Where old tile stops part-way up, the wall steps back by its thickness. A panel glued across the step"
            " touches above or below and is hollow between, so it drums, and breaks when something leans on it. Take"
            " the layer off, bring the rest out level, or put the panels on battens."
        ),
        source=(COMMON_PRACTICE,),
        fix="names a method on battens, or strips the layer off",
        bad="""\
job example
room 1 "Shower room"
  height 2400
  wall a 3000
    on      plaster over masonry
    on      tile over plaster over masonry up 0 to 1400
    surface sound
    finish  limestone-long by glued vertical
"""
        + PANEL
        + GLUED
        + BATTENED,
        good="""\
job example
room 1 "Shower room"
  height 2400
  wall a 3000
    on      plaster over masonry
    on      tile over plaster over masonry up 0 to 1400
    surface sound
    finish  limestone-long by on-battens vertical
"""
        + PANEL
        + BATTENED,
    )
)
def step_in_substrate(facts: RoomFacts) -> Iterator[Finding]:
    """Compare the layers behind the parts of each finish that has no battens."""
    for kind, face in lined_faces(facts.room):
        for at, finish in enumerate(face.finishes):
            layer = "" if finish.method.battens else _ending(face, finish)
            if layer:
                yield _finding(facts, (kind, face.name), at, finish, layer, face)


def _ending(face: Wall | Ceiling, finish: Finish) -> str:
    """The layer that lies behind a part of the finish only; empty where the parts are alike or not known."""
    stacks = [layers for _, layers in layers_behind(face, finish) if layers]
    for stack in stacks:
        for other in stacks:
            on_top = len(stack) > len(other) and stack[len(stack) - len(other) :] == other
            if on_top or (stack[0] in _THICK and other[0] != stack[0]):
                return stack[0]
    return ""


def _finding(
    facts: RoomFacts, key: tuple[str, str], at: int, finish: Finish, layer: str, face: Wall | Ceiling
) -> Finding:
    method = facts.here((*key, "finishes", at, "method"))
    line = written(facts.here, (*key, "finishes", at))
    on = next((i for i, s in enumerate(face.substrates) if s.layers and s.layers[0].kind == layer), 0)
    stacked = facts.here((*key, "substrates", on))
    fixes = [Fix(f"lay it by {name}", (Edit(method, name),)) for name in facts.battened if line]
    everywhere = ALL_WALLS if for_the_room(facts, key, ("substrates", on)) else ""
    edits = (above(stacked, f"remove {layer}"),)
    fixes.append(Fix(f"take the {layer} off{everywhere}", edits, to_fill_in=True))
    return Finding(
        at=method,
        message=f"{layer} ends behind this finish; {finish.method.name} has no battens to bridge it",
        help=f"lay it on battens, take the {layer} off (`remove {layer}`), or end one finish at the step",
        about=(" ".join(key), f"method {finish.method.name}"),
        related=(Related(f"the {layer}", stacked),),
        fixes=tuple(fixes),
        face=" ".join(key),
    )
