"""Panels are longer than what can be carried into the room."""

from collections.abc import Iterator

from roomspec.checks.example import GLUED, PANEL
from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.lined import lined_faces, named, one
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Related
from roomspec.layout.laid import RoomLayout
from roomspec.model.product import Panel
from roomspec.quantities.in_units import figure_text, length_text


@finds(
    Check(
        name="too-long-to-get-in",
        group="survey",
        severity="warning",
        scope="room",
        needs=("access",),
        summary="a piece, or as a hint a whole panel, is longer than the room's `access`",
        why=(
            "What does not go round the stair or into the lift is found out on delivery day, with the gang waiting. A"
            " piece that is too long needs a shorter panel and a joint. A panel that is only cut down in the room can"
            " be cut before it is carried up, if somebody knows."
        ),
        source=(COMMON_PRACTICE,),
        bad="""\
job example
room 1 "Attic bedroom"
  height 2500
  access 2400
  wall a 3000
    on      plaster
    surface sound
    finish  limestone-long by glued vertical
"""
        + PANEL
        + GLUED,
        good="""\
job example
room 1 "Attic bedroom"
  height 2500
  access 2600
  wall a 3000
    on      plaster
    surface sound
    finish  limestone-long by glued vertical
"""
        + PANEL
        + GLUED,
    )
)
def too_long_to_get_in(facts: RoomFacts) -> Iterator[Finding]:
    """The pieces of each lining first; where all of them can be got in, the panels that they are cut from."""
    units = facts.terms.units
    access = facts.room.access
    if access is None:
        return
    used = {finish.panel for _, face in lined_faces(facts.room) for finish in face.finishes}
    for panel in sorted(used, key=lambda panel: panel.name):
        if panel.length <= access:
            continue
        pieces = _longest(facts.layout(), panel)
        longest = max(pieces.values(), default=0)
        # Lengths that can be got in are chosen before others (`access`), so only a piece can be too long for them.
        if not longest or (longest <= access and any(stock.length <= access for stock in panel.stocks)):
            continue
        walls = [face for face, length in pieces.items() if length > access]
        if walls:
            message = f"{named(walls)}: pieces of {panel.name} are up to {length_text(longest, units, access)} long"
        else:
            walls = list(pieces)
            message = (
                f"{panel.name} is {length_text(panel.length, units, access)} long, its longest piece here"
                f" {figure_text(longest, units, access)}"
            )
        yield Finding(
            at=facts.here(("access",)),
            message=f"{message}; {figure_text(access, units, longest)} is the most that can be got in",
            help="choose a shorter panel with a joint"
            if longest > access
            else "cut the panels before carrying them in",
            about=(*one(walls), f"panel {panel.name}"),
            related=tuple(Related("its finish", facts.here((*wall, "finishes"))) for wall in walls[:4]),
            severity="" if longest > access else "hint",
        )


def _longest(laid: RoomLayout, panel: Panel) -> dict[tuple[str, str], int]:
    """The longest piece of a panel on each wall and each ceiling that has any, with their boxes, niches and hatches."""
    faces = [(("wall", wall.name), wall.linings, wall.faces) for wall in laid.walls]
    faces += [(("ceiling", over.name), over.own.linings, over.faces) for over in laid.ceilings]
    found: dict[tuple[str, str], int] = {}
    for name, own, others in faces:
        linings = (*own, *(lining for face in others for lining in face.linings))
        lengths = [piece.length for lining in linings if lining.panel == panel for piece in lining.pieces]
        if lengths:
            found[name] = max(lengths)
    return found
