"""What holds for one wall: the room's lines under the wall's own."""

from msgspec.structs import replace

from roomspec.compile.draft import Facts, Stated
from roomspec.compile.mirror import from_right, mirrored
from roomspec.compile.reading import Fact
from roomspec.model.shape import WHOLE
from roomspec.model.wall import Flatness, Keep, Removal, Studs, Substrate, Surface, Wet

LAYERED = frozenset(("substrates", "surfaces", "flatness", "studs", "wet"))
"""In its region a later line wins; one for the whole wall hides all before it."""
REPLACED = frozenset(("heights", "finishes", "upstand"))
"""A wall that says anything of these itself takes nothing from the room."""
BY_KIND = frozenset(("keeps", "removals"))
"""A wall's line takes the place of the room's of the same kind."""
DEFAULTS = LAYERED | REPLACED | BY_KIND


def defaults_of(facts: Facts, handed: bool = False) -> Facts:
    """The room's lines that walls take over; `handed` where they are measured from the other end."""
    return {
        field: tuple(replace(one, handed=True) for one in stated) if handed else stated
        for field, stated in facts.items()
        if field in DEFAULTS
    }


def spread(under: Facts, over: Facts) -> Facts:
    """The facts of `over` laid on those of `under`."""
    if not under or not over:
        return over or under
    found = dict(under)
    for field, stated in over.items():
        found[field] = _laid(field, under.get(field, ()), stated)
    return found


def on_wall(stated: tuple[Stated, ...], width: int) -> tuple[object, ...]:
    """The values as they hold on a wall `width` wide, x from its left end."""
    return tuple(
        [
            _turned(one.fact, one.handed, width) if one.handed or one.fact.from_right else one.fact.value
            for one in stated
        ]
    )


def _turned(fact: Fact, handed: bool, width: int) -> object:
    value = from_right(fact.value, width) if fact.from_right else fact.value
    return mirrored(value, width) if handed else value


def _laid(field: str, under: tuple[Stated, ...], over: tuple[Stated, ...]) -> tuple[Stated, ...]:
    if field in REPLACED:
        return over
    if field in LAYERED:
        return over if not under or any(_region(one) == WHOLE for one in over) else under + over
    if field in BY_KIND:
        kinds = {_kind(one) for one in over}
        return tuple(one for one in under if _kind(one) not in kinds) + over
    return under + over


def _region(stated: Stated) -> object:
    value = stated.fact.value
    return value.region if isinstance(value, Substrate | Surface | Flatness | Studs | Wet) else None


def _kind(stated: Stated) -> str:
    value = stated.fact.value
    if isinstance(value, Keep):
        return value.kind
    return value.what if isinstance(value, Removal) else ""
