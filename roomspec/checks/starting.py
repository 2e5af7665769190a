"""Mends of a finish's own line: from where a run is set out, and whom such a mend touches besides."""

from collections.abc import Iterator, Sequence

from roomspec.checks.facts import Path, RoomFacts, written
from roomspec.diagnostics.diagnostic import Edit, Fix, Origin, Related

ALL_WALLS = ", on every wall of the room that this line covers"


def start_fix(facts: RoomFacts, face: Path, finishes: Sequence[int], way: str, field: str = "start") -> Fix:
    """The mend `start WAY`, or `rows WAY`; its title says where it turns other walls of the room too."""
    everywhere = any(for_the_room(facts, face, ("finishes", at)) for at in finishes)
    return Fix(f"{field} {way}{ALL_WALLS if everywhere else ''}", tuple(start_edits(facts, face, finishes, way, field)))


def start_edits(
    facts: RoomFacts, face: Path, finishes: Sequence[int], way: str, field: str = "start"
) -> Iterator[Edit]:
    """`start WAY`, or `rows WAY`, in each line that makes the run: different starts would no longer be one run."""
    done = set()
    for at in finishes:
        path: Path = (*face, "finishes", at)
        stated = written(facts.here, (*path, field))
        line = facts.here(path)
        place = stated or Origin(line.block, line.line, line.end, line.end)
        if place not in done:
            done.add(place)
            yield Edit(place, f"{field} {way}" if stated else f" {field} {way}")


def for_the_room(facts: RoomFacts, face: Path, fact: Path) -> bool:
    """True where a fact of a face is written before the room's walls, and so for all of them."""
    line, heading = facts.here((*face, *fact)), facts.here(face)
    return line.block != heading.block or line.line < heading.line


def face_named(facts: RoomFacts, face: Path, fact: Path) -> tuple[Related, ...]:
    """The heading of the face that a finding names, where the finding stands on a line of the whole room."""
    return (Related(" ".join(map(str, face)), facts.here(face)),) if for_the_room(facts, face, fact) else ()
