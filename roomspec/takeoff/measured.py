"""Measured quantities for a tender.

The measured area is the finish's region of the face, not shortened by trims or gaps, less a kept skirting or cornice.
The faces of boxes, the backs of niches and the leaves of hatches are measured by themselves (DIN 18340 4.2: backs of
niches, whatever their size); a niche's other faces are reveals. What a box hides is deducted by every method. Each
method has its own rule for what lies in an area:
`net` every void deducted, lined reveals by area. `nrm2` (RICS NRM2, from memory) and `smm7` (SMM7) voids up to 1.00 and
0.50 m2 wholly within the area not deducted, those on its boundary always; areas and lined reveals up to 600 and 300 mm
wide by length, reveals deeper than that by area. `vob` (VOB/C ATV DIN
18340, 18363) voids up to and including 2.5 m2 measured over whatever surrounds them, lined reveals by length (deeper
than 1 m by area), a skirting up to 10 cm measured over. `is1200` (IS 1200 parts 12, 13) up to 0.5 m2 no deduction, up
to 3 m2 one face, beyond both with reveals by area: a lining has one face, which bears the deduction in both steps.
"""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from msgspec import Struct

from roomspec.layout.laid import Lining, Ring
from roomspec.layout.touching import Rect
from roomspec.model.wall import Wall
from roomspec.quantities.area import SQUARE_METRE
from roomspec.quantities.length import METRE, MM
from roomspec.takeoff.clip import Box, Corner, area_of, area_within, box_of, box_round
from roomspec.takeoff.face import outline_of
from roomspec.takeoff.ground import covered
from roomspec.takeoff.voids import Void, area_words, length_words, one_opening, sides, size_words, void_sides, voids_of


class Rule(Struct, frozen=True, cache_hash=True):
    """How a method of measurement treats what lies in an area."""

    over: Fraction
    """Voids up to this, in m2, are measured over."""
    only_within: bool = True
    """False where that holds for voids on the area's boundary too."""
    linear: int = 0
    """Areas up to this wide, in nanometres, are measured by length."""
    skirting_over: int = 0
    """A kept skirting, or a covering turned up, that shows no higher than this is measured over."""
    surround_over: bool = False
    """A kept architrave is measured over and the opening judged alone."""
    adjoining_together: bool = False
    """Openings with nothing between them, such as a door and the window beside it, are judged as one."""
    reveals_beyond: Fraction | None = None
    """Lined reveals are measured where the void is larger than this, in m2; None: never."""
    reveals_linear: int = 0
    """Lined reveals up to this deep, in nanometres, are measured by length, deeper ones by area."""


RULES = {
    "net": Rule(over=Fraction(0), reveals_beyond=Fraction(0)),
    "nrm2": Rule(over=Fraction(1), linear=600 * MM, reveals_beyond=Fraction(0), reveals_linear=600 * MM),
    "smm7": Rule(over=Fraction(1, 2), linear=300 * MM, reveals_beyond=Fraction(0), reveals_linear=300 * MM),
    "vob": Rule(
        over=Fraction(5, 2),
        only_within=False,
        skirting_over=100 * MM,
        surround_over=True,
        adjoining_together=True,
        reveals_beyond=Fraction(0),
        reveals_linear=METRE,
    ),
    "is1200": Rule(over=Fraction(1, 2), only_within=False, reveals_beyond=Fraction(3)),
}


class Measure(Struct, frozen=True, cache_hash=True):
    """A measured quantity: `area` in square nanometres, `length` in nanometres, and the words of each step."""

    area: Fraction
    length: int
    lines: tuple[str, ...]


class _Area(Struct, frozen=True):
    """What is measured: the parts of the face that touching finishes cover."""

    parts: tuple[Sequence[Corner], ...]

    def within(self, box: Box) -> Fraction:
        return sum((area_within(part, box) for part in self.parts), start=Fraction(0))

    def share(self, void: Void) -> Fraction:
        """How much of the void lies in it."""
        return sum((area_of(void.within(part)) for part in self.parts), start=Fraction(0))

    @property
    def bounds(self) -> Box:
        boxes = [box_round(part) for part in self.parts]
        lefts, rights = [box.left for box in boxes], [box.right for box in boxes]
        bottoms, tops = [box.bottom for box in boxes], [box.top for box in boxes]
        return Box(min(lefts), max(rights), min(bottoms), max(tops)) if boxes else Box(0, 0, 0, 0)


