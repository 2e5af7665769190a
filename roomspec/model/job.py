"""The job: all that one quotation covers."""

import datetime
from decimal import Decimal

from msgspec import Struct

from roomspec.model.method import Gang
from roomspec.model.room import Room
from roomspec.model.wall import Extra


class Terms(Struct, frozen=True, cache_hash=True, gc=False):
    """What the job line's own statements say; each field's default is what the language reference states."""

    currency: str = "EUR"
    date: datetime.date | None = None
    fit_on: datetime.date | None = None
    tax: Decimal = Decimal(0)
    """Per cent, as the next four."""
    overhead: Decimal = Decimal(0)
    profit: Decimal | None = None
    """On cost; None where `margin` is given or neither is."""
    margin: Decimal | None = None
    """On price."""
    contingency: Decimal = Decimal(0)
    spare: Decimal = Decimal(0)
    measured: str = "net"
    fire: str | None = None
    pool: str = "job"
    """room, level or job."""
    kerf: int = 3_000_000
    narrowest: int = 60_000_000
    shortest: int = 300_000_000
    swing: Decimal = Decimal(20)
    """Kelvin."""
    built: int | None = None
    refitted: int | None = None
    locale: str | None = None
    units: str = "mm"
    """What a bare length is in the job's own file: mm, cm, m, in or ft. The job's sentences are in these."""


class Job(Struct, frozen=True, cache_hash=True, gc=False):
    """A job as it was understood: its terms, its rooms in the order they stand in the text, its gang."""

    name: str
    title: str
    terms: Terms
    rooms: tuple[Room, ...]
    gang: Gang | None = None
    extras: tuple[Extra, ...] = ()
    assumptions: tuple[str, ...] = ()
    exclusions: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
