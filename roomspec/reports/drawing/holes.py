"""Openings, what stands against the wall, and boxes: outlines, a cross through what is open, words inside."""

from collections.abc import Sequence

from roomspec.layout.face import obstacle_slab, opening_slab
from roomspec.layout.laid import Line, Ring
from roomspec.layout.openings import lined_faces
from roomspec.layout.slabs import Slab, height_at
from roomspec.layout.touching import Rect
from roomspec.model.wall import Obstacle, Opening, Wall
from roomspec.reports.drawing.boxes import Crowd, Shape, box_round
from roomspec.reports.drawing.drawn import Text
from roomspec.reports.drawing.faces import FaceView
from roomspec.reports.drawing.lettering import SMALL, width_of, words_of, wrapped
from roomspec.reports.drawing.pen import NARROW, WIDE, pen
from roomspec.reports.drawing.placing import Block, place_in, stacked
from roomspec.reports.drawing.plot import Plot, line_path, ring_path
from roomspec.reports.drawing.sizes import size_text, sizes_text
from roomspec.reports.drawing.svg import Value, element
from roomspec.reports.paper.numerals import Numerals
from roomspec.text.listing import listed


def slab_ring(slab: Slab) -> Ring:
    """A slab's outline."""
    x0, x1, bottom0, bottom1, top0, top1 = slab[:6]
    return ((x0, bottom0), (x1, bottom1), (x1, top1), (x0, top0))


def draw_holes(view: FaceView, plot: Plot) -> str:
    """Outlines in millimetres as built; white, so that hatching stops at them."""
    parts = []
    for opening in view.wall.openings:
        ring = _on_face(slab_ring(opening_slab(view.wall, opening, 0)), view)
        if not ring:
            continue
        parts.append(element("path", {**_told("opening", opening.kind, plot), "d": ring_path([ring])}))
        if not opening.panelled:
            a, b, c, d = ring
            cross = line_path([Line(*a, *c), Line(*b, *d)])
            parts.append(element("path", {"class": "open", **pen(NARROW, scale=plot.scale), "d": cross}))
    for obstacle in view.wall.obstacles:
        ring = _on_face(slab_ring(obstacle_slab(view.wall, obstacle, 0)), view)
        if ring:
            parts.append(element("path", {**_told("obstacle", obstacle.kind, plot), "d": ring_path([ring])}))
    for rect in view.hidden:
        ring = box_ring(rect, view.wall)
        parts.append(element("path", {**_told("boxing", "boxing", plot), "d": ring_path([ring])}))
    return "".join(parts)


def label_holes(
    view: FaceView, plot: Plot, numerals: Numerals, crowd: Crowd
) -> tuple[tuple[Text, ...], tuple[tuple[str, ...], ...]]:
    """Words inside the outlines, and rows for the table of what had no room."""
    wall = view.wall
    foot = "up" if view.where == "ceiling" else "sill"
    told = [(slab_ring(opening_slab(wall, one, 0)), _opening_words(one, numerals, foot)) for one in wall.openings]
    told += [(slab_ring(obstacle_slab(wall, one, 0)), _obstacle_words(one, numerals)) for one in wall.obstacles]
    told += [(box_ring(rect, wall), _box_words(rect, wall, numerals)) for rect in view.hidden]
    texts: list[Text] = []
    rows: list[tuple[str, ...]] = []
    for ring, words in told:
        shown = _on_face(ring, view)
        placed, count = _placed(words, plot.ring(shown), crowd) if shown else ((), 0)
        texts += placed
        if count < len(words):
            rows.append((size_text(ring[0][0], numerals), ", ".join(words)))
    return tuple(texts), tuple(rows)


def _on_face(ring: Ring, view: FaceView) -> Ring:
    """What of an outline lies within the face's bounds; () where nothing does, as where a place is mistyped."""
    low, high = view.ends
    kept = tuple((min(max(x, low), high), min(max(y, view.foot), view.height)) for x, y in ring)
    xs, ys = {x for x, _ in kept}, {y for _, y in kept}
    return kept if len(xs) > 1 and len(ys) > 1 else ()


def _placed(words: Sequence[str], shape: Shape, crowd: Crowd) -> tuple[Block, int]:
    """As many of the words as have room in a shape, and how many; with room for trims at the sides if that can be."""
    hull = box_round(shape)
    for count in range(len(words), 0, -1):
        for wide in (hull.right - hull.left - 10.0, hull.right - hull.left - 1.2):
            if any(width_of(part, SMALL) > wide for word in words[:count] for part in words_of(word)):
                continue
            block = stacked([line for word in words[:count] for line in wrapped(word, SMALL, wide)], "opening")
            placed = place_in(block, shape, (), crowd)
            if placed:
                return placed, count
    return (), 0


def box_ring(rect: Rect, wall: Wall) -> Ring:
    """What a box hides: its heights are above the floor line at its middle."""
    left, right, bottom, top = rect
    base = height_at(wall.floor, (left + right) // 2)
    return ((left, base + bottom), (right, base + bottom), (right, base + top), (left, base + top))


def _told(name: str, kind: str, plot: Plot) -> dict[str, Value]:
    return {"class": name, "data-kind": kind, **pen(WIDE, scale=plot.scale, fill="white")}


def _opening_words(opening: Opening, numerals: Numerals, foot: str) -> list[str]:
    size = f"{opening.kind} {sizes_text(opening.width, opening.height, numerals)}"
    words = [opening.label, size] if opening.label else [size]
    if opening.sill:
        words.append(f"{foot} {size_text(opening.sill, numerals)}")
    faces: Sequence[str] = lined_faces(opening)
    deep = opening.deep if opening.kind == "niche" else opening.reveal
    if deep is not None:
        name = "deep" if opening.kind == "niche" else "reveal"
        told = "jambs" if {"left jamb", "right jamb"} <= set(faces) else ""
        sides = [told, *(face for face in faces if not (told and "jamb" in face))] if told else list(faces)
        words.append(f"{name} {size_text(deep, numerals)}" + (f", lined: {listed(sides)}" if sides else ""))
    if opening.panelled:
        words.append("leaf panelled")
    return words


def _obstacle_words(obstacle: Obstacle, numerals: Numerals) -> list[str]:
    name = obstacle.label or obstacle.kind
    size = sizes_text(obstacle.width, obstacle.height, numerals)
    if obstacle.end_height not in (None, obstacle.height):
        size += f" to {size_text(obstacle.end_height, numerals)}"
    words = [name, size]
    return [*words, f"sill {size_text(obstacle.sill, numerals)}"] if obstacle.sill else words


def _box_words(rect: Rect, wall: Wall, numerals: Numerals) -> list[str]:
    """A box of the wall's own by its label and depth; one of a neighbour's by what it hides."""
    left, right, bottom, top = rect
    sill = [f"sill {size_text(bottom, numerals)}"] if bottom > 0 else []
    for box in wall.boxing:
        if box.sill == bottom and max(0, box.x) == left and min(wall.width, box.x + box.width) == right:
            name, size = box.label or "boxing", sizes_text(box.width, box.height, numerals)
            return [name, size, *sill, f"deep {size_text(box.deep, numerals)}"]
    return ["boxing", sizes_text(right - left, top - bottom, numerals), *sill]
