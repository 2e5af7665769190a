"""The library's face: open a job, walk its rooms, walls, finishes and pieces, with units.

Views over the results, not a second model: each holds the frozen values that it shows (`.model`, `.laid`), and gives
lengths, areas and weights as pint quantities of one small registry (`roomspec.quantities.pint_edge`).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec import Struct

from roomspec.analysis.found import Found
from roomspec.analysis.session import Session, Snapshot
from roomspec.files.jobs import NoJob, no_job_in, one_job_at
from roomspec.layout.every_face import piece_names
from roomspec.layout.laid import CeilingLayout, FaceLayout, Lining, Piece, RoomLayout, WallLayout
from roomspec.model.job import Job
from roomspec.model.room import Room
from roomspec.model.shape import peak
from roomspec.model.wall import Opening, Wall
from roomspec.quantities import pint_edge

if TYPE_CHECKING:
    from pint import Quantity

    from roomspec.reports.estimate_json import EstimateOut


def open(path: str) -> JobView:
    """Open a job file, or a folder that holds one; LookupError says in one line why there is none."""
    jobs = one_job_at(path)
    if isinstance(jobs, NoJob):
        raise LookupError(jobs.reason)
    snapshot = Session(jobs.world).snapshot(jobs.paths[0])
    if snapshot is None or snapshot.job is None:
        raise LookupError(no_job_in(path).reason)
    return JobView(snapshot)


class JobView(Struct, frozen=True):
    """An opened job."""

    snapshot: Snapshot

    @property
    def model(self) -> Job:
        """The job's frozen model."""
        assert self.snapshot.job is not None, "open() opens no snapshot without a job"
        return self.snapshot.job

    @property
    def rooms(self) -> tuple[RoomView, ...]:
        """Its rooms in order, those made from patterns included."""
        return tuple(map(RoomView, self.model.rooms, self.snapshot.estimate().laid))

    @property
    def findings(self) -> tuple[Found, ...]:
        """Every finding, by file and place."""
        return self.snapshot.findings

    def estimate(self) -> EstimateOut:
        """The whole estimate as values; `roomspec.reports.estimate_json` says what each means."""
        from roomspec.reports.estimate_out import estimate_of

        return estimate_of(self.snapshot)

    def to_json(self) -> str:
        """The estimate as JSON, as `roomspec estimate --as json` prints it."""
        from roomspec.reports.estimate_json import estimate_json

        return estimate_json(self.estimate())


class RoomView(Struct, frozen=True):
    """A room as written and as laid."""

    model: Room
    laid: RoomLayout

    @property
    def name(self) -> str:
        """Its name, such as `g.02`."""
        return self.model.name

    @property
    def title(self) -> str:
        """Its title, or nothing."""
        return self.model.title

    @property
    def walls(self) -> tuple[WallView, ...]:
        """Its walls, clockwise seen from above."""
        return tuple(WallView(self.name, *pair) for pair in zip(self.model.walls, self.laid.walls, strict=True))

    @property
    def ceilings(self) -> tuple[CeilingView, ...]:
        """Its ceilings, as named."""
        names = piece_names(self.model)[len(self.model.walls) :]
        return tuple(CeilingView(f"{self.name}/{name}", at) for name, at in zip(names, self.laid.ceilings, strict=True))

    @property
    def floor_area(self) -> Quantity[float] | None:
        """The area of its plan; None where it is open or is a column."""
        area = self.laid.plan.floor_area
        return None if area is None else pint_edge.area(area)

    @property
    def perimeter(self) -> Quantity[float]:
        """The sum of its walls' widths at the floor."""
        return pint_edge.length(self.laid.plan.perimeter)


