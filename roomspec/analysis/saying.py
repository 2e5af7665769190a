"""What is said of a job in the end: less what is waved off, the same of several faces once; kept as far as it stays."""

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence

from msgspec import Struct

from roomspec.analysis.memo import Memo
from roomspec.checks.allowing import Allow, Scope, Waved, idle, wave_off
from roomspec.checks.finding import Raised
from roomspec.checks.said_once import said_once
from roomspec.compile.kept import Same
from roomspec.diagnostics.diagnostic import Diagnostic, Origin


class Said(Struct, frozen=True):
    """Findings in one block. While nothing that they come from changes they are the same object.

    `touches` are the blocks that they name a place in: where these stand decides where the findings do.
    """

    diagnostics: tuple[Diagnostic, ...]
    touches: tuple[str, ...]


class SaidRooms(Struct, frozen=True):
    """What is said of the rooms of a stretch, by block, and what other blocks it touches."""

    blocks: Mapping[str, Said]
    touches: tuple[str, ...]
    parts: Mapping[str, tuple["Part", ...]]
    """What each room adds to what is said of a block."""
    whole: tuple[Raised, ...]
    """What is said of whole rooms: of all rooms of the job together."""
    allows: tuple[Allow, ...]
    used: tuple[Allow, ...]


class Part(Struct, frozen=True):
    """What a room adds to what is said of a block; "" stands for what is said of whole rooms."""

    block: str
    raised: tuple[Raised, ...]


class Saying(Struct, frozen=True):
    """All findings of a job: of the job and of whole rooms, which are made anew each time, and of the blocks.

    `shared` is what is said of blocks that several stretches speak of; there, what each says alone does not count.
    """

    anew: tuple[Diagnostic, ...]
    rooms: tuple[SaidRooms, ...]
    shared: Mapping[str, Said]


class _Parted(Struct, frozen=True):
    waved: Waved
    parts: tuple[Part, ...]


def say(of_job: Scope, of_rooms: Sequence[SaidRooms], memo: Memo, whole: bool) -> Saying:
    """The findings that stand; `whole` as in `apply_allows`.

    What is said of the faces of a block is said apart from other blocks, so that an edit of one leaves the rest.
    """
    waved_of_job = wave_off(of_job)
    scopes = (of_job, *(Scope((), rooms.allows) for rooms in of_rooms))
    allowing = idle(scopes, (waved_of_job, *(Waved((), rooms.used) for rooms in of_rooms)), whole)
    rooms = (raised for one in of_rooms for raised in one.whole)
    shared = {
        block: _said(block, [part for one in of_rooms for part in one.parts.get(block, ())], memo)
        for block in _of_several([one.blocks for one in of_rooms])
    }
    return Saying(said_once((*waved_of_job.standing, *rooms, *allowing)), tuple(of_rooms), shared)


def say_of_rooms(scopes: Sequence[Scope], memo: Memo) -> SaidRooms:
    """What is said of the rooms of a stretch, each with the allows that hold over it."""
    found = [_of_scope(scope, memo) for scope in scopes if scope.raised]
    parts: dict[str, list[Part]] = {}
    for one in found:
        for part in one.parts:
            parts.setdefault(part.block, []).append(part)
    rooms = tuple(raised for part in parts.pop("", ()) for raised in part.raised)
    blocks = {block: _said(block, several, memo) for block, several in parts.items()}
    return SaidRooms(
        blocks,
        tuple(dict.fromkeys(touched for said in blocks.values() for touched in said.touches)),
        {block: tuple(several) for block, several in parts.items()},
        rooms,
        tuple(dict.fromkeys(allow for scope in scopes for allow in scope.allows)),
        tuple(dict.fromkeys(allow for one in found for allow in one.waved.used)),
    )


def _of_several(each: Iterable[Collection[str]]) -> tuple[str, ...]:
    """What is in more than one, in order."""
    met: set[str] = set()
    again: dict[str, None] = {}
    for blocks in each:
        if not met.isdisjoint(blocks):
            again.update(dict.fromkeys(block for block in blocks if block in met))
        met.update(blocks)
    return tuple(again)


def _of_scope(scope: Scope, memo: Memo) -> _Parted:
    label = scope.raised[0].diagnostic.at.block
    return memo.get("wave off", label, (Same(scope.raised), scope.allows), lambda: _parted(scope))


def _parted(scope: Scope) -> _Parted:
    waved = wave_off(scope)
    blocks: dict[str, list[Raised]] = {}
    for one in waved.standing:
        block = "" if one.face.startswith("room ") else one.diagnostic.at.block
        blocks.setdefault(block, []).append(one)
    return _Parted(waved, tuple(Part(block, tuple(found)) for block, found in blocks.items()))


def _said(block: str, parts: Sequence[Part], memo: Memo) -> Said:
    def make() -> Said:
        said = said_once(raised for part in parts for raised in part.raised)
        return Said(said, tuple(dict.fromkeys(place.block for one in said for place in _places(one))))

    return memo.get("say", block, tuple(map(Same, parts)), make)


def _places(said: Diagnostic) -> Iterator[Origin]:
    yield said.at
    yield from (other.at for other in said.related)
    yield from (edit.at for fix in said.fixes for edit in fix.edits)
