"""Taking off one room: everything that does not need the other rooms of its pool."""

from collections.abc import Iterable
from fractions import Fraction
from typing import TypeVar

from roomspec.cutting.demand import Blank
from roomspec.layout.every_face import every_face, piece_names
from roomspec.layout.laid import FaceLayout, Lining, RoomLayout
from roomspec.model.job import Terms
from roomspec.model.method import Method
from roomspec.model.product import Compound, Panel, Sheet, Support, Trim
from roomspec.model.room import Room
from roomspec.model.wall import Wall
from roomspec.takeoff.adhesive import adhesive_bead
from roomspec.takeoff.battens import set_out_battens
from roomspec.takeoff.clip import length_of
from roomspec.takeoff.corners import Beside
from roomspec.takeoff.fastening import fastenings
from roomspec.takeoff.lengths import lengths_of_run
from roomspec.takeoff.load import lining_weight, loads_on
from roomspec.takeoff.measured import measure_wall
from roomspec.takeoff.sealant import seal_lining
from roomspec.takeoff.strip_out import strip_out
from roomspec.takeoff.taken import FaceTakeOff, LiningTakeOff, RoomTakeOff, WallTakeOff
from roomspec.takeoff.trims import trim_runs
from roomspec.takeoff.work import (
    Work,
    add_up,
    boxing_work,
    count_cut_outs,
    lining_work,
    openings_work,
    place_of_lining,
)

Item = TypeVar("Item")
Amount = TypeVar("Amount", int, Fraction)


def take_off_room(room: Room, laid: RoomLayout, terms: Terms) -> RoomTakeOff:
    """What a room takes.

    Of `terms` only `measured` and `units` matter; of the room, not its name, title, level or pattern.
    """
    walls = []
    for at, wall in enumerate(room.walls):
        layout = laid.walls[at]
        front = FaceLayout("wall", "", wall, (), layout.gross, layout.net, layout.linings, layout.hidden)
        beside = _beside(room, laid, at - 1), _beside(room, laid, at + 1)
        own = _take_off_face(front, terms, *beside)
        inner = tuple(_take_off_face(face, terms) for face in layout.faces)
        work = (*own.work, *boxing_work(inner), *strip_out(wall))
        walls.append(WallTakeOff(wall.name, own.linings, own.measured, work, inner))
    ceilings = []
    for overhead in laid.ceilings:
        own = _take_off_face(overhead.own, terms)
        inner = tuple(_take_off_face(face, terms) for face in overhead.faces)
        work = (*own.work, *strip_out(overhead.own.as_wall, overhead.own.plan))
        ceilings.append(WallTakeOff(overhead.name, own.linings, own.measured, work, inner))
    return _gather(room, laid, tuple(walls), tuple(ceilings))


def _take_off_face(
    face: FaceLayout, terms: Terms, before: Beside | None = None, after: Beside | None = None
) -> FaceTakeOff:
    """What a face takes; its own work is what its openings make."""
    taken = tuple(take_off_lining(face.as_wall, lining, before, after, face.place) for lining in face.linings)
    reveal = face.place == "reveals" and not face.where.endswith("back")
    measured = measure_wall(
        face.as_wall, () if reveal else face.linings, terms.measured, terms.units, face.hidden, face.plan
    )
    return FaceTakeOff(face.where, taken, measured, openings_work(face.as_wall, face.linings, face.hidden))


def take_off_lining(
    face: Wall, lining: Lining, before: Beside | None = (), after: Beside | None = (), place: str = ""
) -> LiningTakeOff:
    """What one lining takes; `before` and `after` are the linings beyond its left and right corner.

    They are None where another face of the same wall bears the corners that this one shares.
    """
    trims = trim_runs(lining)
    battens = set_out_battens(face, lining)
    seals = seal_lining(face, lining, before, after)
    return LiningTakeOff(
        finishes=lining.finishes,
        panel=lining.panel,
        method=lining.method,
        direction=lining.direction,
        area=lining.area,
        piece_area=sum((piece.area for piece in lining.pieces), start=Fraction(0)),
        weight=lining_weight(lining),
        loads=loads_on(face, lining),
        pieces=len(lining.pieces),
        pieces_in_reveals=sum(piece.where != lining.where for piece in lining.pieces),
        first_strip=lining.strips[0] if lining.strips else None,
        last_strip=lining.strips[-1] if lining.strips else None,
        bead=adhesive_bead(face, lining, [run.line for run in trims]),
        seals=seals,
        battens=battens,
        trims=trims,
        fixings=fastenings(face, lining, battens),
        cut_outs=count_cut_outs(face, lining),
        work=lining_work(face, lining, trims, battens, seals, place or place_of_lining(face, lining)),
        troubles=lining.troubles,
    )


