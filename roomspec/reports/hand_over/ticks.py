"""What fitters tick in one room, in the order of the work: the job's figures; the rest common practice, no source."""

from collections.abc import Iterator

from roomspec.model.wall import Wall
from roomspec.reports.hand_over.given import FaceMade, SameRooms, begun, faces_text, of_faces
from roomspec.reports.hand_over.putting_up import gaps_kept
from roomspec.reports.paper.numerals import Numerals
from roomspec.reports.wording import number_of
from roomspec.text.listing import listed


def ticks_of(same: SameRooms, numerals: Numerals, narrowest: int) -> tuple[str, ...]:
    """The checks, in the order of the work."""
    faces = tuple(face for face in same.faces if face.taken)
    if not faces:
        return ()
    return (
        *_sizes(same.room.walls, numerals),
        *_flatness(faces, numerals),
        *_cables(faces),
        *_fixing(faces, numerals),
        "First panel plumb, or first row level, before adhesive or screws take hold.",
        f"No strip narrower than {numerals.length(narrowest)} but those on this sheet.",
        *_points(faces),
        *_gaps(faces, numerals),
        *_seals(faces),
        "Faces clean, no open joint, offcuts kept where another room takes them.",
    )


def _sizes(walls: tuple[Wall, ...], numerals: Numerals) -> Iterator[str]:
    sizes = [f"{wall.name} {numerals.size(wall.width)}" for wall in walls]
    yield f"Widths measured again before the first cut: {listed(sizes)}."
    for wall in walls:
        if not wall.confirmed:
            yield f"Wall {wall.name} was only about {numerals.length(wall.width)}: measured now as ________."


def _flatness(faces: tuple[FaceMade, ...], numerals: Numerals) -> Iterator[str]:
    found: dict[tuple[int, int], list[str]] = {}
    for face in faces:
        for flat in face.face.flatness:
            found.setdefault((flat.gap, flat.under), []).append(face.name)
    for (gap, under), names in found.items():
        said = f"{numerals.length(gap)} out under {numerals.length(under)} when surveyed"
        yield f"{begun(faces_text(names))}: {said}; still so, or made good."
    unknown = [face.name for face in faces if not face.face.flatness]
    if unknown:
        yield f"Flat and plumb under a straightedge: {faces_text(unknown)}."


def _cables(faces: tuple[FaceMade, ...]) -> Iterator[str]:
    drilled = [
        face.name
        for face in faces
        if any(taken.method.screw or taken.method.fix or taken.method.battens for taken in face.taken)
    ]
    if drilled:
        yield f"Cables and pipes found and marked before drilling: {faces_text(drilled)}."


def _fixing(faces: tuple[FaceMade, ...], numerals: Numerals) -> Iterator[str]:
    for face in faces:
        for taken in face.taken:
            for layer, battens in enumerate(taken.method.battens):
                count = sum(batten.layer == layer for batten in taken.battens)
                yield (
                    f"{begun(face.name)}: {number_of(count, 'batten')}{' behind' if layer else ''}, no more than"
                    f" {numerals.length(battens.every)} apart, one at every edge and behind every end joint."
                )
    yield from of_faces(
        (face.name, f"{taken.panel.name} held at least every {numerals.length(taken.panel.supports)}.")
        for face in faces
        for taken in face.taken
        if taken.panel.supports and taken.method.screw
    )


def _points(faces: tuple[FaceMade, ...]) -> Iterator[str]:
    counts = [(face.name, sum(taken.cut_outs for taken in face.taken)) for face in faces]
    told = [f"{name} {count}" for name, count in counts if count]
    if told:
        yield f"Each cut-out made and tried against its plate or rose: {listed(told)}."


def _gaps(faces: tuple[FaceMade, ...], numerals: Numerals) -> Iterator[str]:
    methods = {taken.method for face in faces for taken in face.taken}
    gaps = {(gap.place, gap.size) for method in methods for gap in gaps_kept(faces, method)}
    for place, size in sorted(gaps):
        yield f"Gap of {numerals.length(size)} open at the {place}."


def _seals(faces: tuple[FaceMade, ...]) -> Iterator[str]:
    sealed = [face.name for face in faces if any(taken.seals for taken in face.taken)]
    if sealed:
        yield f"Seals unbroken and smoothed: {faces_text(sealed)}. Tanking seen before panels went up."
