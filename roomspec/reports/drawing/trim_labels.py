"""Trims on a face: extra wide lines, each with its short name and length beside it."""

from collections.abc import Iterable, Iterator, Mapping, Sequence

from roomspec.model.product import Trim
from roomspec.reports.drawing.boxes import Crowd, Shape, box_round, lies_on
from roomspec.reports.drawing.drawn import Text
from roomspec.reports.drawing.faces import FaceView
from roomspec.reports.drawing.lettering import SMALL
from roomspec.reports.drawing.pen import EXTRA_WIDE, WIDE
from roomspec.reports.drawing.placing import Block, box_of_block, moved, place_near, stacked, upright
from roomspec.reports.drawing.plot import Plot
from roomspec.reports.drawing.sizes import size_text
from roomspec.reports.paper.numerals import Numerals
from roomspec.takeoff.trims import TrimRun

_SHARES = (0.5, 0.35, 0.65, 0.2, 0.8, 0.08, 0.92)
_OFF, _FURTHER = 0.9, 3.4
"""How far beside its line a name stands, and how much further it may."""


def trim_names(views: Iterable[FaceView]) -> dict[Trim, str]:
    """T1, T2 ... for the trims of some faces, in the order met."""
    found: dict[Trim, str] = {}
    for view in views:
        for run in runs_of(view):
            found.setdefault(run.trim, f"T{len(found) + 1}")
    return found


def runs_of(view: FaceView) -> Iterator[TrimRun]:
    """Every run of trim on a face."""
    for lining in view.linings:
        yield from lining.taken.trims


def take_lines(view: FaceView, plot: Plot, crowd: Crowd) -> None:
    """Take the places of the trims and of the face's own outlines, so that no label stands on one."""
    outlines = [plot.ring(outline) for outline in view.outlines]
    lines = [(one, other, WIDE) for ring in outlines for one, other in zip(ring, (*ring[1:], ring[0]), strict=True)]
    for run in runs_of(view):
        ends = plot.at(run.line.x0, run.line.y0), plot.at(run.line.x1, run.line.y1)
        lines.append((*ends, EXTRA_WIDE))
    for (x0, y0), (x1, y1), width in lines:
        steps = 1 if abs(x0 - x1) < 1e-6 or abs(y0 - y1) < 1e-6 else max(1, int(abs(x1 - x0)))
        for at in range(steps):
            parts = [(x0 + (x1 - x0) * part / steps, y0 + (y1 - y0) * part / steps) for part in (at, at + 1)]
            crowd.take(box_round(parts).grown(width / 2))


def label_trims(
    runs: Iterable[TrimRun],
    plot: Plot,
    names: Mapping[Trim, str],
    numerals: Numerals,
    pieces: Sequence[Shape],
    crowd: Crowd,
) -> tuple[tuple[Text, ...], tuple[TrimRun, ...]]:
    """Names and lengths beside the lines, off the pieces; and the runs for which there is no room there."""
    texts: list[Text] = []
    left: list[TrimRun] = []
    for run in runs:
        block, spots = _beside(run, _long(run, names, numerals), plot)
        placed = place_near(block, (spot for spot in spots if not _over(block, spot, pieces)), crowd)
        texts += placed or ()
        left += () if placed else (run,)
    return tuple(texts), tuple(left)


def label_trims_over(
    runs: Iterable[TrimRun],
    plot: Plot,
    names: Mapping[Trim, str],
    numerals: Numerals,
    pieces: Sequence[Shape],
    crowd: Crowd,
) -> tuple[Text, ...]:
    """Names of the other runs, once the pieces have their labels: over pieces; alone where the length has no room.

    A run without room stands in the table alone.
    """
    texts: list[Text] = []
    for run in runs:
        for label in (_long(run, names, numerals), names[run.trim]):
            block, spots = _beside(run, label, plot)
            clear = [spot for spot in spots if not _over(block, spot, pieces)]
            placed = place_near(block, [*clear, *(spot for spot in spots if spot not in clear)], crowd)
            if placed:
                texts += placed
                break
    return tuple(texts)


def _long(run: TrimRun, names: Mapping[Trim, str], numerals: Numerals) -> str:
    return f"{names[run.trim]}  {size_text(run.length, numerals)}"


def _beside(run: TrimRun, label: str, plot: Plot) -> tuple[Block, list[tuple[float, float]]]:
    """A label along a run, and where it may stand, the best first; nowhere where it is much longer than the run."""
    line = run.line
    (x0, y0), (x1, y1) = plot.at(line.x0, line.y0), plot.at(line.x1, line.y1)
    rises = abs(y1 - y0) > abs(x1 - x0)
    block = upright(label, SMALL, "trim") if rises else stacked((label,), "trim")
    own = box_of_block(block)
    spots: list[tuple[float, float]] = []
    if max(own.right - own.left, own.bottom - own.top) > 40 + max(abs(x1 - x0), abs(y1 - y0)):
        return block, spots
    off = _OFF + (own.right if rises else own.bottom)
    slope = abs((x1 - x0) if rises else (y1 - y0)) / max(1e-9, abs((y1 - y0) if rises else (x1 - x0)))
    # Beside a slanting line a level text must stand off by as much as the line moves along the text's half.
    off += slope * (own.bottom if rises else own.right)
    long, half = max(abs(x1 - x0), abs(y1 - y0)), max(own.right, own.bottom)
    for further in (0.0, _FURTHER):
        for share in _SHARES:
            if min(share, 1 - share) * long < min(half, long / 2) - 1e-6:
                continue  # it would stand out beyond the line's end
            x, y = x0 + (x1 - x0) * share, y0 + (y1 - y0) * share
            for side in (-off - further, off + further):
                spots.append((x + side, y) if rises else (x, y + side))
    return block, spots


def _over(block: Block, spot: tuple[float, float], pieces: Sequence[Shape]) -> bool:
    """True where some of the label would lie on a piece."""
    box = box_of_block(moved(block, *spot))
    places = [(box.left + (box.right - box.left) * a, box.top + (box.bottom - box.top) * a) for a in (0.1, 0.5, 0.9)]
    return any(lies_on(place, pieces) for place in places)