def _beside(room: Room, laid: RoomLayout, at: int) -> Beside:
    """The linings of the next wall in either direction, round the room where it closes."""
    if not 0 <= at < len(room.walls) and not room.closed:
        return ()
    wall = at % len(room.walls)
    return tuple((room.walls[wall], lining) for lining in laid.walls[wall].linings)


def _gather(
    room: Room, laid: RoomLayout, walls: tuple[WallTakeOff, ...], ceilings: tuple[WallTakeOff, ...]
) -> RoomTakeOff:
    lined = (*walls, *ceilings)
    taken = [lining for wall in lined for lining in wall.every_lining]
    work = [item for lining in taken for item in lining.work]
    work += [item for wall in lined for item in (*wall.work, *(own for face in wall.faces for own in face.work))]
    if taken:
        work.append(Work("rooms", (), (("each", Fraction(1)),)))
    return RoomTakeOff(
        walls=walls,
        panels=_panel_blanks(room, laid),
        lengths=_grouped(
            blank
            for wall, name in zip(lined, piece_names(room), strict=True)
            for blank in _length_blanks(wall, name, room.access)
        ),
        compounds=_summed(amount for lining in taken for amount in _compounds(lining)),
        fixings=_summed(amount for lining in taken for amount in lining.fixings),
        sheets=_summed(sheet for lining in taken for sheet in _sheets(lining.method, lining.area)),
        work=add_up(work),
        extras=(
            *room.extras,
            *(extra for wall in room.walls for extra in wall.extras),
            *(extra for ceiling in room.ceilings for extra in ceiling.extras),
        ),
        ceilings=ceilings,
    )


def _panel_blanks(room: Room, laid: RoomLayout) -> tuple[tuple[Panel, tuple[Blank, ...]], ...]:
    return _grouped(
        (
            lining.panel,
            Blank(f"{at.pieces}/{piece.number}", piece.length, piece.width, piece.edges, piece.ends, piece.set_number),
        )
        for at in every_face(room, laid)
        for lining in at.face.linings
        for piece in lining.pieces
    )


def _length_blanks(wall: WallTakeOff, name: str, access: int | None) -> Iterable[tuple[Trim | Support, Blank]]:
    """One blank for each run of trim and each batten, numbered along the wall."""
    runs: list[tuple[Trim | Support, str, int]] = []
    for lining in wall.every_lining:
        runs += ((run.trim, run.role, run.length) for run in lining.trims)
        runs += ((batten.support, "batten", length_of(batten.line)) for batten in lining.battens)
    for number, (product, role, length) in enumerate(runs, start=1):
        for part, cut in enumerate(lengths_of_run(length, product, access), start=1):
            suffix = f".{part}" if cut != length else ""
            yield product, Blank(f"{name}/{role} {number}{suffix}", cut, 1)


def _compounds(lining: LiningTakeOff) -> Iterable[tuple[Compound, Fraction]]:
    if lining.bead is not None and lining.method.glue is not None:
        yield lining.method.glue.adhesive, lining.bead.millilitres
    for seal in lining.seals:
        yield seal.sealant, seal.millilitres


def _sheets(method: Method, area: Fraction) -> Iterable[tuple[Sheet, Fraction]]:
    if method.behind is not None:
        sheet = method.behind
        yield sheet, area * sheet.width / (sheet.width - sheet.laps)


def _grouped(pairs: Iterable[tuple[Item, Blank]]) -> tuple[tuple[Item, tuple[Blank, ...]], ...]:
    groups: dict[Item, list[Blank]] = {}
    for item, blank in pairs:
        groups.setdefault(item, []).append(blank)
    return tuple((item, tuple(blanks)) for item, blanks in groups.items())


def _summed(pairs: Iterable[tuple[Item, Amount]]) -> tuple[tuple[Item, Amount], ...]:
    totals: dict[Item, Amount] = {}
    for item, amount in pairs:
        totals[item] = totals[item] + amount if item in totals else amount
    return tuple(totals.items())
