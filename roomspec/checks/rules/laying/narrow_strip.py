"""The first or last strip of a run of upright panels is narrow, or what an opening or a box leaves of one."""

from collections.abc import Iterator, Sequence

from roomspec.checks.at_openings import THIRD, Leg, thin_legs, thin_reveals
from roomspec.checks.facts import RoomFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.other_faces import boxed, overhead, thinnest
from roomspec.checks.record import Check, finds
from roomspec.checks.starting import face_named, start_fix
from roomspec.diagnostics.diagnostic import Citation
from roomspec.layout.covers import covers_on
from roomspec.layout.extent import Run
from roomspec.layout.laid import Lining
from roomspec.layout.set_out import set_out
from roomspec.model.shape import SetOut
from roomspec.model.wall import Wall
from roomspec.quantities.in_units import figure_text, length_text
from roomspec.takeoff.lines import panels_run_up
from roomspec.text.listing import listed

_BALANCED = SetOut("balanced")
_EDGES = {"openings": "the opening's", "obstacles": "its", "boxing": "the box's"}


@finds(
    Check(
        name="narrow-strip",
        group="laying",
        severity="warning",
        scope="room",
        summary="an end strip, a reveal's inner strip, or what is left beside an opening or a box is too narrow",
        why=(
            "A sliver in the corner draws the eye, shows every fault of the wall beside it, breaks when it is cut and"
            " has little to hold it. Shifting the whole run by half a panel costs nothing and leaves two wide ends. As"
            " a hint: an end under half a panel that balancing would widen, where no `start` was chosen; and a leg"
            " under a third of `narrowest` that a joint close to an opening's or a box's edge leaves beside it. Beside"
            " one as high as the run it is a strip by itself, which `narrowest` holds for."
        ),
        source=(Citation("ANSI A108.02", "4.3.1-2"), Citation("common practice", "the job's `narrowest`")),
        fix="starts the run balanced",
        bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3020
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
room 1 "Bedroom"
  height 2400
  wall a 3020
    finish limestone-long by glued vertical start balanced
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
    )
)
def narrow_strip(facts: RoomFacts) -> Iterator[Finding]:
    """Both end strips of each upright run, then what openings and boxes leave: reveals' inner strips, legs, strips."""
    yield from _at_ends(facts)
    yield from _overhead(facts)
    if any(wall.boxing for wall in facts.room.walls):
        yield from _on_boxes(facts)
    for at, (wall, runs) in enumerate(zip(facts.room.walls, facts.runs(), strict=True)):
        if not runs or not (wall.openings or wall.obstacles or wall.boxing):
            continue
        if any(opening.lined for opening in wall.openings):
            yield from _in_reveals(facts, wall, runs)
        covers = covers_on(facts.room, at) if wall.boxing else ()
        for run in runs:
            legs = thin_legs(wall, run, covers, facts.terms.narrowest)
            if legs:
                yield from _beside(facts, wall, run, legs)


def _overhead(facts: RoomFacts) -> Iterator[Finding]:
    """The first and last strip of each ceiling, whichever way its panels run."""
    units, narrowest = facts.terms.units, facts.terms.narrowest
    for one in overhead(facts):
        strip, leg = thinnest(one.lining, narrowest)
        apart = strip < narrowest
        if apart or leg < narrowest // THIRD:
            left = length_text(strip, units, narrowest) if apart else length_text(leg, units)
            limit = f"strip of {left}; the narrowest wanted is {figure_text(narrowest, units)}"
            yield Finding(
                at=facts.here(one.path),
                message=f"{one.face}: a box, an opening or a corner leaves a {limit if apart else f'leg of {left}'}",
                help="begin elsewhere, such as `start joint at` or `rows joint at` its edge, or build the box to suit",
                about=(one.face, f"panel {one.lining.panel.name}", f"method {one.lining.method.name}"),
                severity="" if apart else "hint",
            )
        least = _least_end(one.lining)
        if least >= narrowest:
            continue
        strips, field = one.lining.strips, "start" if panels_run_up(one.lining.direction) else "rows"
        balanced = min(set_out(0, sum(strips), one.lining.panel.cover, _BALANCED))
        cured = balanced >= narrowest
        yield Finding(
            at=facts.here((*one.path, field)),
            message=(
                f"{one.face}: an end strip is {length_text(least, units, narrowest)};"
                f" the narrowest wanted is {figure_text(narrowest, units)}"
            ),
            help=(
                f"`{field} balanced` makes both ends {figure_text(balanced, units)}"
                if cured
                else f"begin elsewhere, such as `{field} joint at` a place, or choose another cover width"
            ),
            about=(one.face, f"panel {one.lining.panel.name}", f"method {one.lining.method.name}"),
            fixes=(start_fix(facts, one.path[:2], one.lining.finishes, "balanced", field),) if cured else (),
        )


def _on_boxes(facts: RoomFacts) -> Iterator[Finding]:
    """The strip that a box's front ends in: the box can be built to suit its panels."""
    units, narrowest = facts.terms.units, facts.terms.narrowest
    for one in boxed(facts):
        least = _least_end(one.lining)
        if least < narrowest:
            narrower, wider = length_text(least, units), length_text(narrowest - least, units)
            yield Finding(
                at=facts.here(one.path),
                message=(
                    f"{one.face}: an end strip is {length_text(least, units, narrowest)};"
                    f" the narrowest wanted is {figure_text(narrowest, units)}"
                ),
                help=f"build the box {narrower} narrower, or {wider} wider",
                about=(f"wall {one.wall}", f"panel {one.lining.panel.name}", f"method {one.lining.method.name}"),
            )


