"""A wall is less flat than its method of fixing can take."""

from collections.abc import Iterator

from roomspec.checks.example import BATTENED, GLUED, PANEL
from roomspec.checks.facts import RoomFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.flatness_limits import THIN_BED, THIN_BED_UNDER, gap_allowed
from roomspec.checks.lined import finish_box, lined_faces
from roomspec.checks.record import Check, finds
from roomspec.diagnostics.diagnostic import Citation, Edit, Fix, Related
from roomspec.model.method import Method
from roomspec.quantities.in_units import figure_text, length_text
from roomspec.takeoff.clip import box_of


@finds(
    Check(
        name="wall-not-flat",
        group="survey",
        severity="warning",
        scope="room",
        needs=("flatness",),
        summary="a wall is further out of flat than the method of fixing takes up",
        why=(
            "A thin panel follows what it is fixed to: over a hollow the glue does not reach it, over a hump the tongue"
            " and groove stand open. Glued panels are held to the thin-bed figure, 3 mm under 2 m; screwed ones, and"
            " those on one layer of battens, to the tables for finished walls. A second layer of battens is packed"
            " out to a plane, whatever the wall."
        ),
        source=(
            Citation("DIN 18202", "Table 3 rows 6 and 7, interpolated to whole mm"),
            Citation("NHBC Standards", "9.2.5: backing for thin bed 3 mm under 2 m"),
        ),
        fix="names a method on battens, where the job has one that takes it up",
        bad="""\
job example
room 1 "Breakfast room"
  height 2400
  wall a 3000
    on      plaster
    surface sound
    flat    5 under 2 m
    finish  limestone-long by glued vertical
"""
        + PANEL
        + GLUED
        + BATTENED,
        good="""\
job example
room 1 "Breakfast room"
  height 2400
  wall a 3000
    on      plaster
    surface sound
    flat    5 under 2 m
    finish  limestone-long by on-battens vertical
"""
        + PANEL
        + BATTENED,
    )
)
def wall_not_flat(facts: RoomFacts) -> Iterator[Finding]:
    """Hold each measured gap against what the method of each finish over it takes."""
    units = facts.terms.units
    for kind, face in lined_faces(facts.room):
        for at, finish in enumerate(face.finishes):
            box = finish_box(face, finish)
            for place, flat in enumerate(face.flatness):
                allowed, why = _allowed(finish.method, flat.under)
                if box is None or allowed is None or flat.gap <= allowed or box_of(flat.region).common(box) is None:
                    continue
                method = written(facts.here, (kind, face.name, "finishes", at, "method"))
                battens = _better(facts, finish.method, flat.gap, flat.under)
                yield Finding(
                    at=facts.here((kind, face.name, "flatness", place)),
                    message=(
                        f"{length_text(flat.gap, units, allowed)} out of flat under {figure_text(flat.under, units)};"
                        f" {figure_text(allowed, units, flat.gap)} is the most {why}"
                    ),
                    help="float the wall level, or take up the difference with battens packed to a plane",
                    about=(f"{kind} {face.name}", f"method {finish.method.name}"),
                    related=(Related(f"laid by {finish.method.name}", method),) if method else (),
                    fixes=tuple(Fix(f"lay it by {name}", (Edit(method, name),)) for name in battens if method),
                    face=f"{kind} {face.name}",
                )


def _allowed(method: Method, under: int) -> tuple[int | None, str]:
    """The most that the method takes under that straightedge, and in what case; None where it takes up anything."""
    layers = len(method.battens)
    if layers > 1:
        return None, ""
    if layers == 1:
        return gap_allowed(6, under), "under one layer of battens (DIN 18202, finished walls)"
    if method.glue is not None and under <= THIN_BED_UNDER:
        return min(THIN_BED, gap_allowed(7, under)), "for panels glued to it, as for thin bed"
    return gap_allowed(7, under), "for panels fixed straight to it (DIN 18202, raised requirement)"


def _better(facts: RoomFacts, method: Method, gap: int, under: int) -> tuple[str, ...]:
    """Methods of the job that put panels on battens, where the present one uses none and one layer is enough."""
    enough = gap <= gap_allowed(6, under)
    return facts.battened if enough and not method.battens else ()
