"""What a check gives back, and the same as a diagnostic with what it is about."""

from msgspec import Struct

from roomspec.diagnostics.diagnostic import Diagnostic, Fix, Origin, Related


class Finding(Struct, frozen=True, gc=False):
    """One mistake as a check reports it: the record adds the name, and the severity where none is given here.

    `about` are the walls, products and methods concerned, as keys (`wall a`, `panel limestone-long`, `method glued`);
    an `allow` that stands in one of them waves the finding off. The room and the job need not be named.

    `face` is the wall, ceiling or room that the message holds for, where it does not name it itself (`wall a`): what
    holds for several faces of a room, or several rooms, is then said once, with their names before it (`said_once`).
    """

    at: Origin
    message: str
    help: str = ""
    about: tuple[str, ...] = ()
    related: tuple[Related, ...] = ()
    fixes: tuple[Fix, ...] = ()
    severity: str = ""
    face: str = ""


class Raised(Struct, frozen=True, gc=False):
    """A diagnostic, the keys of what it is about, and the face that its message holds for."""

    diagnostic: Diagnostic
    about: tuple[str, ...] = ()
    face: str = ""
