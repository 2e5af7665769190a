"""The faces of a wall that are drawn: its front, the faces of its boxes, niches and hatches, and its reveals."""

from collections.abc import Iterator, Sequence

from msgspec import Struct

from roomspec.layout.laid import FaceLayout, Lining, Piece, Ring, WallLayout
from roomspec.layout.openings import lined_faces
from roomspec.layout.reveals import reveals_by_run
from roomspec.layout.touching import Rect
from roomspec.model.wall import Wall
from roomspec.takeoff.face import outline_of
from roomspec.takeoff.lines import on_wall
from roomspec.takeoff.taken import FaceTakeOff, LiningTakeOff, WallTakeOff


class DrawnLining(Struct, frozen=True, cache_hash=True):
    """A lining with what it takes, and those of its pieces that lie on the face."""

    laid: Lining
    taken: LiningTakeOff
    pieces: tuple[Piece, ...]


class Reveal(Struct, frozen=True, cache_hash=True):
    """A lined side of an opening: its pieces on their own face."""

    title: str
    width: int
    height: int
    pieces: tuple[Piece, ...]


class FaceView(Struct, frozen=True, cache_hash=True):
    """One face as it is drawn. `left` and `right` say what is met at its ends, "" where nothing need be said.

    A face too long for its pieces' numbers is drawn whole without them (`extent` overview) and then stretch by stretch;
    `low` and `high` are where a stretch begins and ends along the wall.
    """

    where: str
    title: str
    wall: Wall
    outlines: tuple[Ring, ...]
    linings: tuple[DrawnLining, ...]
    hidden: tuple[Rect, ...] = ()
    left: str = ""
    right: str = ""
    extent: str = "whole"
    """whole, overview or stretch."""
    low: int = 0
    high: int = 0

    @property
    def ends(self) -> tuple[int, int]:
        """Where it begins and ends along the wall, at the wider of foot and head."""
        return (self.low, self.high) if self.high else (0, max(self.wall.width, self.wall.width_top))

    @property
    def width(self) -> int:
        """From end to end."""
        return self.ends[1] - self.ends[0]

    @property
    def foot(self) -> int:
        """Its lowest point."""
        return min(y for outline in self.outlines for _, y in outline)

    @property
    def height(self) -> int:
        """To its highest point."""
        return max(y for outline in self.outlines for _, y in outline)


def front_of(wall: Wall, laid: WallLayout, taken: WallTakeOff, left: str, right: str) -> FaceView:
    """A wall's own front."""
    linings = _linings(laid.linings, taken.linings)
    return FaceView("wall", "", wall, (outline_of(wall),), linings, laid.hidden, left, right)


def other_faces(faces: Sequence[FaceLayout], taken: Sequence[FaceTakeOff]) -> tuple[FaceView, ...]:
    """The faces of boxes, niches and hatches that are lined."""
    return tuple(face_view(face, off.linings) for face, off in zip(faces, taken, strict=True) if face.linings)


def face_view(face: FaceLayout, taken: Sequence[LiningTakeOff]) -> FaceView:
    """Any face that laying describes as a wall of its own."""
    outlines = face.plan or (outline_of(face.as_wall),)
    title = face.where[:1].upper() + face.where[1:]
    return FaceView(face.where, title, face.as_wall, outlines, _linings(face.linings, taken), face.hidden)


def reveals_of(wall: Wall, linings: Sequence[Lining]) -> Iterator[Reveal]:
    """The lined reveals of a face's openings, opening by opening."""
    alike = [opening.kind for opening in wall.openings]
    for lining, openings in zip(linings, reveals_by_run(wall, [one.borders for one in linings]), strict=True):
        groups = _by_face([piece for piece in lining.pieces if piece.where != lining.where])
        titles = [
            (wall.openings[at], face, alike[: at + 1].count(wall.openings[at].kind))
            for at in openings
            for face in lined_faces(wall.openings[at])
        ]
        for (opening, face, place), pieces in zip(titles, groups, strict=False):
            name = opening.label or opening.kind
            several = not opening.label and alike.count(opening.kind) > 1
            xs = [x for piece in pieces for x, _ in piece.outline]
            ys = [y for piece in pieces for _, y in piece.outline]
            yield Reveal(f"{name}{f' {place}' if several else ''}, {face}", max(xs), max(ys), tuple(pieces))


def _by_face(pieces: Sequence[Piece]) -> list[list[Piece]]:
    """Pieces of reveals by the side they line: each side begins again at row 1, column 1."""
    groups: list[list[Piece]] = []
    for piece in pieces:
        if (piece.row, piece.column) == (1, 1):
            groups.append([])
        groups[-1].append(piece)
    return groups


def _linings(laid: Sequence[Lining], taken: Sequence[LiningTakeOff]) -> tuple[DrawnLining, ...]:
    return tuple(DrawnLining(one, off, on_wall(one)) for one, off in zip(laid, taken, strict=True))
