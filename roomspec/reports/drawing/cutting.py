"""Cutting drawings: one panel product's patterns with their counts, and which piece of which wall each part is."""

from collections.abc import Iterable, Iterator, Sequence

from msgspec import Struct

from roomspec.cutting.pattern import Pattern
from roomspec.reports.drawing.boxes import Box, Crowd
from roomspec.reports.drawing.drawn import NOTHING, Drawn, Text
from roomspec.reports.drawing.elevation import Page
from roomspec.reports.drawing.lettering import MEDIUM, SMALL, wrapped
from roomspec.reports.drawing.pattern_bar import Cell, cells_of, draw_bar, label_bar
from roomspec.reports.drawing.plot import Plot
from roomspec.reports.drawing.sheet import A3, A4, GAP, SCALES, Paper, field
from roomspec.reports.drawing.sizes import size_text, sizes_text
from roomspec.reports.drawing.subjects import CuttingSubject
from roomspec.reports.paper.numerals import Numerals
from roomspec.reports.wording import number_of, ranged

LINE = SMALL * 1.7
HEAD = 6.5
"""Over a panel, for how many are cut so."""
NARROWEST = 88.0
"""The least width of a column."""
LONGEST = 189.0
"""The most that a panel takes of the paper's width: one column on A4, one of two on A3."""
AFTER = 5.0
"""Between one pattern and the next."""


class _Part(Struct, frozen=True):
    """Something that takes a column's height: a pattern's panel, or a line of text."""

    height: float
    pattern: Pattern | None = None
    text: str = ""


def cutting_pages(subject: CuttingSubject, numerals: Numerals, warned: bool) -> list[Page]:
    """As many sheets as the patterns need: one A4, or A3."""
    patterns = subject.plan.plan.patterns
    longest = max((pattern.stock for pattern in patterns), default=1)
    scale = next(one for one in SCALES if one >= 10 and Plot(0, 0, one).size(longest) <= LONGEST)
    lists = [_list(pattern, subject, scale, numerals) for pattern in patterns]
    for paper in (A4, A3):
        columns = _columns(paper, warned, Plot(0, 0, scale).size(longest))
        groups = _groups(subject, lists, scale, numerals, columns[0].right - columns[0].left)
        sheets = _poured(list(groups), columns)
        if paper is A3 or len(sheets) == 1:
            break
    return [
        Page(paper, scale, _drawn(sheet, subject, scale, numerals), "Cutting drawing", "", _used(subject, sheet))
        for sheet in sheets
    ]


