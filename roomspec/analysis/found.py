"""A finding placed in its file: what every report and editor shows."""

from collections.abc import Iterable, Mapping
from itertools import chain

from msgspec import Struct

from roomspec.diagnostics.diagnostic import SEVERITIES, Diagnostic, Origin


class Place(Struct, frozen=True, order=True, gc=False):
    """Words in a file: path relative to the repository, lines and columns from 1 in code points, end exclusive."""

    path: str
    line: int
    column: int
    end_line: int
    end_column: int


class FoundRelated(Struct, frozen=True, gc=False):
    """Another place that the finding speaks of."""

    message: str
    place: Place


class FoundEdit(Struct, frozen=True, gc=False):
    """Replace the words at `place` by `text`."""

    place: Place
    text: str


class FoundFix(Struct, frozen=True, gc=False):
    """A mend; `safe` ones may be applied unasked, those `to_fill_in` only by a person who was on site."""

    title: str
    safe: bool
    edits: tuple[FoundEdit, ...]
    to_fill_in: bool = False


class Found(Struct, frozen=True, gc=False):
    """One finding, placed."""

    name: str
    severity: str
    message: str
    place: Place
    help: str = ""
    related: tuple[FoundRelated, ...] = ()
    fixes: tuple[FoundFix, ...] = ()


_RANK = {severity: number for number, severity in enumerate(SEVERITIES)}

Blocks = Mapping[str, tuple[str, int]]
"""Where each block stands: its key -> (path, line from 0)."""


def placed(diagnostic: Diagnostic, blocks: Blocks, job_path: str) -> Found:
    """The diagnostic with every origin turned into a place."""
    return Found(
        diagnostic.name,
        diagnostic.severity,
        diagnostic.message,
        place_of(diagnostic.at, blocks, job_path),
        diagnostic.help,
        tuple([FoundRelated(other.message, place_of(other.at, blocks, job_path)) for other in diagnostic.related]),
        tuple(
            [
                FoundFix(
                    fix.title,
                    fix.safe,
                    tuple([FoundEdit(place_of(e.at, blocks, job_path), e.text) for e in fix.edits]),
                    fix.to_fill_in,
                )
                for fix in diagnostic.fixes
            ]
        ),
    )


def in_order(found: list[Found]) -> tuple[Found, ...]:
    """Each finding once, by file and place, the worst first at one place."""
    if len(found) < 2:
        return tuple(found)
    unique = {(f.place, f.name, f.message): f for f in found}
    return tuple(sorted(unique.values(), key=lambda f: (f.place, _RANK[f.severity], f.name, f.message)))


def joined(runs: Iterable[tuple[Found, ...]]) -> tuple[Found, ...]:
    """The same of several that are each in order; those that stand apart are put behind one another unlooked at."""
    heaps: list[list[tuple[Found, ...]]] = []
    last: Place | None = None
    for run in sorted(filter(None, runs), key=lambda run: run[0].place):
        if last is not None and run[0].place <= last:
            heaps[-1].append(run)
            last = max(last, run[-1].place)
        else:
            heaps.append([run])
            last = run[-1].place
    return tuple(chain.from_iterable(heap[0] if len(heap) == 1 else in_order([*chain(*heap)]) for heap in heaps))


def place_of(origin: Origin, blocks: Blocks, job_path: str) -> Place:
    """Where in which file an origin is."""
    stands = blocks.get(origin.block)
    if stands is None:
        stands = (origin.block[5:] if origin.block.startswith("file ") else job_path), 0
    path, first = stands
    line = first + origin.line + 1
    return Place(path, line, origin.start + 1, line, origin.end + 1)
