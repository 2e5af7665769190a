"""What there is to do: quantities that a gang's constants are multiplied by."""

from collections.abc import Iterable, Sequence
from fractions import Fraction
from itertools import pairwise
from typing import Protocol

from msgspec import Struct

from roomspec.layout.laid import Lining, Piece
from roomspec.layout.touching import Rect
from roomspec.model.wall import Opening, Wall
from roomspec.quantities.area import SQUARE_METRE
from roomspec.quantities.length import METRE
from roomspec.takeoff.battens import Batten
from roomspec.takeoff.clip import box_of, length_of
from roomspec.takeoff.ground import place_on
from roomspec.takeoff.inside import pieces_on
from roomspec.takeoff.lines import on_wall
from roomspec.takeoff.sealant import Sealing
from roomspec.takeoff.trims import TrimRun

TASKS = (
    "removing", "battens", "sheets", "panels", "boxing", "trims", "mitres", "openings", "cut-outs", "seals", "rooms",
)  # fmt: skip
"""Every task, in the order of the work."""


class Boxed(Protocol):
    """What is asked of a face of a box."""

    @property
    def where(self) -> str:
        """The face."""

    @property
    def linings(self) -> Sequence[object]:
        """What lies on it."""


class Work(Struct, frozen=True, cache_hash=True):
    """A task such as `panels`, `trims`, `removing`; where it is done, the most particular place first.

    `amounts` are the same work by unit (m2, m, each), the usual unit first: a constant may be given for any of them.
    """

    task: str
    where: tuple[str, ...]
    amounts: tuple[tuple[str, Fraction], ...]


STAIR = 5
"""A floor line steeper than 1 in 5 is a stair's: ramps go to 1 in 12, stairs begin at about 1 in 3. Common practice, no
source."""


def place_of_lining(wall: Wall, lining: Lining) -> str:
    """`stairs` where the floor under a wall's lining rises in steps or as steeply as a stair does, else ""."""
    bounds = box_of(lining.region)
    for (x0, y0), (x1, y1) in pairwise(wall.floor):
        if x0 < bounds.right and bounds.left < x1 + (x0 == x1) and abs(y1 - y0) * STAIR > x1 - x0 and y0 != y1:
            return "stairs"
    return ""


def lining_work(
    face: Wall,
    lining: Lining,
    trims: Sequence[TrimRun],
    battens: Sequence[Batten],
    seals: Sequence[Sealing],
    place: str = "",
) -> tuple[Work, ...]:
    """The work that one lining makes at a place (stairs, ceilings ...), without what its face's openings make."""
    work = [
        _panels((place, lining.direction) if place else (lining.direction,), on_wall(lining)),
        _panels(("reveals", lining.direction), [piece for piece in lining.pieces if piece.where != lining.where]),
    ]
    for role in sorted({run.role for run in trims}):
        work.append(_lengths("trims", (role,), [run.length for run in trims if run.role == role]))
    mitred = [border.line for border in lining.borders if border.treatment == "mitred" and not border.shared]
    ends = Fraction(sum(run.mitres for run in trims))
    # Cutting an edge and cutting a profile's end are different work: a gang may have a constant for either or both.
    work.append(Work("mitres", ("panels",), (("m", Fraction(sum(map(length_of, mitred)), METRE)),)))
    work.append(Work("mitres", ("trims",), (("each", ends),)))
    if lining.method.behind is not None:
        work.append(Work("sheets", (), (("m2", lining.area / SQUARE_METRE),)))
    work.append(_lengths("battens", (), [length_of(batten.line) for batten in battens]))
    work.append(Work("seals", (), (("m", sum((seal.length for seal in seals), start=Fraction(0)) / METRE),)))
    work.append(Work("cut-outs", (), (("each", Fraction(count_cut_outs(face, lining))),)))
    return tuple(item for item in work if any(amount for _, amount in item.amounts))


def count_cut_outs(face: Wall, lining: Lining) -> int:
    """One for each point that the lining covers."""
    pieces = pieces_on(lining)
    return sum(pieces.cover(*place_on(face, point)) for point in face.points)


def openings_work(face: Wall, linings: Sequence[Lining], hidden: Sequence[Rect] = ()) -> tuple[Work, ...]:
    """The openings that a lining of the face is cut round, each once; those in a box are not the wall's behind it."""
    own = (opening for opening in face.openings if not any(_lies_in(opening, rect) for rect in hidden))
    count = sum(any(_reaches(lining, opening) for lining in linings) for opening in own)
    return (Work("openings", (), (("each", Fraction(count)),)),) if count else ()


def boxing_work(faces: Sequence[Boxed]) -> tuple[Work, ...]:
    """The boxes that are lined, each once; `faces` are what a wall's boxes, niches and hatches take."""
    boxes = {face.where.rpartition(" front")[0] for face in faces if face.where.endswith("front") and face.linings}
    return (Work("boxing", (), (("each", Fraction(len(boxes))),)),) if boxes else ()


def _lies_in(opening: Opening, rect: Rect) -> bool:
    left, right, bottom, top = rect
    return left <= opening.x and opening.right <= right and bottom <= opening.sill and opening.top <= top


def _reaches(lining: Lining, opening: Opening) -> bool:
    bounds = box_of(lining.region)
    beside = opening.x < bounds.right and bounds.left < opening.right
    return beside and opening.sill < bounds.top and bounds.bottom < opening.top


def add_up(work: Iterable[Work]) -> tuple[Work, ...]:
    """Work of one task and place made one entry, in the order of the work."""
    totals: dict[tuple[str, tuple[str, ...]], dict[str, Fraction]] = {}
    for item in work:
        amounts = totals.setdefault((item.task, item.where), {})
        for unit, amount in item.amounts:
            amounts[unit] = amounts.get(unit, Fraction(0)) + amount
    order = sorted(totals, key=lambda key: (TASKS.index(key[0]), key[1]))
    return tuple(Work(task, where, tuple(totals[task, where].items())) for task, where in order)


def _panels(where: tuple[str, ...], pieces: Sequence[Piece]) -> Work:
    area = sum((piece.area for piece in pieces), start=Fraction(0)) / SQUARE_METRE
    return Work("panels", where, (("m2", area), ("each", Fraction(len(pieces)))))


def _lengths(task: str, where: tuple[str, ...], lengths: Sequence[int]) -> Work:
    return Work(task, where, (("m", Fraction(sum(lengths), METRE)), ("each", Fraction(len(lengths)))))
