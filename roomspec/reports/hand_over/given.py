"""What all documents of a job are made from: its estimate, its errors, its rooms with those alike put together."""

import re
from collections.abc import Iterable, Iterator, Sequence

from msgspec import Struct
from msgspec.structs import replace

from roomspec.analysis.engine import Estimated
from roomspec.analysis.found import Found
from roomspec.analysis.session import Snapshot
from roomspec.layout.every_face import every_face
from roomspec.layout.laid import Lining, RoomLayout
from roomspec.model.product import Product
from roomspec.model.room import Room
from roomspec.model.wall import Wall
from roomspec.reports.estimate_json import EstimateOut
from roomspec.reports.estimate_out import estimate_of
from roomspec.reports.paper.numerals import Numerals, numerals_of
from roomspec.reports.wording import number_of, ranged
from roomspec.takeoff.taken import LiningTakeOff, RoomTakeOff
from roomspec.text.listing import listed

_PLAIN = re.compile(r"wall \S+")
_PART = re.compile(r"(.+ (?:boxing|niche|hatch)(?: \d+)?) (.+)")
"""A face of something on a wall, and which of its faces."""


class FaceMade(Struct, frozen=True):
    """A wall's front, a ceiling, or a face of a box, a niche or a hatch, as laid and taken off.

    `name` is what it is called on a sheet, `mark` what its pieces are named after: `a` of `a/3`.
    """

    name: str
    mark: str
    face: Wall
    laid: tuple[Lining, ...]
    taken: tuple[LiningTakeOff, ...]


class SameRooms(Struct, frozen=True):
    """Rooms that are alike but for their names and levels; `room` is the first of them."""

    names: tuple[str, ...]
    room: Room
    laid: RoomLayout
    taken: RoomTakeOff

    @property
    def title(self) -> str:
        """`1.01 to 1.07 (7 rooms, each): Shower room, handed`"""
        several = f" ({number_of(len(self.names), 'room')}, each)" if len(self.names) > 1 else ""
        title = self.room.title + (", handed" if self.room.handed else "")
        return f"{ranged(self.names)}{several}" + (f": {title}" if title else "")

    @property
    def faces(self) -> tuple[FaceMade, ...]:
        """Walls, then ceilings, each before the faces of its boxes, niches and hatches."""
        taken = [linings for wall in self.taken.lined for linings in (wall.linings, *(f.linings for f in wall.faces))]
        return tuple(
            FaceMade(at.title, at.pieces, at.face.as_wall, at.face.linings, linings)
            for at, linings in zip(every_face(self.room, self.laid), taken, strict=True)
        )


class HandOver(Struct, frozen=True):
    """A job as it is handed over; `errors` keep its documents in the house."""

    out: EstimateOut
    made: Estimated
    errors: tuple[Found, ...]
    numerals: Numerals
    rooms: tuple[SameRooms, ...]

    @property
    def stamp(self) -> str:
        """What stands on every page."""
        return "Not for issue" if self.errors else ""


def hand_over_of(snapshot: Snapshot) -> HandOver:
    """What a snapshot that holds a job hands over."""
    made = snapshot.estimate()
    terms = made.job.terms
    return HandOver(
        out=estimate_of(snapshot),
        made=made,
        errors=tuple(finding for finding in snapshot.findings if finding.severity == "error"),
        numerals=numerals_of(terms.units, terms.currency, terms.locale),
        rooms=_same_rooms(made),
    )


def _same_rooms(made: Estimated) -> tuple[SameRooms, ...]:
    """In the order of the first of each."""
    groups: dict[Room, list[int]] = {}
    for at, room in enumerate(made.job.rooms):
        groups.setdefault(replace(room, name="", level=""), []).append(at)
    return tuple(
        SameRooms(
            tuple(made.job.rooms[at].name for at in found),
            made.job.rooms[found[0]],
            made.laid[found[0]],
            made.taken.rooms[found[0]],
        )
        for found in groups.values()
    )


def faces_text(names: Sequence[str]) -> str:
    """`walls a, b and c; wall a niche back and sill`; each once."""
    unique = list(dict.fromkeys(names))
    plain = [name.removeprefix("wall ") for name in unique if _PLAIN.fullmatch(name)]
    walls = [f"wall{'s' if len(plain) > 1 else ''} {listed(plain)}"] if plain else []
    parts: dict[str, list[str]] = {}
    for name in unique:
        if not _PLAIN.fullmatch(name):
            whole, part = found.groups() if (found := _PART.fullmatch(name)) else (name, "")
            parts.setdefault(whole, []).append(part)
    return "; ".join([*walls, *(f"{whole} {listed(found)}".rstrip() for whole, found in parts.items())])


def of_faces(said: Iterable[tuple[str, str]]) -> Iterator[str]:
    """What is said of faces, (name, sentence), each sentence once, after the names of those that it is said of."""
    found: dict[str, list[str]] = {}
    for name, sentence in said:
        found.setdefault(sentence, []).append(name)
    for sentence, names in found.items():
        yield f"{begun(faces_text(names))}: {sentence}"


def called(product: Product) -> str:
    """A product's title, or its name."""
    return product.title or product.name


def begun(text: str) -> str:
    """The text as a sentence or a row begins; names in it keep their letters."""
    return text[:1].upper() + text[1:]