def measure_wall(
    wall: Wall,
    linings: Sequence[Lining],
    method: str,
    units: str = "mm",
    hidden: Sequence[Rect] = (),
    plan: tuple[Ring, ...] = (),
) -> Measure:
    """What is measured on a wall by `method`: net, nrm2, smm7, vob or is1200; its words in `units`.

    `hidden` is what boxes hide of it, `plan` the outlines of a ceiling that is no rectangle.
    """
    rule = RULES[method]
    foot = _kept_at_foot(wall)
    lifted = 0 if foot <= rule.skirting_over else foot
    outlines = plan or (outline_of(wall, lifted, wall.keep("cornice")),)
    voids = voids_of(wall, with_surround=not rule.surround_over, hidden=hidden)
    areas = [_area(wall, lining, outlines) for lining in linings]
    measures = [_measure(area, areas[:at], voids, rule, units) for at, area in enumerate(areas)]
    return Measure(
        area=sum((measure.area for measure in measures), start=Fraction(0)),
        length=sum(measure.length for measure in measures),
        lines=tuple(line for measure in measures for line in measure.lines),
    )


def _kept_at_foot(wall: Wall) -> int:
    """How high the wall shows a kept skirting, or a floor covering turned up it, under the panels."""
    turned_up = wall.upstand.height - (wall.upstand.lap or 0) if wall.upstand is not None else 0
    return max(wall.keep("skirting"), turned_up)


def _area(wall: Wall, lining: Lining, outlines: Sequence[Ring]) -> _Area:
    regions = [box_of(wall.finishes[at].region) for at in lining.finishes]
    return _Area(
        tuple(part for region in regions for outline in outlines for part in covered(outline, wall.floor, region))
    )


def _measure(area: _Area, before: Sequence[_Area], voids: Sequence[Void], rule: Rule, units: str) -> Measure:
    """One area. The reveals of a void that lies in several areas are measured with the first; `before` are earlier."""
    bounds = area.bounds
    wide, high = bounds.right - bounds.left, bounds.top - bounds.bottom
    narrow = 0 < min(wide, high) <= rule.linear
    total, length = (Fraction(0), max(wide, high)) if narrow else (area.within(bounds), 0)
    lines = [_by_length(bounds, units) if narrow else _sized(bounds, total, units)]
    added = Fraction(0)
    for void in voids:
        share = area.share(void)
        if not share:
            continue
        if not narrow:
            joined = one_opening(void, voids) if rule.adjoining_together else [void]
            deducted, words = _judge(area, joined, share, rule, units)
            lines.append(words)
            total -= share if deducted else 0
        if any(_reveals_count(other.share(void), rule) for other in before):
            continue
        for linear, square, said in _reveals(void, share, rule, units):
            length, added = length + linear, added + square
            lines.append(said)
    return Measure(max(Fraction(0), total) + added, length, tuple(lines))


def _by_length(bounds: Box, units: str) -> str:
    narrow, along = sorted((bounds.right - bounds.left, bounds.top - bounds.bottom))
    return f"{sides(bounds, units)}: {size_words(narrow, units)} wide, so by length: {length_words(along, units)}"


def _sized(bounds: Box, total: Fraction, units: str) -> str:
    """The area as the product of its sides where it is one."""
    size, square = sides(bounds, units), area_words(total, units)
    return f"{size} = {square}" if total == bounds.area else f"overall {size}, area {square}"


def _judge(area: _Area, joined: Sequence[Void], share: Fraction, rule: Rule, units: str) -> tuple[bool, str]:
    """Whether the first void is deducted, being one opening with those that follow it, and the step in words."""
    void, *others = joined
    partly = f", of which {area_words(share, units)} within this area" if share != void.size else ""
    words = f"{void.name} {void_sides(void, units)} = {area_words(void.size, units)}{partly}"
    if not rule.over or void.always:
        return True, f"{words}: deducted"
    limit = area_words(rule.over * SQUARE_METRE, units)
    if rule.only_within and area.within(void.touch) != void.touch.area:
        return True, f"{words}: on the boundary, deducted"
    beside = "with what adjoins it " if others else ""
    if share + sum(map(area.share, others)) <= rule.over * SQUARE_METRE:
        return False, f"{words}: {beside}not over {limit}, measured over"
    return True, f"{words}: {beside}over {limit}, deducted"


def _reveals_count(share: Fraction, rule: Rule) -> bool:
    """Whether a void of which that much lies in an area has its reveals measured there."""
    return rule.reveals_beyond is not None and share > rule.reveals_beyond * SQUARE_METRE


def _reveals(void: Void, share: Fraction, rule: Rule, units: str) -> Iterator[tuple[int, Fraction, str]]:
    """Each lined reveal that the method measures: its length or its area, and the step in words."""
    if not _reveals_count(share, rule):
        return
    for reveal in void.reveals:
        words = f"{void.name} reveal {reveal.face}"
        if rule.reveals_linear and (reveal.deep is None or reveal.deep <= rule.reveals_linear):
            yield reveal.length, Fraction(0), f"{words}, by length: {length_words(reveal.length, units)}"
        elif reveal.deep is None:
            length = length_words(reveal.length, units)
            yield 0, Fraction(0), f"{words} {length}: depth not recorded, not measured"
        else:
            added = Fraction(reveal.length * reveal.deep)
            size = f"{size_words(reveal.length, units)} x {size_words(reveal.deep, units)}"
            yield 0, added, f"{words} {size} = {area_words(added, units)}: added"