def _least_end(lining: Lining) -> int:
    """The narrower end strip of several; a panel's cover where none is cut."""
    cover = lining.panel.cover
    return min(cover, lining.strips[0], lining.strips[-1]) if len(lining.strips) > 1 else cover


def _at_ends(facts: RoomFacts) -> Iterator[Finding]:
    """Hold the end strips against `narrowest`, then against half a panel."""
    units = facts.terms.units
    narrowest = facts.terms.narrowest
    for wall, runs in zip(facts.room.walls, facts.runs(), strict=True):
        for run in runs:
            cover = run.panel.cover
            if not run.upright or len(run.strips) < 2:
                continue
            half = (cover + 1) // 2
            first, last = run.end_strips
            if first >= half and last >= half and first >= narrowest and last >= narrowest:
                continue
            path = ("wall", wall.name, "finishes", run.finishes[0])
            balanced = _balanced_ends(run)
            ends = _cut_ends(run, narrowest)
            limit, severity, wanted = narrowest, "", f"the narrowest wanted is {figure_text(narrowest, units)}"
            if not ends:
                ends = {side: width for side, width in _cut_ends(run, half).items() if width < balanced}
                if ends and written(facts.here, (*path, "start")) is not None:
                    continue
                limit, severity, wanted = half, "hint", f"half a panel is {figure_text(half, units)}"
            if not ends:
                continue
            cured = balanced >= narrowest and balanced > min(ends.values()) and run.start.way != "balanced"
            yield Finding(
                at=facts.here((*path, "start")),
                message=f"{_strips(ends, units, limit)}; {wanted}",
                help=(
                    f"`start balanced` makes both ends {figure_text(balanced, units)}"
                    if cured
                    else "begin elsewhere, such as `start joint at` a place, or choose another cover width"
                ),
                about=(f"wall {wall.name}", f"panel {run.panel.name}", f"method {run.method.name}"),
                related=face_named(facts, path[:2], path[2:]),
                fixes=(start_fix(facts, path[:2], run.finishes, "balanced"),) if cured else (),
                severity=severity,
                face=f"wall {wall.name}",
            )


def _in_reveals(facts: RoomFacts, wall: Wall, runs: Sequence[Run]) -> Iterator[Finding]:
    units = facts.terms.units
    narrowest = facts.terms.narrowest
    for at, run, deep, rest in thin_reveals(wall, runs, narrowest):
        yield Finding(
            at=facts.here(("wall", wall.name, "openings", at, "reveal")),
            message=(
                f"wall {wall.name}: the reveal of the {wall.openings[at].kind} is lined {figure_text(deep, units)}"
                " deep, which"
                f" leaves an inner strip of {length_text(rest, units, narrowest)}; the narrowest wanted is"
                f" {figure_text(narrowest, units)}"
            ),
            help=f"line it with a panel of another cover width than {figure_text(run.panel.cover, units)}",
            about=(f"wall {wall.name}", f"panel {run.panel.name}", f"method {run.method.name}"),
        )


def _beside(facts: RoomFacts, wall: Wall, run: Run, thin: Sequence[Leg]) -> Iterator[Finding]:
    """What a joint near an opening or a box leaves beside it: a leg as a hint, a strip by itself as at the ends."""
    units, narrowest = facts.terms.units, facts.terms.narrowest
    legs: dict[tuple[str, int, bool], list[Leg]] = {}
    for leg in thin:
        legs.setdefault((leg.field, leg.at, leg.apart), []).append(leg)
    for (field, at, apart), found in legs.items():
        said = listed([f"{length_text(leg.end - leg.begin, units, narrowest)} at its {leg.side}" for leg in found])
        left = (
            f"strip of {said}; the narrowest wanted is {figure_text(narrowest, units)}" if apart else f"leg of {said}"
        )
        kind = "boxing" if field == "boxing" else getattr(wall, field)[at].kind
        yield Finding(
            at=facts.here(("wall", wall.name, field, at)),
            message=f"wall {wall.name}: a joint near the {kind} leaves a {left}",
            help=f"begin the run elsewhere, such as `start joint at` {_EDGES[field]} edge",
            about=(f"wall {wall.name}", f"panel {run.panel.name}", f"method {run.method.name}"),
            severity="" if apart else "hint",
        )


def _cut_ends(run: Run, under: int) -> dict[str, int]:
    """The end strips narrower than `under`, cut ones only; on a wall out of plumb at their narrow ends."""
    ends = dict(zip(("left", "right"), run.end_strips, strict=True))
    return {side: width for side, width in ends.items() if width < under and width < run.panel.cover}


def _balanced_ends(run: Run) -> int:
    """The narrower end strip if the run were balanced."""
    strips = set_out(0, sum(run.strips), run.panel.cover, _BALANCED)
    return min(strips[0], max(0, strips[-1] - run.lean))


def _strips(ends: dict[str, int], units: str, limit: int) -> str:
    if len(set(ends.values())) == 1 and len(ends) == 2:
        return f"the strips at both ends are {length_text(ends['left'], units, limit)}"
    first, *more = [f"at the {side} is {length_text(width, units, limit)}" for side, width in ends.items()]
    return " and the one ".join([f"the strip {first}", *more])
