"""Mends that set a run out from another place."""

from collections.abc import Iterator

from roomspec.checks.facts import Path, RoomFacts, written
from roomspec.diagnostics.diagnostic import Edit, Origin
from roomspec.layout.extent import Run


def start_edits(facts: RoomFacts, wall: str, run: Run, way: str, field: str = "start") -> Iterator[Edit]:
    """`start WAY`, or `rows WAY`, in each line that makes the run: different starts would no longer be one run."""
    done = set()
    for at in run.finishes:
        path: Path = ("wall", wall, "finishes", at)
        stated = written(facts.here, (*path, field))
        line = facts.here(path)
        place = stated or Origin(line.block, line.line, line.end, line.end)
        if place not in done:
            done.add(place)
            yield Edit(place, f"{field} {way}" if stated else f" {field} {way}")
