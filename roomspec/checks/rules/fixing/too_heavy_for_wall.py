"""A glued lining weighs more than the weakest layer behind it carries."""

from collections.abc import Iterator
from decimal import Decimal
from functools import lru_cache

from roomspec.checks.facts import RoomFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.lined import finish_box
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.checks.wording import figure, load_figure, load_words
from roomspec.diagnostics.diagnostic import Citation, Origin, Related
from roomspec.model.method import Method
from roomspec.model.product import Panel
from roomspec.model.wall import Finish, Removal, Substrate, Wall
from roomspec.takeoff.clip import box_of
from roomspec.takeoff.load import Load, loads_behind, loads_under

_JOB = """\
job example
room 1 "Shower room"
  height 2400
  wall a 3000
    on      {}
    surface sound
    finish  limestone-long by glued vertical
panel limestone-long "Limestone print, long"
  length 2600
  cover  250
  thick  10
  weighs 5.5 kg/m2
  price  31.50 each
adhesive grab
  tube  290 ml
  price 6.20 each
method glued
  glue grab bead 8 every 100
"""


_HINTED = 70
"""Per cent of what a layer carries: BS 5385-1 in its 2018 edition."""


@finds(
    Check(
        name="too-heavy-for-wall",
        group="fixing",
        severity="error",
        scope="room",
        summary="a glued lining weighs more on a layer behind it than that layer carries",
        why=(
            "What is glued on hangs on every layer behind it, and the weakest decides: over old tile, plaster carries"
            " the panel, its adhesive and the tile as well. Plaster carries 20 kg/m2, plasterboard 32, plywood 30,"
            " gypsum-fibre about 40, cement-board about 50. As a hint: a use over 70 %, where the whole back wants"
            " adhesive. Tile of no stated weight is taken as 22 kg/m2."
        ),
        source=(
            Citation(
                "BS 5385-1", "weight limits as trade pages quote them; 70 % and solid bedding in its 2018 edition"
            ),
            COMMON_PRACTICE,
        ),
        bad=_JOB.format("tile over plaster over masonry"),
        good=_JOB.format("plaster over masonry"),
    )
)
def too_heavy_for_wall(facts: RoomFacts) -> Iterator[Finding]:
    """The part of each wall finish that comes nearest to its limit, or goes furthest beyond it."""
    for wall in facts.room.walls:
        for at, finish in enumerate(() if wall.bare else wall.finishes):
            if not _heavy_somewhere(finish.panel, finish.method, wall.substrates, wall.removals):
                continue
            box = finish_box(wall, finish)
            load = next(iter(loads_under(wall, finish.panel, finish.method, box)), None) if box else None
            if load is not None and is_heavy(load):
                yield _finding(facts, wall, at, finish, load)


@lru_cache(2048)
def _heavy_somewhere(
    panel: Panel, method: Method, substrates: tuple[Substrate, ...], removals: tuple[Removal, ...]
) -> bool:
    """True where some part of a face with these layers would be used heavily if the panels covered it."""
    return any(is_heavy(load) for load in loads_behind(substrates, removals, panel, method))


def is_heavy(load: Load) -> bool:
    """True where it uses over 70 % of what the layer carries."""
    return load.share * 100 > _HINTED


def _finding(facts: RoomFacts, wall: Wall, at: int, finish: Finish, load: Load) -> Finding:
    over, share, limit = load.share > 1, load.share * 100, load.limit or Decimal(0)
    units = facts.terms.units
    parts = ", ".join(f"{load_figure(weight, units)} of {name}" for name, weight in load.parts)
    if over:
        tile = any(name in ("tile", "stone") for name, _ in load.parts)
        advice = f"{'take the old layer off (`remove tile`), or ' if tile else ''}screw the panels to battens"
    else:
        advice = "spread the adhesive over the whole back, or screw the panels to battens"
    weighs = written(facts.elsewhere(f"panel {finish.panel.name}"), ("weighs",))
    return Finding(
        at=facts.here(("wall", wall.name, "finishes", at, "method")),
        message=(
            f"{load_words(load.load, units, limit)} on {load.layer} that carries"
            f" {load_figure(limit, units, load.load)}"
            f"{'' if over else f', {figure(share, _HINTED, Decimal(100))} % of it'}: {parts}"
        ),
        help=advice,
        about=(f"wall {wall.name}", f"panel {finish.panel.name}", f"method {finish.method.name}"),
        related=(
            *((Related("what the wall is made of", place),) if (place := _substrate(facts, wall, load)) else ()),
            *((Related("the panel's weight", weighs),) if weighs else ()),
        ),
        severity="error" if over else "hint",
        face=f"wall {wall.name}",
    )


def _substrate(facts: RoomFacts, wall: Wall, load: Load) -> Origin | None:
    """The `on` line that holds there: the last whose region does."""
    there = [at for at, one in enumerate(wall.substrates) if box_of(one.region).common(load.box)]
    return facts.here(("wall", wall.name, "substrates", there[-1])) if there else None
