"""What holds for one wall: the room's lines under the wall's own."""

from collections.abc import Iterable

from msgspec import Struct
from msgspec.structs import replace

from roomspec.compile.draft import Facts
from roomspec.compile.mirror import from_right, mirrored
from roomspec.compile.origins import Source
from roomspec.model.shape import WHOLE
from roomspec.model.wall import SUBSTRATES, Finish, Flatness, Keep, Removal, Studs, Substrate, Surface, Wet

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
    found = under | over
    if len(found) < len(under) + len(over):
        for field, stated in over.items():
            if field in under:
                found[field] = _laid(field, under[field], stated)
    return found


class Defaults(Struct, frozen=True, gc=False):
    """What a room says for its walls, and the layers that any of them says of itself to have."""

    facts: Facts
    layers: frozenset[str]
    alike: tuple[tuple[Finish, ...], tuple[Source, ...]] | None = None
    """What the room's own `finish` lines make, with their sources, where it is the same on all walls that take it."""


def defaults_among(facts: Facts, walls: Iterable[Facts]) -> Defaults:
    """The room's facts among its walls' own."""
    if "removals" not in facts:
        return Defaults(facts, frozenset())
    return Defaults(facts, _layers(one for wall in walls for one in wall.get("substrates", ())))


def facts_of_wall(defaults: Defaults, own: Facts) -> Facts:
    """A wall's own facts over its room's; a layer that the room takes off comes off the walls that have it.

    It is left on where the wall says what it is made of and names no such layer; and where the room says that for it,
    and another wall names the layer.
    """
    found = spread(defaults.facts, own)
    of_room = defaults.facts.get("removals", ())
    if not of_room or "substrates" not in found:
        return found
    gone = (SUBSTRATES if "substrates" in own else defaults.layers) - _layers(found["substrates"])
    there = tuple(one for one in found["removals"] if not (one in of_room and _kind(one) in gone))
    return found | {"removals": there}


def _layers(stated: Iterable[Source]) -> frozenset[str]:
    values = (one.value for one in stated)
    return frozenset(layer.kind for value in values if isinstance(value, Substrate) for layer in value.layers)


def on_wall(stated: tuple[Source, ...], width: int) -> tuple[object, ...]:
    """The values as they hold on a wall `width` wide, x from its left end."""
    if len(stated) == 1 and not (stated[0].handed or stated[0].from_right):
        return (stated[0].value,)  # nearly every field of a wall
    return tuple([_turned(one, width) if one.handed or one.from_right else one.value for one in stated])


def _turned(one: Source, width: int) -> object:
    value = from_right(one.value, width) if one.from_right else one.value
    return mirrored(value, width) if one.handed else value


def _laid(field: str, under: tuple[Source, ...], over: tuple[Source, ...]) -> tuple[Source, ...]:
    if field in REPLACED:
        return over
    if field in LAYERED:
        return over if any(_region(one) == WHOLE for one in over) else under + over
    if field in BY_KIND:
        kinds = {_kind(one) for one in over}
        return tuple(one for one in under if _kind(one) not in kinds) + over
    return under + over


def _region(stated: Source) -> object:
    value = stated.value
    return value.region if isinstance(value, Substrate | Surface | Flatness | Studs | Wet) else None


def _kind(stated: Source) -> str:
    value = stated.value
    if isinstance(value, Keep):
        return value.kind
    return value.what if isinstance(value, Removal) else ""
