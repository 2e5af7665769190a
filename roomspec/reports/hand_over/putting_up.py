"""How a method's battens and panels go up, as far as the room has what they call for."""

from collections.abc import Iterator

from roomspec.layout.laid import Lining
from roomspec.model.method import Gap, Method
from roomspec.reports.hand_over.given import FaceMade, begun, called, faces_text
from roomspec.reports.paper.numerals import Numerals
from roomspec.text.listing import listed

FIRST_TRIMS = ("start", "inside-corner", "outside-corner", "edge", "top", "joint")
"""Those that hold a panel's edge go up with the panels; the others are planted on the lining."""
_BORDERS = {"ceiling": "top", "floor": "start"}
"""A gap's place -> the border of a lining that reaches there."""


def backing(faces: tuple[FaceMade, ...], methods: tuple[Method, ...], numerals: Numerals) -> Iterator[str]:
    """What goes behind the panels, the layer next to the wall first."""
    for method in methods:
        on = [face.name for face in faces if any(taken.method == method for taken in face.taken)]
        names = begun(faces_text(on))
        if method.behind is not None:
            yield f"{names}: {called(method.behind)} behind, laps {numerals.length(method.behind.laps)}."
        for at, layer in reversed(list(enumerate(method.battens))):
            across = "at right angles to the battens over them" if at else "at right angles to the panels"
            fixed = f", fixed with {called(method.fix)}" if method.fix else ""
            every = f" every {numerals.length(method.fix_every)}" if method.fix and method.fix_every else ""
            yield (
                f"{names}: {called(layer.support)}, {layer.direction or across}, no more than"
                f" {numerals.length(layer.every)} apart{fixed}{every}; plumb and in one plane."
            )


def putting_up(faces: tuple[FaceMade, ...], method: Method, numerals: Numerals) -> Iterator[str]:
    """Trims, adhesive or screws, gaps and corners of one method."""
    name = method.title or method.name
    held = _held(faces, method)
    if held:
        yield f"{name}: trims go up with the panels that they hold: {listed(held)}."
    if method.glue is not None:
        first = "the first panel of each run in loops" if method.glue.first else "each panel in beads"
        later = ", each further one with a bead at its joint" if method.glue.first else ""
        yield (
            f"{name}: {called(method.glue.adhesive)}, bead {numerals.length(method.glue.bead)}, {first}"
            f" {numerals.length(method.glue.every)} apart{later}; press home, check with a level."
        )
    if method.screw is not None:
        yield f"{name}: screw each panel at each batten or stud with {called(method.screw)}."
    gaps = [f"{numerals.length(gap.size)} at the {gap.place}" for gap in gaps_kept(faces, method)]
    if gaps:
        yield f"{name}: keep a gap of {listed(gaps)}."
    met = {(border.kind, border.treatment) for _, lining in _linings(faces, method) for border in lining.borders}
    corners = [
        f"{place} corners {how}"
        for place, how in (("inside", method.inside_corner), ("outside", method.outside_corner))
        if isinstance(how, str) and (f"{place}-corner", how) in met
    ]
    if corners:
        yield f"{name}: {listed(corners)}."


def gaps_kept(faces: tuple[FaceMade, ...], method: Method) -> tuple[Gap, ...]:
    """The method's gaps that a lining of the faces reaches."""
    return tuple(
        gap for gap in method.gaps if any(_reaches(face, lining, gap.place) for face, lining in _linings(faces, method))
    )


def _reaches(face: FaceMade, lining: Lining, place: str) -> bool:
    """A lining whose text gives it no end on that side goes as far as its face does."""
    regions = [face.face.finishes[at].region for at in lining.finishes]
    ends = {"ceiling": [region.top for region in regions], "floor": [region.bottom for region in regions]}
    border = _BORDERS.get(place)
    return border is None or None in ends[place] or border in [border.kind for border in lining.borders]


def _held(faces: tuple[FaceMade, ...], method: Method) -> list[str]:
    """Each of the first trims that the method's linings take here: `inside corner (Bronze inside corner)`."""
    runs = [run for face in faces for taken in face.taken if taken.method == method for run in taken.trims]
    return list(
        dict.fromkeys(
            f"{role.replace('-', ' ')} ({called(run.trim)})" for role in FIRST_TRIMS for run in runs if run.role == role
        )
    )


def _linings(faces: tuple[FaceMade, ...], method: Method) -> Iterator[tuple[FaceMade, Lining]]:
    return ((face, lining) for face in faces for lining in face.laid if lining.method == method)
