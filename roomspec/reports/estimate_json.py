"""The estimate for programs: one object, its shape published in `estimate.schema.json`.

Lengths are numbers of millimetres, areas numbers of square metres, money and per cents decimal strings, in the job's
currency; what is not known is null. Keys may be added within version 1; none changes its meaning.
"""

from decimal import Decimal
from typing import Literal

import msgspec
from msgspec import Struct

from roomspec.reports.estimate_room_json import RoomOut
from roomspec.reports.number import Number


class JobOut(Struct, frozen=True):
    """The job. `date` is ISO 8601; `file` is relative to the repository.

    `units` are those of the job's own file (mm, cm, m, in, ft): sentences are in these, numbers are metric always.
    """

    name: str
    title: str
    currency: str
    date: str | None
    file: str
    pool: str
    units: str


class LengthCount(Struct, frozen=True):
    """How many of one stock length, and the price that holds for it, null where there is none (as in OrderOut)."""

    length_mm: Number
    count: int
    unit_price: Decimal | None
    price_per: str | None
    written_price: Decimal | None
    written_per: str | None


class OrderOut(Struct, frozen=True):
    """One line of the order.

    `needed` is before spare and packs; `bound` the proven least that any cutting plan could use, null where nothing is
    cut. Where lengths that differ in cost can be chosen, `proven` is of money: `cost_bound` is what any plan costs at
    least, before spare and packs; else it is null. `unit_price` is the price of the longest of `lengths`; one given per
    foot or square foot is here per m or m2, to ten decimals, and in `written_price` and `written_per` as it is given.
    `over_net_percent` is what is bought over the net area, for panels.
    """

    kind: str
    item: str
    title: str
    needed: int
    bound: int | None
    cost_bound: Decimal | None
    proven: bool | None
    spare: int
    pack: int
    packs: int
    ordered: int
    lengths: tuple[LengthCount, ...]
    unit_price: Decimal | None
    price_per: str | None
    written_price: Decimal | None
    written_per: str | None
    cost: Decimal | None
    net: Number
    net_unit: str
    over_net_percent: Decimal | None


class PieceOut(Struct, frozen=True):
    """One blank of a cutting pattern and the pieces cut so, one for each panel of the pattern: `room/wall/number`.

    A trim or a batten has no width of its own: its `width_mm` is null.
    """

    length_mm: Number
    width_mm: Number | None
    of: tuple[str, ...]


class PatternOut(Struct, frozen=True):
    """`count` panels cut alike, and what is left of each. `set_number` is their number in a numbered set."""

    count: int
    stock_mm: Number
    pieces: tuple[PieceOut, ...]
    offcut_mm: Number
    set_number: int | None


class CuttingOut(Struct, frozen=True):
    """The cutting plan of one product in one pool; no plan can use fewer than `bound`.

    Of several lengths, all priced, the cheapest plan is sought: `cost` is what it needs, no plan costs less than
    `cost_bound`, and `proven` says that they are equal. Else both are null.
    For numbered panels `sets` are the whole sets to order, and `bound` holds for these.
    """

    kind: str
    item: str
    pool: str
    panels: int
    sets: int | None
    bound: int
    cost: Decimal | None
    cost_bound: Decimal | None
    proven: bool
    patterns: tuple[PatternOut, ...]


class MeasuredWallOut(Struct, frozen=True):
    """A wall as a tender measures it, each step a line; `length_m` is what the rule measures by length.

    `wall` names its other faces too (`a boxing front`), and ceilings (`ceiling over`).
    """

    room: str
    wall: str
    quantity_m2: Number
    length_m: Number
    lines: tuple[str, ...]


class MeasuredOut(Struct, frozen=True):
    """Measured quantities by the job's rule: net, nrm2, smm7, vob or is1200."""

    method: str
    walls: tuple[MeasuredWallOut, ...]


class LabourOut(Struct, frozen=True):
    """One task: its quantity, the hours that the gang's constant gives, null without one, and their cost.

    `hours` are to the hundredth, and `cost` is of these at the estimate's `rate`.
    """

    task: str
    quantity: Number
    unit: str
    hours: Number | None
    cost: Decimal | None
    constant_hours: Number | None
    """Hours for one `unit`; null where the gang names none."""


class ExtraOut(Struct, frozen=True):
    """Any other priced line of the job; a quantity and a price in feet are here in metres, to nine and ten decimals."""

    text: str
    quantity: Number
    unit: str
    unit_price: Decimal
    cost: Decimal
    written_price: Decimal
    written_per: str


class StepOut(Struct, frozen=True):
    """One step of the price, with the per cent and what it is of where it is one; `note` says more of it."""

    name: str
    amount: Decimal
    percent: Decimal | None
    of: Decimal | None
    note: str


class PriceOut(Struct, frozen=True):
    """The price; `steps` are the same figures in the order reckoned. `cost` is material, labour and extras."""

    material: Decimal
    labour: Decimal
    extras: Decimal
    cost: Decimal
    overhead: Decimal
    profit: Decimal
    contingency: Decimal
    net: Decimal
    tax: Decimal
    total: Decimal
    steps: tuple[StepOut, ...]


class FindingsOut(Struct, frozen=True):
    """How many findings the job has, and what its errors leave out of the estimate."""

    error: int
    warning: int
    hint: int
    left_out: tuple[str, ...]


class EstimateOut(Struct, frozen=True):
    """What `roomspec estimate --as json` prints."""

    format: Literal["roomspec/estimate"]
    version: Literal[1]
    job: JobOut
    rooms: tuple[RoomOut, ...]
    order: tuple[OrderOut, ...]
    cutting: tuple[CuttingOut, ...]
    measured: MeasuredOut
    rate: Decimal | None
    """What the gang costs an hour; null where there is no gang or it names none."""
    labour: tuple[LabourOut, ...]
    extras: tuple[ExtraOut, ...]
    price: PriceOut
    assumptions: tuple[str, ...]
    exclusions: tuple[str, ...]
    cautions: tuple[str, ...]
    findings: FindingsOut


def estimate_json(out: EstimateOut) -> str:
    """The estimate as JSON, indented, with a line break at the end."""
    return msgspec.json.format(msgspec.json.encode(out), indent=1).decode() + "\n"
