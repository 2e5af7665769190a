"""The sequence of work in one room, from what its walls and methods call for.

Common practice, no source: strip, make sound, isolate, acclimatise, mark, batten, trim, panel, plant, seal, hang. The
makers' instructions decide where they say otherwise.
"""

from collections.abc import Iterator

from roomspec.model.product import Panel
from roomspec.reports.hand_over.given import FaceMade, SameRooms, begun, called, faces_text, of_faces
from roomspec.reports.hand_over.marking_out import marking_out
from roomspec.reports.hand_over.putting_up import FIRST_TRIMS, backing, putting_up
from roomspec.reports.paper.numerals import Numerals
from roomspec.text.listing import listed


def sequence_of(same: SameRooms, numerals: Numerals) -> tuple[str, ...]:
    """The steps, in order."""
    faces = tuple(face for face in same.faces if face.taken)
    methods = tuple(dict.fromkeys(taken.method for face in faces for taken in face.taken))
    panels = tuple(dict.fromkeys(taken.panel for face in faces for taken in face.taken))
    steps = (
        *_lying(panels),
        *_stripping(same, numerals),
        *_surfaces(faces),
        *_isolating(faces),
        *marking_out(faces, numerals),
        *backing(faces, methods, numerals),
        *(step for method in methods for step in putting_up(faces, method, numerals)),
        *_planting(faces),
        *_sealing(faces),
        *_hanging(faces, numerals),
    )
    return tuple(steps)


def _lying(panels: tuple[Panel, ...]) -> Iterator[str]:
    for panel in panels:
        if panel.acclimatise:
            yield f"{panel.title or panel.name}: packs opened, the panels lie in the room for {panel.acclimatise} h."


def _stripping(same: SameRooms, numerals: Numerals) -> Iterator[str]:
    found = [(f"Wall {wall.name}", removal) for wall in same.room.walls for removal in wall.removals]
    found += [(f"Ceiling {ceiling.name}", removal) for ceiling in same.room.ceilings for removal in ceiling.removals]
    for name, removal in found:
        size = f" {numerals.size(removal.size)}" if removal.size else ""
        yield f"{name}: take off {removal.label or removal.what}{size}."


def _surfaces(faces: tuple[FaceMade, ...]) -> Iterator[str]:
    found = []
    for face in faces:
        layers = [" over ".join(layer.kind for layer in part.layers) for part in face.face.substrates]
        states = [surface.condition for surface in face.face.surfaces]
        told = listed(list(dict.fromkeys(layers))) or "not recorded"
        state = listed(list(dict.fromkeys(states))) or "not recorded"
        found.append((face.name, f"see that all is sound, dry, clean and as surveyed ({told}; surface {state})."))
    yield from of_faces(found)


def _isolating(faces: tuple[FaceMade, ...]) -> Iterator[str]:
    wired = [face.name for face in faces if any(point.kind in ("socket", "switch") for point in face.face.points)]
    piped = [face.name for face in faces if any(point.kind == "pipe" for point in face.face.points)]
    if wired:
        yield f"{begun(faces_text(wired))}: a licensed electrician isolates the circuits before a faceplate is lifted."
    if piped:
        yield f"{begun(faces_text(piped))}: water is off and pipes are marked before panels are cut in."


def _planting(faces: tuple[FaceMade, ...]) -> Iterator[str]:
    yield from of_faces(
        (face.name, f"plant the {run.role.replace('-', ' ')} ({called(run.trim)}).")
        for face in faces
        for taken in face.taken
        for run in taken.trims
        if run.role not in FIRST_TRIMS
    )


def _sealing(faces: tuple[FaceMade, ...]) -> Iterator[str]:
    said = []
    for face in faces:
        found: dict[str, list[str]] = {}
        for taken in face.taken:
            for seal in taken.seals:
                found.setdefault(called(seal.sealant), []).append(seal.place)
        for sealant, places in found.items():
            where = listed(list(dict.fromkeys(places)))
            said.append((face.name, f"where water falls directly seal {where} with {sealant}."))
    yield from of_faces(said)


def _hanging(faces: tuple[FaceMade, ...], numerals: Numerals) -> Iterator[str]:
    for face in faces:
        for point in face.face.points:
            if point.load:
                what = f"{point.label or point.kind} ({numerals.weight(point.load)})"
                yield f"{begun(face.name)}: {what} is fixed through the lining into what carries it."
