"""A lining comes closer to a heat source than it may."""

from collections.abc import Iterator

from roomspec.checks.example import GLUED, PANEL
from roomspec.checks.facts import RoomFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.lined import finish_box
from roomspec.checks.lining_class import EUROCLASSES, class_of
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Citation, Related
from roomspec.model.product import Panel
from roomspec.model.wall import Wall
from roomspec.quantities.in_units import figure_text, length_text
from roomspec.takeoff.clip import Box

_ROOM = """\
job example
room 1 "Kitchen"
  height 2400
  wall a 3000
    on      masonry
    surface sound
    heat    "Stove" 600 x 900 at 200 clear 300
    finish  limestone-long by glued vertical from {} to 3000
"""


@finds(
    Check(
        name="too-near-heat",
        group="fire and safety",
        severity="error",
        scope="room",
        needs=("heat",),
        summary="a finish worse than A2 lies within the clearance of a heat source",
        why=(
            "The maker of a stove or a flue says how far anything combustible must stay away, because it chars over the"
            " years at temperatures that feel harmless. Inside that distance only non-combustible linings, class A1 or"
            " A2, may be used. Whoever installs the appliance decides."
        ),
        source=(Citation("maker's data", "the appliance's `clear`"), COMMON_PRACTICE),
        bad=_ROOM.format(800) + PANEL + GLUED,
        good=_ROOM.format(1100) + PANEL + GLUED,
    )
)
def too_near_heat(facts: RoomFacts) -> Iterator[Finding]:
    """Each finish of the heat source's own wall; a panel without a class counts as combustible."""
    units = facts.terms.units
    for wall in facts.room.walls:
        hot = [(at, _clearance(wall, at)) for at, one in enumerate(wall.obstacles) if one.kind == "heat" and one.clear]
        for at, finish in enumerate(wall.finishes) if hot and not wall.bare else ():
            box = finish_box(wall, finish)
            if box is None or _incombustible(finish.panel):
                continue
            for place, zone in hot:
                if box.common(zone) is None:
                    continue
                heat = wall.obstacles[place]
                reaction = written(facts.elsewhere(f"panel {finish.panel.name}"), ("reaction",))
                stated = f"class {finish.panel.reaction}" if finish.panel.reaction else "of no stated class"
                clear, what = length_text(heat.clear or 0, units), heat.label or "the heat source"
                yield Finding(
                    at=facts.here(("wall", wall.name, "finishes", at, "panel")),
                    message=(
                        f"wall {wall.name}: {finish.panel.name}, {stated}, comes within {clear} of {what};"
                        f" keep clear from {figure_text(zone.left, units)} to {figure_text(zone.right, units)}"
                    ),
                    help="end the finish outside that distance, or line it with a panel of class A1 or A2",
                    about=(f"wall {wall.name}", f"panel {finish.panel.name}"),
                    related=(
                        Related("the distance to keep", facts.here(("wall", wall.name, "obstacles", place))),
                        *((Related("its class", reaction),) if reaction else ()),
                    ),
                )


def _clearance(wall: Wall, at: int) -> Box:
    """The heat source's place, grown by the distance to keep."""
    heat = wall.obstacles[at]
    clear = heat.clear or 0
    top = heat.sill + max(heat.height, heat.end_height or 0)
    return Box(heat.x - clear, heat.x + heat.width + clear, heat.sill - clear, top + clear)


def _incombustible(panel: Panel) -> bool:
    return class_of(panel.reaction, "england") in EUROCLASSES[:2]
