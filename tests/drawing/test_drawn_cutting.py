"""Cutting drawings: every part of every pattern where it is cut, and every piece named once."""

import re
from collections import Counter

import pytest
from drawn_jobs import JOBS, drawings_of, made_of
from read_svg import parsed, shapes_of, texts_of

from roomspec.cutting.pattern import Pattern, Rip, Strip
from roomspec.quantities.length import MM
from roomspec.reports.drawing.cutting import names_text
from roomspec.reports.drawing.pattern_bar import Cell, cells_of

COVER, KERF = 250 * MM, 3 * MM


def pattern(*strips: Strip, stock: int = 2600, offcut: int = 0) -> Pattern:
    """One panel."""
    return Pattern(1, stock * MM, strips, offcut * MM)


def strip(length: int, *rips: tuple[str, int, int]) -> Strip:
    """A strip of rips by name, length and width."""
    return Strip(length * MM, tuple(Rip(long * MM, wide * MM, (name,)) for name, long, wide in rips))


def places(cells: list[Cell]) -> list[tuple[str, int, int, int, int]]:
    """Kinds and places in millimetres."""
    return [(c.kind, c.left // MM, c.right // MM, c.bottom // MM, c.top // MM) for c in cells]


def test_a_panel_cut_by_hand():
    """2600: a strip of 2000; a kerf of 3 on, rips of 120 and 100 side by side and 24 of waste; 94 are left over."""
    made = pattern(strip(2000, ("a", 2000, 250)), strip(500, ("b", 500, 120), ("c", 400, 100)), offcut=94)
    assert places(list(cells_of(made, COVER, KERF, {}))) == [
        ("piece", 0, 2000, 0, 250),
        ("piece", 2003, 2503, 0, 120),
        ("piece", 2003, 2403, 123, 223),
        ("waste", 2406, 2503, 123, 223),
        ("waste", 2003, 2503, 226, 250),
        ("offcut", 2506, 2600, 0, 250),
    ]


def test_a_rip_that_needs_the_right_edge_lies_at_it():
    """The panel's right long edge lies at the top."""
    made = pattern(strip(2600, ("a", 2600, 100)))
    assert places(list(cells_of(made, COVER, KERF, {"a": "right"}))) == [
        ("waste", 0, 2600, 0, 147),
        ("piece", 0, 2600, 150, 250),
    ]
    assert places(list(cells_of(made, COVER, KERF, {"a": "left"}))) == [
        ("piece", 0, 2600, 0, 100),
        ("waste", 0, 2600, 103, 250),
    ]


@pytest.mark.parametrize("name", JOBS)
def test_parts_lie_on_the_panel_a_kerf_apart(name):
    """No two pieces or left-overs of a panel are nearer than the saw cut; all lie within it."""
    made = made_of(name)
    kerf = made.job.terms.kerf
    for pooled in made.taken.plans:
        if pooled.kind != "panel":
            continue
        panel = next(panel for room in made.taken.rooms for panel, _ in room.panels if panel.name == pooled.item)
        for one in pooled.plan.patterns:
            cells = [cell for cell in cells_of(one, panel.cover, kerf, {}) if cell.kind != "waste"]
            for at, cell in enumerate(cells):
                assert 0 <= cell.left < cell.right <= one.stock
                assert 0 <= cell.bottom < cell.top <= panel.cover
                for other in cells[at + 1 :]:
                    across = max(cell.left, other.left) - min(cell.right, other.right)
                    up = max(cell.bottom, other.bottom) - min(cell.top, other.top)
                    assert max(across, up) >= kerf


@pytest.mark.parametrize("name", JOBS)
def test_the_drawing_holds_every_pattern(name):
    """Read back from the SVG: as many panels, pieces and left-overs as the plan has, each of its size."""
    made = made_of(name)
    for pooled in made.taken.plans:
        if pooled.kind == "panel":
            sheets = [one for one in drawings_of(name) if cuts(one.name, pooled.item, pooled.pool, made.job.terms.pool)]
            shapes = [shape for sheet in sheets for shape in shapes_of(parsed(sheet.svg))]
            drawn = Counter(size(shape.lines[0]) for shape in shapes if shape.kind == "piece")
            planned = Counter(
                (rip.length, rip.width) for one in pooled.plan.patterns for strip in one.strips for rip in strip.rips
            )
            assert drawn == planned
            left = Counter(size(shape.lines[0])[0] for shape in shapes if shape.kind == "offcut")
            assert left == Counter(one.offcut for one in pooled.plan.patterns if one.offcut)
            counts = [text.words for sheet in sheets for text in texts_of(parsed(sheet.svg)) if text.kind == "count"]
            assert [int(count.split()[0]) for count in counts] == [one.count for one in pooled.plan.patterns]


@pytest.mark.parametrize("name", JOBS)
def test_every_piece_is_named_once(name):
    """On the panel, or in the lists under the panels."""
    made = made_of(name)
    for pooled in made.taken.plans:
        if pooled.kind == "panel":
            sheets = [one for one in drawings_of(name) if cuts(one.name, pooled.item, pooled.pool, made.job.terms.pool)]
            texts = [text for sheet in sheets for text in texts_of(parsed(sheet.svg))]
            on_panel = [text.words for text in texts if text.kind == "piece-name"]
            on_panel += [text.words.split(": ")[0] for text in texts if text.kind == "size" and ": " in text.words]
            listed = " ".join(text.words for text in texts if text.kind == "pieces")
            named = [one for one in on_panel if "/" in one] + spelled_out(listed)
            planned = [name for one in pooled.plan.patterns for s in one.strips for rip in s.rips for name in rip.names]
            assert Counter(named) == Counter(planned)


def cuts(name: str, item: str, pool: str, by: str) -> bool:
    """Whether a drawing of that name shows the plan of that product and pool, on its first sheet or a further one."""
    whole = f"cutting/{item}" if pool == by == "job" else f"cutting/{item}, {pool}"
    return re.fullmatch(re.escape(whole) + "( [0-9]+)?", name) is not None


def size(ring: tuple[tuple[int, int], ...]) -> tuple[int, int]:
    """Along and across."""
    xs, ys = zip(*ring, strict=True)
    return max(xs) - min(xs), max(ys) - min(ys)


def spelled_out(text: str) -> list[str]:
    """`r/a/1 to 3, 5` as r/a/1, r/a/2, r/a/3, r/a/5."""
    names: list[str] = []
    wall = ""
    for found in re.finditer(r"(?:([^\s,]+/[^\s,/]+)/)?\b(\d+)(?: to (\d+))?(?=,|$| [A-Z]{1,2} )", text):
        wall = found[1] or wall
        if wall:
            names += [f"{wall}/{at}" for at in range(int(found[2]), int(found[3] or found[2]) + 1)]
    return names


def test_names_of_one_wall_stand_together():
    """Three or more numbers that follow one another as a range."""
    assert names_text(["g.02/a/1", "g.02/a/2", "g.02/a/3", "g.02/b/7", "g.02/b/9"]) == "g.02/a/1 to 3, g.02/b/7, 9"
