"""Saying once what holds for several faces of a room: one finding that names them all."""

from collections.abc import Iterable, Sequence

from roomspec.checks.finding import Raised
from roomspec.checks.lined import named
from roomspec.diagnostics.diagnostic import Diagnostic, Edit, Fix, Related

MOST_RELATED = 8
"""Other places that one finding shows; its message names the faces."""


def said_once(raised: Iterable[Raised]) -> tuple[Diagnostic, ...]:
    """What stands, in its order; findings that say the same of rooms, or of faces in one block, made one at the first.

    It comes after the allows: a wall whose own was waved off is not named.
    """
    groups: dict[object, list[Raised]] = {}
    for at, one in enumerate(raised):
        said = one.diagnostic
        block = "" if one.face.startswith("room ") else said.at.block
        key = (said.name, said.severity, block, said.message, said.help) if one.face else at
        groups.setdefault(key, []).append(one)
    return tuple(_together(group) if group[0].face else group[0].diagnostic for group in groups.values())


def _together(group: Sequence[Raised]) -> Diagnostic:
    first = group[0].diagnostic
    if len(group) == 1 and len(first.fixes) < 2:
        message, places_too = f"{group[0].face}: {first.message}", tuple(dict.fromkeys(first.related))
        return Diagnostic(first.name, first.severity, message, first.at, first.help, places_too, first.fixes)
    faces = dict.fromkeys((one.face.partition(" ")[0], one.face.partition(" ")[2]) for one in group)
    places = {first.at: ""} | {one.diagnostic.at: one.face for one in reversed(group) if one.diagnostic.at != first.at}
    also = [Related(face, at) for at, face in reversed(places.items()) if face][:MOST_RELATED]
    related = dict.fromkeys((*also, *(other for one in group for other in one.diagnostic.related)))
    fixes: dict[tuple[str, bool, bool], dict[Edit, None]] = {}
    for fix in (fix for one in group for fix in one.diagnostic.fixes):
        fixes.setdefault((fix.title, fix.safe, fix.to_fill_in), {}).update(dict.fromkeys(fix.edits))
    return Diagnostic(
        first.name,
        first.severity,
        f"{named(faces)}: {first.message}",
        first.at,
        first.help,
        tuple(related),
        tuple(Fix(title, tuple(edits), *kind) for (title, *kind), edits in fixes.items()),
    )
