"""Rooms in a row: compiled together, and found together while none of them nor what they name has changed.

An edit is of one room. Of the others nothing is looked at but the stretches that they stand in.
"""

from collections.abc import Hashable, Iterable, Iterator, Mapping
from itertools import chain, groupby

from msgspec import Struct

from roomspec.compile.allows import Allowance, allowances_of_room, without_reason
from roomspec.compile.draft import read_draft
from roomspec.compile.kept import Keep, Same, anew
from roomspec.compile.methods import MadeMethod
from roomspec.compile.origins import Origins
from roomspec.compile.products import MadeProduct
from roomspec.compile.rooms import MadeRoom, Text, make_room, named
from roomspec.diagnostics.diagnostic import Diagnostic
from roomspec.model.product import Panel
from roomspec.model.room import Room
from roomspec.names.index import Names
from roomspec.names.references import named_in, uses
from roomspec.syntax.tree import Block

MOST = 32
"""Rooms of one stretch: an edit looks at so many rooms, and at a job's rooms divided by so many stretches."""


class Own(Struct, frozen=True, gc=False):
    """A room's own block: its text, and the names in it, each once."""

    text: Text
    pattern: str
    """The name of its pattern; "" where it has none."""
    panels: tuple[str, ...]
    methods: tuple[str, ...]


class Stretch(Struct, frozen=True, gc=False):
    """Rooms that stand one after the other in a file."""

    names: tuple[str, ...]
    blocks: tuple[Block, ...]
    """For each name; rooms repeated from one block share it."""
    each: tuple[Own, ...]
    patterns: tuple[str, ...]
    panels: tuple[str, ...]
    methods: tuple[str, ...]
    used: frozenset[tuple[str, str]]
    """Kind and name of all that they name."""


class Given(Struct, frozen=True):
    """What the names of a stretch and of its patterns mean; what is unknown is missing."""

    patterns: Mapping[str, Text]
    panels: Mapping[str, MadeProduct]
    methods: Mapping[str, MadeMethod]

    def key(self) -> Hashable:
        """Equal while all of it is the very same."""
        made = (*self.panels.values(), *self.methods.values())
        return tuple(self.patterns.items()), tuple(map(Same, made))


class MadeRooms(Struct, frozen=True, gc=False):
    """The rooms of a stretch; those of an unknown pattern are left out. `methods` are the names that they may use."""

    rooms: tuple[Room, ...]
    origins: dict[str, Origins]
    """By kind and name: `room 101`."""
    problems: tuple[Diagnostic, ...]
    allowances: tuple[Allowance, ...]
    methods: tuple[str, ...]


def stretches(names: Names, keep: Keep) -> Iterator[Stretch]:
    """The rooms of a job, file by file."""
    for (_, units), several in groupby(names.rooms.items(), lambda item: (item[1].path, item[1].units)):
        rooms = list(several)
        for first in range(0, len(rooms), MOST):
            some = rooms[first : first + MOST]
            key = tuple([name for name, _ in some]), tuple([one.block for _, one in some]), units
            yield keep("stretch", f"rooms from {key[0][0]}", key, lambda key=key: _stretch(*key))  # type: ignore[misc]


def _stretch(names: tuple[str, ...], blocks: tuple[Block, ...], units: str) -> Stretch:
    each = [_own(block, units) for block in {id(block): block for block in blocks}.values()]
    return Stretch(
        names,
        blocks,
        tuple(each),
        tuple(dict.fromkeys(own.pattern for own in each if own.pattern)),
        _each_once([own.panels for own in each]),
        _each_once([own.methods for own in each]),
        frozenset((use.kind, use.name) for own in each for use in uses(own.text.block)),
    )


def _own(block: Block, units: str) -> Own:
    pattern = read_draft(block, units).head.pattern
    return Own(Text(block, units), pattern, named_in(block, "panel"), named_in(block, "method"))


def given(
    stretch: Stretch, names: Names, products: Mapping[tuple[str, str], MadeProduct], methods: Mapping[str, MadeMethod]
) -> Given:
    """What the names of the stretch mean in a job."""
    found = {name: names.find("pattern", name) for name in stretch.patterns}
    patterns = {name: pattern for name, pattern in found.items() if pattern is not None}
    panels = _each_once((stretch.panels, *(named_in(pattern.block, "panel") for pattern in patterns.values())))
    named = _each_once((stretch.methods, *(named_in(pattern.block, "method") for pattern in patterns.values())))
    return Given(
        {name: Text(pattern.block, pattern.units) for name, pattern in patterns.items()},
        {name: products["panel", name] for name in panels if ("panel", name) in products},
        {name: methods[name] for name in named if name in methods},
    )


def make_rooms(stretch: Stretch, given: Given, keep: Keep = anew) -> MadeRooms:
    """The rooms of a stretch, given what they name. All are read before the first is made."""
    made: dict[int, MadeRoom] = {}
    patterns: dict[int, Block | None] = {}
    for own in stretch.each:
        pattern = given.patterns.get(own.pattern)
        patterns[id(own.text.block)] = pattern.block if pattern is not None else None
        if not own.pattern or pattern is not None:
            made[id(own.text.block)] = _room(own, pattern, given, keep)
    rooms: list[Room] = []
    origins: dict[str, Origins] = {}
    allowances: list[Allowance] = []
    for name, block in zip(stretch.names, stretch.blocks, strict=True):
        one = made.get(id(block))
        allowances.extend(allowances_of_room(name, block, patterns[id(block)]))
        if one is not None:
            rooms.append(named(one.value, name))
            origins[f"room {name}"] = one.origins
    problems = dict.fromkeys(problem for one in made.values() for problem in one.problems)
    problems.update(dict.fromkeys(problem for own in stretch.each for problem in without_reason(own.text.block)))
    return MadeRooms(tuple(rooms), origins, tuple(problems), tuple(allowances), tuple(given.methods))


def _room(own: Own, pattern: Text | None, given: Given, keep: Keep) -> MadeRoom:
    panels, methods = own.panels, own.methods
    if pattern is not None:
        panels = _each_once((panels, named_in(pattern.block, "panel")))
        methods = _each_once((methods, named_in(pattern.block, "method")))
    products = [given.panels[name] for name in panels if name in given.panels]
    used = [given.methods[name] for name in methods if name in given.methods]

    def make() -> MadeRoom:
        values = tuple([made.value for made in products if isinstance(made.value, Panel)])
        return make_room(own.text, pattern, values, tuple([made.value for made in used]))

    key = own.text, pattern, tuple(map(Same, products)), tuple(map(Same, used))
    return keep("room", own.text.block.key, key, make)


def _each_once(several: Iterable[tuple[str, ...]]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(chain.from_iterable(several)))
