"""End joints of neighbouring rows lie close to one another."""

from collections.abc import Iterable, Iterator
from itertools import pairwise

from roomspec.checks.example import GLUED
from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import Check, finds
from roomspec.diagnostics.diagnostic import Citation
from roomspec.layout.laid import Piece
from roomspec.layout.rows import JOINTS_APART
from roomspec.model.wall import Finish
from roomspec.quantities.in_units import figure_text, length_text
from roomspec.quantities.length import MM
from roomspec.takeoff.clip import Box, box_round
from roomspec.takeoff.lines import on_wall

_TRIM = 20 * MM
"""What a joint trim may keep two pieces apart."""

_PANEL = """\
panel chalk-brick "Chalk brick print, small"
  length 420
  cover  150
  thick  10
  price  4.00 each
  lay    horizontal
  joined all edges
"""
_ROOM = """\
job example
room 1 "Bar"
  height 1200
  wall a 3000
    on      plaster
    surface sound
    finish  chalk-brick by glued horizontal bond {}
"""


@finds(
    Check(
        name="joints-too-close",
        group="laying",
        severity="warning",
        scope="room",
        needs=("bond", "flat"),
        summary="end joints of neighbouring rows are less than 150 mm apart",
        why=(
            "Joints that step up the wall a hand's breadth apart read as a mistake, and leave little of each row to"
            " bridge its neighbour's joint. Wood-flooring practice keeps them 150 mm (6 in) apart; a half bond does so"
            " with panels from 300 mm long, a third with panels from 450."
        ),
        source=(Citation("wood-flooring practice", "end joints of neighbouring rows 6 in apart at least"),),
        bad=_ROOM.format("third") + _PANEL + GLUED,
        good=_ROOM.format("half") + _PANEL + GLUED,
    )
)
def joints_too_close(facts: RoomFacts) -> Iterator[Finding]:
    """The nearest end joints of any two neighbouring rows of a flat run whose rows are meant to break joint."""
    units = facts.terms.units
    if not any(_may_come_close(finish) for wall in facts.room.walls for finish in wall.finishes):
        return
    for wall, laid in zip(facts.room.walls, facts.layout().walls, strict=True):
        for lining in laid.linings:
            finish = wall.finishes[lining.finishes[0]]
            if not _may_come_close(finish):
                continue
            rows = _joints(on_wall(lining))
            apart = min((_nearest(one, rows.get(row + 1, [])) for row, one in rows.items()), default=JOINTS_APART)
            if apart < JOINTS_APART:
                yield Finding(
                    at=facts.here(("wall", wall.name, "finishes", lining.finishes[0], "bond")),
                    message=(
                        f"end joints of neighbouring rows are {length_text(apart, units, JOINTS_APART)} apart;"
                        f" {figure_text(JOINTS_APART, units)} is the least"
                    ),
                    help=_advice(finish, units),
                    about=(f"wall {wall.name}", f"panel {lining.panel.name}"),
                    face=f"wall {wall.name}",
                )


def _may_come_close(finish: Finish) -> bool:
    """False where the bond alone keeps joints apart: no pieces need be cut to know it."""
    shifts = {"stacked": 0, "half": 2, "third": 3}.get(finish.bond, 1)
    close = shifts == 1 or (shifts > 1 and finish.panel.length < shifts * JOINTS_APART)
    return finish.direction == "horizontal" and close


def _joints(pieces: Iterable[Piece]) -> dict[int, list[int]]:
    """Where pieces meet end to end, from left to right, by row."""
    boxes: dict[int, list[Box]] = {}
    for piece in pieces:
        boxes.setdefault(piece.row, []).append(box_round(piece.outline))
    found: dict[int, list[int]] = {}
    for row, placed in boxes.items():
        placed.sort(key=lambda box: box.left)
        found[row] = [one.right for one, other in pairwise(placed) if 0 <= other.left - one.right <= _TRIM]
    return found


def _nearest(row: list[int], other: list[int]) -> int:
    """The least distance between a joint of one row and one of the other, both in order."""
    least, at = JOINTS_APART, 0
    for joint in row:
        while at < len(other) and other[at] < joint:
            at += 1
        least = min([least, *(abs(place - joint) for place in other[max(0, at - 1) : at + 1])])
    return least


def _advice(finish: Finish, units: str) -> str:
    half = finish.panel.length // 2
    if finish.bond == "run-on":
        return "start the rows elsewhere, or use `bond third`"
    if finish.bond == "third" and half >= JOINTS_APART:
        return f"`bond half` puts them {figure_text(half, units)} apart"
    return "use `bond stacked`, or a longer panel"
