"""A face too long for its pieces' numbers: the whole without them, then stretch by stretch to a larger scale."""

from collections.abc import Iterator, Mapping

from msgspec.structs import replace

from roomspec.layout.laid import Line, Piece, Ring
from roomspec.layout.slabs import height_at
from roomspec.model.product import Trim
from roomspec.model.shape import Profile
from roomspec.quantities.length import METRE
from roomspec.reports.drawing.elevation import Page, elevation_page
from roomspec.reports.drawing.faces import DrawnLining, FaceView
from roomspec.reports.drawing.sizes import size_text
from roomspec.reports.drawing.tables import Block, Row
from roomspec.reports.paper.numerals import Numerals
from roomspec.takeoff.clip import FAR, Box, part_of, span_in
from roomspec.takeoff.face import outline_of

LONG = 5 * METRE
"""A stretch: what A3 takes at 1 : 20, dimensions and a piece that stands out at either end included."""


def front_pages(
    view: FaceView, names: Mapping[Trim, str], before: tuple[Block, ...], numerals: Numerals, warned: bool
) -> tuple[list[Page], list[Row]]:
    """A wall's front on one sheet, or as an overview and stretches; and the rows of tables without room."""
    page, rows, crowded = elevation_page(view, names, before, numerals, warned)
    if not crowded or page.scale <= 20 or view.width <= LONG:
        return [page], rows
    overview, rows, _ = elevation_page(replace(view, extent="overview"), names, before, numerals, warned)
    pages = [overview]
    for part in stretches_of(view):
        page, more, _ = elevation_page(part, names, (), numerals, warned)
        told = f"{size_text(part.low, numerals)} to {size_text(part.high, numerals)}"
        pages.append(replace(page, part=told))
        rows += more
    return pages, rows


def stretches_of(view: FaceView) -> Iterator[FaceView]:
    """Stretches of one length from end to end; each piece, opening and point is on that in which its middle lies."""
    low, high = view.ends
    count = -(-(high - low) // LONG)
    for at in range(count):
        first, last = low + (high - low) * at // count, low + (high - low) * (at + 1) // count
        yield _stretch(view, first, last, at == 0, at == count - 1)


def _stretch(view: FaceView, first: int, last: int, is_first: bool, is_last: bool) -> FaceView:
    def here(left: int, right: int) -> bool:
        return first <= (left + right) // 2 < last or (is_last and (left + right) // 2 == last)

    wall = view.wall
    openings = tuple(one for one in wall.openings if here(one.x, one.right))
    obstacles = tuple(one for one in wall.obstacles if here(one.x, one.x + one.width))
    hidden = tuple(rect for rect in view.hidden if here(rect[0], rect[1]))
    pieces = [tuple(one for one in lining.pieces if here(*_sides(one.outline))) for lining in view.linings]
    xs = [x for some in pieces for piece in some for x in _sides(piece.outline)]
    xs += [x for one in openings for x in (one.x, one.right)] + [x for rect in hidden for x in rect[:2]]
    xs += [x for one in obstacles for x in (one.x, one.x + one.width)]
    low, high = max(view.ends[0], min([first, *xs])), min(view.ends[1], max([last, *xs]))
    points = tuple(one for one in wall.points if here(one.x, one.x))
    part = replace(
        wall, floor=_between(wall.floor, low, high), top=_between(wall.top, low, high), width_top=wall.width,
        openings=openings, obstacles=obstacles, points=points, notes=(),
    )  # fmt: skip
    linings = tuple(_cut(lining, some, low, high) for lining, some in zip(view.linings, pieces, strict=True))
    return replace(
        view, wall=part, outlines=(outline_of(part),), linings=linings, hidden=hidden, low=low, high=high,
        extent="stretch", left=view.left if is_first else "", right=view.right if is_last else "",
    )  # fmt: skip


def _sides(ring: Ring) -> tuple[int, int]:
    xs = [x for x, _ in ring]
    return min(xs), max(xs)


def _between(profile: Profile, low: int, high: int) -> Profile:
    """The part of a profile from `low` to `high`, its places kept."""
    inside = [(x, y) for x, y in profile if low < x < high]
    return ((low, height_at(profile, low)), *inside, (high, height_at(profile, high, after=False)))


def _cut(lining: DrawnLining, pieces: tuple[Piece, ...], low: int, high: int) -> DrawnLining:
    """A lining with those of its pieces, and what of its joints, trims and battens lies in the stretch."""
    joints = [replace(one, line=line) for one in lining.laid.joints for line in _within(one.line, low, high)]
    trims = [replace(one, line=line) for one in lining.taken.trims for line in _within(one.line, low, high)]
    battens = [replace(one, line=line) for one in lining.taken.battens for line in _within(one.line, low, high)]
    return DrawnLining(
        replace(lining.laid, joints=tuple(joints)),
        replace(lining.taken, trims=tuple(trims), battens=tuple(battens)),
        pieces,
    )


def _within(line: Line, low: int, high: int) -> Iterator[Line]:
    """The part of a line from `low` to `high`, if any."""
    span = span_in(line, Box(low, high, -FAR, FAR))
    if span is not None:
        yield part_of(line, span)
