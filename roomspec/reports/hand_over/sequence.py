"""The sequence of work in one room, from what its walls and methods call for.

Common practice, no source: strip, make sound, isolate, acclimatise, mark, batten, trim, panel, plant, seal, hang. The
makers' instructions decide where they say otherwise.
"""

from collections.abc import Iterator

from roomspec.model.method import Method
from roomspec.model.product import Panel, Trim
from roomspec.model.shape import SetOut
from roomspec.model.wall import Finish
from roomspec.reports.hand_over.given import FaceMade, SameRooms, begun, faces_text
from roomspec.reports.paper.numerals import Numerals
from roomspec.reports.wording import number_of
from roomspec.text.listing import listed

FIRST_TRIMS = ("start", "inside-corner", "outside-corner", "edge", "top", "joint")
"""Those that hold a panel's edge go up with the panels; the others are planted on the lining."""


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
        *_setting_out(faces, numerals),
        *_backing(faces, methods, numerals),
        *(step for method in methods for step in _putting_up(method, numerals)),
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
    found: dict[str, list[str]] = {}
    for face in faces:
        layers = [" over ".join(layer.kind for layer in part.layers) for part in face.face.substrates]
        states = [surface.condition for surface in face.face.surfaces]
        told = listed(list(dict.fromkeys(layers))) or "not recorded"
        state = listed(list(dict.fromkeys(states))) or "not recorded"
        found.setdefault(f"{told}; surface {state}", []).append(face.name)
    for told, names in found.items():
        yield f"{begun(faces_text(names))}: see that the wall is sound, dry, clean and as surveyed ({told})."


def _isolating(faces: tuple[FaceMade, ...]) -> Iterator[str]:
    wired = [face.name for face in faces if any(point.kind in ("socket", "switch") for point in face.face.points)]
    piped = [face.name for face in faces if any(point.kind == "pipe" for point in face.face.points)]
    if wired:
        yield f"{begun(faces_text(wired))}: a licensed electrician isolates the circuits before a faceplate is lifted."
    if piped:
        yield f"{begun(faces_text(piped))}: water is off and pipes are marked before panels are cut in."


def _setting_out(faces: tuple[FaceMade, ...], numerals: Numerals) -> Iterator[str]:
    for face in faces:
        for lining in face.laid:
            finish = face.face.finishes[lining.finishes[0]] if lining.finishes else None
            strips = lining.strips
            if finish is None or not strips:
                continue
            ends = numerals.size(strips[0]) + (f" to {numerals.size(strips[-1])}" if len(strips) > 1 else "")
            flat = lining.direction in ("horizontal", "crosswise")
            kind = "row" if flat else "column"
            yield (
                f"{begun(face.name)}: mark out {number_of(len(strips), kind)} of {lining.panel.name}"
                f" {lining.direction}, {_start(finish, flat, numerals)}; {kind}s {ends}, first to last."
            )


def _start(finish: Finish, flat: bool, numerals: Numerals) -> str:
    if not flat:
        return _way(finish.start, numerals)
    bond = "" if finish.bond == "stacked" else f", bond {finish.bond}"
    return f"rows {_way(finish.rows, numerals)}, along each row {_way(finish.start, numerals)}{bond}"


def _way(way: SetOut, numerals: Numerals) -> str:
    at = "" if way.at is None else f" at {numerals.size(way.at)}"
    words = {"balanced": "balanced", "centre": f"a panel centred{at}", "joint": f"a joint{at or ' centred'}"}
    return words.get(way.way, f"from the {way.way}{at}")


def _backing(faces: tuple[FaceMade, ...], methods: tuple[Method, ...], numerals: Numerals) -> Iterator[str]:
    for method in methods:
        names = _names(faces, method)
        if method.behind is not None:
            yield f"{names}: {_called(method.behind)} behind, laps {numerals.size(method.behind.laps)}."
        for at, layer in reversed(list(enumerate(method.battens))):
            across = "at right angles to the battens over them" if at else "at right angles to the panels"
            fixed = f", fixed with {_called(method.fix)}" if method.fix else ""
            every = f" every {numerals.size(method.fix_every)}" if method.fix and method.fix_every else ""
            yield (
                f"{names}: battens {_called(layer.support)}, {layer.direction or across}, no more than"
                f" {numerals.size(layer.every)} apart{fixed}{every}; plumb and in one plane."
            )


def _putting_up(method: Method, numerals: Numerals) -> Iterator[str]:
    name = method.title or method.name
    trims = {role: getattr(method, role.replace("-", "_")) for role in FIRST_TRIMS}
    held = [f"{role.replace('-', ' ')} ({_called(trim)})" for role, trim in trims.items() if isinstance(trim, Trim)]
    if held:
        yield f"{name}: trims go up with the panels that they hold: {listed(held)}."
    if method.glue is not None:
        first = "the first panel of each run in loops" if method.glue.first else "each panel in beads"
        later = ", each further one with a bead at its joint" if method.glue.first else ""
        yield (
            f"{name}: {_called(method.glue.adhesive)}, bead {numerals.size(method.glue.bead)}, {first}"
            f" {numerals.size(method.glue.every)} apart{later}; press home, check with a level."
        )
    if method.screw is not None:
        yield f"{name}: screw each panel at each batten or stud with {_called(method.screw)}."
    gaps = [f"{numerals.size(gap.size)} at the {gap.place}" for gap in method.gaps]
    if gaps:
        yield f"{name}: keep a gap of {listed(gaps)}."
    corners = [
        f"{place} corners {how}"
        for place, how in (("inside", method.inside_corner), ("outside", method.outside_corner))
        if isinstance(how, str)
    ]
    if corners:
        yield f"{name}: {listed(corners)}."


def _planting(faces: tuple[FaceMade, ...]) -> Iterator[str]:
    found: dict[str, list[str]] = {}
    for face in faces:
        for taken in face.taken:
            for run in taken.trims:
                if run.role not in FIRST_TRIMS:
                    found.setdefault(f"{run.role} ({_called(run.trim)})", []).append(face.name)
    for trim, names in found.items():
        yield f"{begun(faces_text(names))}: plant the {trim}."


def _sealing(faces: tuple[FaceMade, ...]) -> Iterator[str]:
    for face in faces:
        found: dict[str, list[str]] = {}
        for taken in face.taken:
            for seal in taken.seals:
                found.setdefault(_called(seal.sealant), []).append(seal.place)
        for sealant, places in found.items():
            where = listed(list(dict.fromkeys(places)))
            yield f"{begun(face.name)}: where water falls directly seal {where} with {sealant}."


def _hanging(faces: tuple[FaceMade, ...], numerals: Numerals) -> Iterator[str]:
    for face in faces:
        for point in face.face.points:
            if point.load:
                what = f"{point.label or point.kind} ({numerals.weight(point.load)})"
                yield f"{begun(face.name)}: {what} is fixed through the lining into what carries it."


def _names(faces: tuple[FaceMade, ...], method: Method) -> str:
    return begun(faces_text([face.name for face in faces if any(taken.method == method for taken in face.taken)]))


def _called(product: object) -> str:
    return str(getattr(product, "title", "") or getattr(product, "name", ""))