class WallView(Struct, frozen=True):
    """A wall as written and as laid."""

    room: str
    model: Wall
    laid: WallLayout

    @property
    def name(self) -> str:
        """Its name within the room."""
        return self.model.name

    @property
    def width(self) -> Quantity[float]:
        """At the floor."""
        return pint_edge.length(self.model.width)

    @property
    def height(self) -> Quantity[float]:
        """At its highest point."""
        return pint_edge.length(peak(self.model.top))

    @property
    def gross_area(self) -> Quantity[float]:
        """Its whole face."""
        return pint_edge.area(self.laid.gross)

    @property
    def net_area(self) -> Quantity[float]:
        """Its face less openings and obstacles."""
        return pint_edge.area(self.laid.net)

    @property
    def openings(self) -> tuple[Opening, ...]:
        """Its doors, windows and other openings, as modelled."""
        return self.model.openings

    @property
    def finishes(self) -> tuple[FinishView, ...]:
        """What is laid on its own front, one view for each run."""
        return tuple(FinishView(f"{self.room}/{self.name}", lining) for lining in self.laid.linings)

    @property
    def faces(self) -> tuple[FaceView, ...]:
        """The lined faces of its boxes, niches and hatches."""
        return tuple(FaceView(f"{self.room}/{self.name}", face) for face in self.laid.faces)


class CeilingView(Struct, frozen=True):
    """A ceiling as laid. `pieces` is what its pieces are named after."""

    pieces: str
    laid: CeilingLayout

    @property
    def name(self) -> str:
        """Its name within the room."""
        return self.laid.name

    @property
    def gross_area(self) -> Quantity[float]:
        """Its whole face."""
        return pint_edge.area(self.laid.own.gross)

    @property
    def net_area(self) -> Quantity[float]:
        """Its face less openings."""
        return pint_edge.area(self.laid.own.net)

    @property
    def finishes(self) -> tuple[FinishView, ...]:
        """What is laid on it, one view for each run."""
        return tuple(FinishView(self.pieces, lining) for lining in self.laid.own.linings)

    @property
    def faces(self) -> tuple[FaceView, ...]:
        """The leaves of its hatches."""
        return tuple(FaceView(self.pieces, face) for face in self.laid.faces)


class FaceView(Struct, frozen=True):
    """A face of a box, a niche or a hatch."""

    wall: str
    laid: FaceLayout

    @property
    def where(self) -> str:
        """Which face: `boxing front`, `niche back`, `hatch leaf` ..."""
        return self.laid.where

    @property
    def gross_area(self) -> Quantity[float]:
        """Its whole face."""
        return pint_edge.area(self.laid.gross)

    @property
    def finishes(self) -> tuple[FinishView, ...]:
        """What is laid on it, one view for each run."""
        return tuple(FinishView(self.wall, lining) for lining in self.laid.linings)


class FinishView(Struct, frozen=True):
    """One run of a finish on a face."""

    wall: str
    laid: Lining

    @property
    def panel(self) -> str:
        """The panel product's name."""
        return self.laid.panel.name

    @property
    def method(self) -> str:
        """The method's name."""
        return self.laid.method.name

    @property
    def direction(self) -> str:
        """vertical or horizontal; lengthwise or crosswise on a ceiling."""
        return self.laid.direction

    @property
    def area(self) -> Quantity[float]:
        """Of the finish, openings deducted."""
        return pint_edge.area(self.laid.area)

    @property
    def strips(self) -> tuple[Quantity[float], ...]:
        """The widths of its strips from the start, end strips included."""
        return tuple(map(pint_edge.length, self.laid.strips))

    @property
    def pieces(self) -> tuple[PieceView, ...]:
        """What is cut and put up, numbered along the wall."""
        return tuple(PieceView(self.wall, piece) for piece in self.laid.pieces)


class PieceView(Struct, frozen=True):
    """One piece of panel."""

    wall: str
    laid: Piece

    @property
    def name(self) -> str:
        """Room, wall and number: `g.02/a/3`."""
        return f"{self.wall}/{self.laid.number}"

    @property
    def length(self) -> Quantity[float]:
        """Of the blank it is cut from, along the panel."""
        return pint_edge.length(self.laid.length)

    @property
    def width(self) -> Quantity[float]:
        """Of the blank it is cut from, across the panel."""
        return pint_edge.length(self.laid.width)

    @property
    def area(self) -> Quantity[float]:
        """Of the piece itself, notches and holes deducted."""
        return pint_edge.area(self.laid.area)
