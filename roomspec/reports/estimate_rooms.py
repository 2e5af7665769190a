"""Rooms, walls, ceilings and finishes in the shape of the estimate."""

from roomspec.layout.laid import CeilingLayout, FaceLayout, RoomLayout, WallLayout
from roomspec.model.room import Room
from roomspec.model.shape import Region
from roomspec.model.wall import Opening, Substrate, Wall
from roomspec.quantities.length import to_mm
from roomspec.reports.estimate_room_json import (
    CeilingOut,
    FaceOut,
    FinishOut,
    OpeningOut,
    RoomOut,
    SubstrateOut,
    WallOut,
)
from roomspec.reports.number import m2, mm_or_none, places
from roomspec.takeoff.taken import FaceTakeOff, LiningTakeOff, RoomTakeOff, WallTakeOff


def room_out(room: Room, laid: RoomLayout, taken: RoomTakeOff) -> RoomOut:
    """One room, its walls and ceilings in order."""
    return RoomOut(
        name=room.name,
        title=room.title,
        level=room.level,
        purpose=room.purpose,
        pattern=room.pattern,
        handed=room.handed,
        floor_area_m2=None if laid.plan.floor_area is None else m2(laid.plan.floor_area),
        closure_error_mm=mm_or_none(laid.plan.closure_error),
        walls=tuple(map(_wall, room.walls, laid.walls, taken.walls)),
        ceilings=tuple(map(_ceiling, laid.ceilings, taken.ceilings)),
    )


def _wall(wall: Wall, laid: WallLayout, taken: WallTakeOff) -> WallOut:
    return WallOut(
        name=wall.name,
        width_mm=to_mm(wall.width),
        gross_area_m2=m2(laid.gross),
        net_area_m2=m2(laid.net),
        substrate=_main_layers(wall.substrates),
        substrates=tuple(map(_substrate, wall.substrates)),
        openings=tuple(map(_opening, wall.openings)),
        finishes=tuple(map(_finish, taken.linings)),
        faces=tuple(map(_face, laid.faces, taken.faces)),
    )


def _ceiling(laid: CeilingLayout, taken: WallTakeOff) -> CeilingOut:
    face = laid.own.as_wall
    return CeilingOut(
        name=laid.name,
        width_mm=to_mm(face.width),
        depth_mm=to_mm(face.top[0][1]),
        gross_area_m2=m2(laid.own.gross),
        net_area_m2=m2(laid.own.net),
        substrate=_main_layers(face.substrates),
        substrates=tuple(map(_substrate, face.substrates)),
        openings=tuple(map(_opening, face.openings)),
        finishes=tuple(map(_finish, taken.linings)),
        faces=tuple(map(_face, laid.faces, taken.faces)),
    )


def _face(laid: FaceLayout, taken: FaceTakeOff) -> FaceOut:
    return FaceOut(laid.where, m2(laid.gross), m2(laid.net), tuple(map(_finish, taken.linings)))


def _main_layers(substrates: tuple[Substrate, ...]) -> tuple[str, ...]:
    """The layers stated for the whole wall, else those of its first region."""
    whole = [substrate for substrate in substrates if substrate.region == Region()]
    first = next(iter([*whole, *substrates]), None)
    return tuple(layer.kind for layer in first.layers) if first else ()


def _substrate(substrate: Substrate) -> SubstrateOut:
    region = substrate.region
    sides = map(mm_or_none, (region.left, region.right, region.bottom, region.top))
    return SubstrateOut(tuple(layer.kind for layer in substrate.layers), *sides)


def _opening(opening: Opening) -> OpeningOut:
    return OpeningOut(
        kind=opening.kind,
        label=opening.label,
        at_mm=to_mm(opening.x),
        width_mm=to_mm(opening.width),
        height_mm=to_mm(opening.height),
        sill_mm=to_mm(opening.sill),
    )


def _finish(lining: LiningTakeOff) -> FinishOut:
    load = lining.load
    return FinishOut(
        panel=lining.panel.name,
        method=lining.method.name,
        direction=lining.direction,
        area_m2=m2(lining.area),
        weight_kg=None if lining.weight is None else places(lining.weight, 3),
        load_kg_m2=None if load is None else places(load.load, 3),
        load_on=load.layer if load else None,
        load_limit_kg_m2=None if load is None or load.limit is None else places(load.limit, 3),
        pieces=lining.pieces,
        pieces_in_reveals=lining.pieces_in_reveals,
        first_strip_mm=mm_or_none(lining.first_strip),
        last_strip_mm=mm_or_none(lining.last_strip),
        troubles=lining.troubles,
    )
