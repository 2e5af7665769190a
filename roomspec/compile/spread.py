"""What holds for one wall: the room's lines under the wall's own."""

from msgspec.structs import replace

from roomspec.compile.draft import Facts
from roomspec.compile.mirror import from_right, mirrored
from roomspec.compile.origins import Source
from roomspec.model.shape import WHOLE
from roomspec.model.wall import SUBSTRATES, Flatness, Keep, Removal, Studs, Substrate, Surface, Wet

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
    for field in under.keys() & over.keys():
        found[field] = _laid(field, under[field], over[field])
    if "substrates" in over and "removals" in under:
        found["removals"] = _there(found["removals"], under["removals"], found["substrates"])
    return found


def _there(
    stated: tuple[Source, ...], of_room: tuple[Source, ...], substrates: tuple[Source, ...]
) -> tuple[Source, ...]:
    """Without layers that the room takes off, where the wall says what it is made of and has none of them."""
    layers = {layer.kind for one in substrates if isinstance(one.value, Substrate) for layer in one.value.layers}
    gone = SUBSTRATES - layers
    return tuple(one for one in stated if not (one in of_room and _kind(one) in gone))


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
