"""Upright panels do not reach the top of their run, and nothing covers or backs their end joints."""

from collections.abc import Iterator

from roomspec.checks.facts import RoomFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.held import battens_cross
from roomspec.checks.panel_length import is_long, run_height
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Related
from roomspec.quantities.in_units import figure_text, length_text


@finds(
    Check(
        name="wall-taller-than-panel",
        group="laying",
        severity="error",
        scope="room",
        needs=("upright", "plain ends", "tall"),
        summary="upright panels are shorter than the wall, and neither a joint trim nor a batten is at their ends",
        why=(
            "Panels joined on their long edges only have plain ends. Where one stands on another, the joint is open to"
            " the eye and to water, and nothing keeps the two in line. A joint trim covers it; battens across the"
            " panels back it where `joints up` says that it is wanted; a longer panel does without."
        ),
        source=(COMMON_PRACTICE,),
        bad="""\
job example
room 1 "Stair hall"
  height 3200
  wall a 3000
    finish limestone-long by glued vertical
panel limestone-long "Limestone print, long"
  length 2600
  cover  250
  thick  10
  price  31.50 each
adhesive grab
  tube  290 ml
  price 6.20 each
method glued
  glue grab bead 8 every 100
""",
        good="""\
job example
room 1 "Stair hall"
  height 3200
  wall a 3000
    finish limestone-long by glued vertical
panel limestone-long "Limestone print, long"
  length 2600
  cover  250
  thick  10
  price  31.50 each
trim steel-joint "Brushed joint trim"
  role   joint
  length 2600
  price  9.80 each
adhesive grab
  tube  290 ml
  price 6.20 each
method glued
  glue  grab bead 8 every 100
  joint steel-joint
""",
    )
)
def wall_taller_than_panel(facts: RoomFacts) -> Iterator[Finding]:
    """Compare each upright run's height with its panel's length.

    A short panel whose maker says nothing is told to be turned instead (panel-laid-wrong-way).
    """
    units = facts.terms.units
    for wall, runs in zip(facts.room.walls, facts.runs(), strict=True):
        for run in runs:
            panel, method = run.panel, run.method
            if not run.upright or not run.strips or method.joint is not None or panel.joined == "all edges":
                continue
            backed = battens_cross(method, upright=True)
            joints = wall.joints_up if backed else ()
            height = run_height(wall, run, joints)
            if height <= panel.length or not (panel.lay or is_long(panel)):
                continue
            where = f" at {figure_text(wall.joints_up[0], units)}" if wall.joints_up and not joints else ""
            between = " from one of the wall's joints to the next" if joints else ""
            entry = written(facts.elsewhere(f"panel {panel.name}"), ("stocks", 0))
            yield Finding(
                at=facts.here(("wall", wall.name, "finishes", run.finishes[0], "panel")),
                message=(
                    f"the panels have {length_text(height, units, panel.length)} to cover{between} and {panel.name} is"
                    f" {figure_text(panel.length, units, height)} long,"
                    f" {figure_text(height - panel.length, units)} short; no trim covers the end joints{where}"
                ),
                help=_mend(method.name, backed, bool(wall.joints_up)),
                about=(f"wall {wall.name}", f"panel {panel.name}", f"method {method.name}"),
                related=(Related("the panel's length", entry),) if entry else (),
                face=f"wall {wall.name}",
            )


def _mend(method: str, backed: bool, stated: bool) -> str:
    """What to do, by whether battens cross the panels and whether the wall says where these meet."""
    trim = f"name a `joint` trim in method {method}"
    if backed and stated:
        return f"say with `joints up` where they meet once more, {trim}, or choose a longer panel"
    if backed:
        return f"say where they meet with `joints up` on the wall, {trim}, or choose a longer panel"
    if stated:
        return f"{trim}, put battens across the panels, or choose a longer panel"
    return f"{trim} (and say where panels meet with `joints up` on the wall), or choose a longer panel"
