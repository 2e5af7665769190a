"""What is said of a job in the end: less what is waved off, the same of several faces once; kept a block at a time."""

from collections.abc import Iterator, Sequence

from msgspec import Struct

from roomspec.analysis.memo import Memo, Same
from roomspec.checks.allowing import Scope, Waved, idle, wave_off
from roomspec.checks.finding import Raised
from roomspec.checks.said_once import said_once
from roomspec.diagnostics.diagnostic import Diagnostic, Origin


class Said(Struct, frozen=True):
    """Findings in one block. While nothing that they come from changes they are the same object.

    `touches` are the blocks that they name a place in: where these stand decides where the findings do.
    """

    diagnostics: tuple[Diagnostic, ...]
    touches: tuple[str, ...]


class Saying(Struct, frozen=True):
    """All findings of a job: of the job and of whole rooms, which are made anew each time, and of the blocks."""

    anew: tuple[Diagnostic, ...]
    kept: tuple[Said, ...]


class _Part(Struct, frozen=True):
    """What a room adds to what is said of a block; "" stands for what is said of whole rooms."""

    block: str
    raised: tuple[Raised, ...]


class _Parted(Struct, frozen=True):
    waved: Waved
    parts: tuple[_Part, ...]


def say(of_job: Scope, of_rooms: Sequence[Scope], memo: Memo, whole: bool) -> Saying:
    """The findings that stand; `whole` as in `apply_allows`.

    What is said of the faces of a block is said apart from other blocks, so that an edit of one leaves the rest.
    """
    waved_of_job = wave_off(of_job)
    found = [_of_scope(scope, memo) for scope in of_rooms if scope.raised]
    blocks: dict[str, list[_Part]] = {}
    for one in found:
        for part in one.parts:
            blocks.setdefault(part.block, []).append(part)
    rooms = (raised for part in blocks.pop("", ()) for raised in part.raised)
    allowing = idle((of_job, *of_rooms), (waved_of_job, *(one.waved for one in found)), whole)
    return Saying(
        said_once((*waved_of_job.standing, *rooms, *allowing)),
        tuple(_said(block, parts, memo) for block, parts in blocks.items()),
    )


def _of_scope(scope: Scope, memo: Memo) -> _Parted:
    label = scope.raised[0].diagnostic.at.block
    return memo.get("wave off", label, (Same(scope.raised), scope.allows), lambda: _parted(scope))


def _parted(scope: Scope) -> _Parted:
    waved = wave_off(scope)
    blocks: dict[str, list[Raised]] = {}
    for one in waved.standing:
        block = "" if one.face.startswith("room ") else one.diagnostic.at.block
        blocks.setdefault(block, []).append(one)
    return _Parted(waved, tuple(_Part(block, tuple(found)) for block, found in blocks.items()))


def _said(block: str, parts: Sequence[_Part], memo: Memo) -> Said:
    def make() -> Said:
        said = said_once(raised for part in parts for raised in part.raised)
        return Said(said, tuple(dict.fromkeys(place.block for one in said for place in _places(one))))

    return memo.get("say", block, tuple(map(Same, parts)), make)


def _places(said: Diagnostic) -> Iterator[Origin]:
    yield said.at
    yield from (other.at for other in said.related)
    yield from (edit.at for fix in said.fixes for edit in fix.edits)
