"""Panels run a way that they are not made for."""

from collections.abc import Iterator

from roomspec.checks.facts import Path, RoomFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.panel_length import LONG, is_long, run_height
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.checks.starting import ALL_WALLS, for_the_room
from roomspec.diagnostics.diagnostic import Citation, Edit, Fix, Origin, Related
from roomspec.layout.extent import Run
from roomspec.model.product import Panel
from roomspec.model.wall import Wall
from roomspec.quantities.in_units import figure_text, length_text
from roomspec.quantities.length import shown_mm
from roomspec.text.listing import listed

_TURNED = {"vertical": "horizontal", "horizontal": "vertical"}


@finds(
    Check(
        name="panel-laid-wrong-way",
        group="laying",
        severity="error",
        scope="room",
        needs=("other way",),
        summary="panels run a way that they are not made for",
        why=(
            "A maker who says which way a panel may run has its length, its joint and its print in mind. Where nothing"
            f" is said, a panel over {shown_mm(LONG)} is made to stand from floor to ceiling: laid flat it leaves end"
            " joints that no tongue closes. A shorter one stood upright leaves a line of such joints across the wall,"
            " unless it is joined on all edges."
        ),
        source=(Citation("maker's data", "the panel's `lay`"), COMMON_PRACTICE),
        fix="turns the finish: the other direction is written",
        bad="""\
job example
room 1 "Shower room"
  height 2400
  wall a 3000
    finish limestone-long by glued horizontal
panel limestone-long "Limestone print, long"
  length 2600
  cover  250
  thick  10
  price  31.50 each
  lay    vertical
adhesive grab
  tube  290 ml
  price 6.20 each
method glued
  glue grab bead 8 every 100
""",
        good="""\
job example
room 1 "Shower room"
  height 2400
  wall a 3000
    finish limestone-long by glued vertical start balanced
panel limestone-long "Limestone print, long"
  length 2600
  cover  250
  thick  10
  price  31.50 each
  lay    vertical
adhesive grab
  tube  290 ml
  price 6.20 each
method glued
  glue grab bead 8 every 100
""",
    )
)
def panel_laid_wrong_way(facts: RoomFacts) -> Iterator[Finding]:
    """Hold each finish against its panel's `lay`, or, without one, each run against the panel's length."""
    units = facts.terms.units
    for wall, runs in zip(facts.room.walls, facts.runs(), strict=True):
        run_of = {at: run for run in runs for at in run.finishes}
        for at, finish in enumerate(wall.finishes):
            panel, path = finish.panel, ("wall", wall.name, "finishes", at)
            wrong = (
                _against_lay(panel, finish.direction)
                if panel.lay
                else _against_length(wall, panel, run_of.get(at), units)
            )
            if wrong:
                yield _finding(facts, path, panel, finish.direction, f"wall {wall.name}", wrong)
    for ceiling in facts.room.ceilings:
        for at, finish in enumerate(ceiling.finishes):
            if finish.panel.lay and "overhead" not in finish.panel.lay:
                wrong = f"{finish.panel.name} is not made for overhead: its `lay` says {listed(finish.panel.lay)}"
                path = ("ceiling", ceiling.name, "finishes", at)
                yield _finding(facts, path, finish.panel, "", f"ceiling {ceiling.name}", wrong)


def _against_lay(panel: Panel, direction: str) -> str:
    """What is wrong, in words; empty where nothing is."""
    if direction in panel.lay:
        return ""
    return f"{panel.name} is laid {direction}; its `lay` says {listed(panel.lay)}"


def _against_length(wall: Wall, panel: Panel, run: Run | None, units: str) -> str:
    if run is None or panel.joined == "all edges":
        return ""
    if not run.upright:
        return f"{panel.name} is {length_text(panel.length, units)} long and is laid flat" if is_long(panel) else ""
    height = run_height(wall, run)
    if is_long(panel) or height <= panel.length:
        return ""
    return (
        f"{panel.name} is only {length_text(panel.length, units)} long and stands upright on"
        f" {figure_text(height, units)}"
    )


def _finding(facts: RoomFacts, path: Path, panel: Panel, direction: str, face: str, wrong: str) -> Finding:
    lay = written(facts.elsewhere(f"panel {panel.name}"), ("lay",))
    turned = _TURNED.get(direction, "")
    may_turn = turned and (not panel.lay or turned in panel.lay)
    advice = f"turn it: `{turned}`" if may_turn else "choose another panel"
    everywhere = ALL_WALLS if for_the_room(facts, path[:2], path[2:]) else ""
    return Finding(
        at=facts.here((*path, "direction")),
        message=wrong,
        help=advice if panel.lay else f"{advice}; or say `lay {direction}` in the catalogue if it is made for that",
        about=(face, f"panel {panel.name}"),
        related=(Related("the maker says how it may run", lay),) if lay else (),
        fixes=(Fix(f"turn it: {turned}{everywhere}", (_turn(facts, path, turned),)),) if may_turn else (),
        face=face,
    )


def _turn(facts: RoomFacts, path: Path, turned: str) -> Edit:
    """Replace the direction, or add it to the line where none is written."""
    direction = written(facts.here, (*path, "direction"))
    if direction:
        return Edit(direction, turned)
    line = facts.here(path)
    return Edit(Origin(line.block, line.line, line.end, line.end), f" {turned}")
