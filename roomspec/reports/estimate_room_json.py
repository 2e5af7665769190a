"""Rooms, walls and ceilings in the estimate for programs; the units are those of `estimate_json.py`."""

from msgspec import Struct

from roomspec.reports.number import Number


class OpeningOut(Struct, frozen=True):
    """An opening: `kind` door, window, hatch, void or niche; its left edge is `at_mm` from the wall's left end."""

    kind: str
    label: str
    at_mm: Number
    width_mm: Number
    height_mm: Number
    sill_mm: Number


class SubstrateOut(Struct, frozen=True):
    """What a region of a wall is made of, outermost layer first; a side that is null reaches to the wall's own edge."""

    layers: tuple[str, ...]
    left_mm: Number | None
    right_mm: Number | None
    bottom_mm: Number | None
    top_mm: Number | None


class FinishOut(Struct, frozen=True):
    """One run of a finish. `pieces` counts them, `pieces_in_reveals` of them line reveals; the area and the weight are
    of the wall's face alone. The strips are the first's and the last's width.

    `load_kg_m2` is what weighs on `load_on`, the layer nearest to its limit.
    """

    panel: str
    method: str
    direction: str
    area_m2: Number
    weight_kg: Number | None
    load_kg_m2: Number | None
    load_on: str | None
    load_limit_kg_m2: Number | None
    pieces: int
    pieces_in_reveals: int
    first_strip_mm: Number | None
    last_strip_mm: Number | None
    troubles: tuple[str, ...]


class FaceOut(Struct, frozen=True):
    """A face of a box, a niche or a hatch: `boxing front`, `niche left jamb`, `hatch leaf` ..."""

    where: str
    gross_area_m2: Number
    net_area_m2: Number
    finishes: tuple[FinishOut, ...]


class WallOut(Struct, frozen=True):
    """One wall. `substrate` are the layers of its largest part, outermost first; `substrates` are all its regions.

    `net_area_m2` is without what boxes hide; `faces` are those of its boxes, niches and hatches that are lined.
    """

    name: str
    width_mm: Number
    gross_area_m2: Number
    net_area_m2: Number
    substrate: tuple[str, ...]
    substrates: tuple[SubstrateOut, ...]
    openings: tuple[OpeningOut, ...]
    finishes: tuple[FinishOut, ...]
    faces: tuple[FaceOut, ...]


class CeilingOut(Struct, frozen=True):
    """One ceiling, as a wall; `width_mm` along its first side and `depth_mm` across are those of a rectangle round it.

    An opening's `sill_mm` is its distance from the first side.
    """

    name: str
    width_mm: Number
    depth_mm: Number
    gross_area_m2: Number
    net_area_m2: Number
    substrate: tuple[str, ...]
    substrates: tuple[SubstrateOut, ...]
    openings: tuple[OpeningOut, ...]
    finishes: tuple[FinishOut, ...]
    faces: tuple[FaceOut, ...]


class RoomOut(Struct, frozen=True):
    """One room; `closure_error_mm` is null where it is open, `floor_area_m2` also for a column."""

    name: str
    title: str
    level: str
    purpose: str
    pattern: str
    handed: bool
    floor_area_m2: Number | None
    closure_error_mm: Number | None
    walls: tuple[WallOut, ...]
    ceilings: tuple[CeilingOut, ...]
