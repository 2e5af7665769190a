"""How a room's linings are marked out: from where, and how wide the strips at their ends come out."""

from collections.abc import Iterator

from roomspec.layout.laid import Lining
from roomspec.model.shape import SetOut
from roomspec.model.wall import Finish
from roomspec.reports.hand_over.given import FaceMade, of_faces
from roomspec.reports.paper.numerals import Numerals
from roomspec.reports.wording import number_of


def marking_out(faces: tuple[FaceMade, ...], numerals: Numerals) -> Iterator[str]:
    """A step for each way of marking out, with the faces that are marked out so."""
    yield from of_faces(
        (face.name, _marked(lining, face.face.finishes[lining.finishes[0]], numerals))
        for face in faces
        for lining in face.laid
        if lining.finishes and lining.strips
    )


def _marked(lining: Lining, finish: Finish, numerals: Numerals) -> str:
    flat = lining.direction in ("horizontal", "crosswise")
    kind, at_first, at_last = ("row", "bottom", "top") if flat else ("column", "left", "right")
    first, last = numerals.length(lining.strips[0]), numerals.length(lining.strips[-1])
    ends = f"{first} at the {at_first}, {last} at the {at_last}"
    if first == last:
        ends = first if len(lining.strips) == 1 else f"{first} at the {at_first} and at the {at_last}"
    way = _way(finish.rows if flat else finish.start, numerals)
    told = f"mark out {number_of(len(lining.strips), kind)} of {lining.panel.name}, {lining.direction}, {way}: {ends}"
    if not flat:
        return f"{told}."
    bond = "" if finish.bond == "stacked" else f", bond {finish.bond}"
    return f"{told}; along each row {_way(finish.start, numerals)}{bond}."


def _way(way: SetOut, numerals: Numerals) -> str:
    at = "" if way.at is None else f" at {numerals.length(way.at)}"
    words = {"balanced": "balanced", "centre": f"with a panel centred{at}", "joint": f"with a joint{at or ' centred'}"}
    return words.get(way.way, f"from the {way.way}{at}")