def _columns(paper: Paper, warned: bool, bar: float) -> list[Box]:
    area = field(paper, warned)
    count = max(1, int((area.right - area.left + 2 * GAP) // (max(NARROWEST, bar) + 2 * GAP)))
    wide = (area.right - area.left + 2 * GAP) / count - 2 * GAP
    return [
        Box(area.left + at * (wide + 2 * GAP), area.top, area.left + at * (wide + 2 * GAP) + wide, area.bottom)
        for at in range(count)
    ]


def _list(pattern: Pattern, subject: CuttingSubject, scale: int, numerals: Numerals) -> list[str]:
    """What is told under a panel of the pieces that stand on it as letters."""
    labels = label_bar(pattern, _cells(pattern, subject), Plot(0, 0, scale), numerals, Crowd())
    return [
        f"{letter}  {sizes_text(rip.length, rip.width, numerals)}: {names_text(rip.names)}"
        for letter, rip in labels.letters
    ]


def _groups(
    subject: CuttingSubject, lists: Sequence[Sequence[str]], scale: int, numerals: Numerals, width: float
) -> Iterator[tuple[_Part, ...]]:
    """What is written and drawn, from first to last, in groups that stay together."""

    def lines(told: Iterable[str]) -> tuple[_Part, ...]:
        return tuple(_Part(LINE, None, text) for line in told for text in wrapped(line, SMALL, width))

    yield lines(_summary(subject, numerals))
    high = Plot(0, 0, scale).size(subject.panel.cover)
    for pattern, told in zip(subject.plan.plan.patterns, lists, strict=True):
        yield _Part(HEAD + high + 1.2, pattern), *lines(told)


def _summary(subject: CuttingSubject, numerals: Numerals) -> Iterator[str]:
    plan, panel = subject.plan.plan, subject.panel
    lengths = ", ".join(sizes_text(length, panel.cover, numerals) for length, _ in plan.by_stock)
    yield f"{panel.title or panel.name}, {lengths}: {number_of(plan.panels, 'panel')} for {plan.pieces} pieces."
    if plan.sets is not None:
        yield f"{number_of(plan.sets, 'numbered set')} of {panel.sequence}."
    if plan.proven:
        yield f"Proven: no cutting plan can do {'with fewer' if plan.cost is None else 'for less money'}."
    else:
        yield f"No plan can use fewer than {plan.bound}."
    yield f"Each cut takes {size_text(subject.kerf, numerals)}."
    yield "Sizes are length × width; a piece's name is room/wall/number."
    for name, reason in plan.impossible:
        yield f"Not cut: {name}, {numerals.sentence(reason)}."


def _poured(groups: Sequence[tuple[_Part, ...]], columns: Sequence[Box]) -> list[list[tuple[float, float, _Part]]]:
    """Sheets of parts at their places; a group goes on in the next column only where none holds it whole."""
    sheets: list[list[tuple[float, float, _Part]]] = [[]]
    column, y = 0, columns[0].top
    top, bottom = y, columns[0].bottom + 1e-6
    for group in groups:
        whole = sum(part.height for part in group)
        for at, part in enumerate(group):
            need = whole if at == 0 and top + whole <= bottom else part.height
            if y + need > bottom and y > top:
                column = (column + 1) % len(columns)
                sheets += [] if column else [[]]
                y = top
            sheets[-1].append((columns[column].left, y, part))
            y += part.height
        y += AFTER
    return [sheet for sheet in sheets if sheet] or [[]]


def _drawn(sheet: list[tuple[float, float, _Part]], subject: CuttingSubject, scale: int, numerals: Numerals) -> Drawn:
    drawn = NOTHING
    crowd = Crowd()
    high = Plot(0, 0, scale).size(subject.panel.cover)
    for x, y, part in sheet:
        if part.pattern is None:
            drawn += Drawn((), (Text(x, y + LINE - 1.2, part.text, kind="pieces"),))
            continue
        plot = Plot(round(x, 3), round(y + HEAD + high, 3), scale)
        drawn += draw_bar(part.pattern, _cells(part.pattern, subject), subject.panel.cover, plot, numerals, crowd)
        drawn += Drawn((), (Text(x, y + HEAD - 1.6, _heading(part.pattern, subject), MEDIUM, kind="count"),))
    return drawn


def _cells(pattern: Pattern, subject: CuttingSubject) -> tuple[Cell, ...]:
    return tuple(cells_of(pattern, subject.panel.cover, subject.kerf, subject.edges))


def _heading(pattern: Pattern, subject: CuttingSubject) -> str:
    told = number_of(pattern.count, "panel")
    if subject.plan.plan.sets is not None:
        told += f", number {pattern.number + 1} of the set"
    return told


def names_text(names: Sequence[str]) -> str:
    """`g.02/a/1 to 9, g.02/b/3`: names of one wall together, three or more numbers that follow as a range."""
    walls: dict[str, list[str]] = {}
    for name in names:
        wall, _, number = name.rpartition("/")
        walls.setdefault(wall, []).append(number)
    return ", ".join(f"{wall}/{ranged(numbers)}" for wall, numbers in walls.items())


def _used(subject: CuttingSubject, sheet: list[tuple[float, float, _Part]]) -> frozenset[str]:
    patterns = [part.pattern for _, _, part in sheet if part.pattern is not None]
    return frozenset({cell.kind for pattern in patterns for cell in _cells(pattern, subject)} - {"piece"})
