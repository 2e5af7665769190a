"""Pieces that line the reveals of openings.

A reveal is lined as deep as it is plus the lining's build-up, for the wall's lining stands off by as much. Panels lie
with their long way along the jamb, the head and the sill; jambs are as long as the opening is high, head and sill as
long as it is wide. A reveal deeper than a cover takes whole panels from its outer edge inwards and a cut one at the
frame; one longer than a panel is broken at the panel's length. The inner end meets the frame without trim. Outlines
are on the reveal's own face: for jambs x goes into the wall and y up, for heads and sills x along and y into the wall.
One lining lines all faces of an opening: the first that meets it beside or over it, else the first under it.
A niche's inner faces are laid as faces (`recesses.py`).
"""

from collections.abc import Sequence

from roomspec.layout.extent import Run
from roomspec.layout.laid import Border, Line, Piece
from roomspec.layout.openings import lined_faces
from roomspec.layout.set_out import strips_from_joint
from roomspec.layout.slabs import half, height_at
from roomspec.model.wall import Opening, Wall

_SIDES = {(False, False): "none", (True, False): "left", (False, True): "right", (True, True): "both"}


def reveals_by_run(wall: Wall, borders: Sequence[Sequence[Border]]) -> list[list[int]]:
    """For each run, from its borders, the openings whose reveals it lines."""
    owners: dict[int, tuple[bool, int]] = {}
    for run, lines in enumerate(borders):
        for border in lines:
            at = border.opening
            if border.kind == "reveal" and at is not None and wall.openings[at].kind != "niche":
                owner = (_is_under(wall, wall.openings[at], border.line), run)
                owners[at] = min(owners.get(at, owner), owner)
    return [[at for at in sorted(owners) if owners[at][1] == run] for run in range(len(borders))]


def _is_under(wall: Wall, opening: Opening, line: Line) -> bool:
    middle = height_at(wall.floor, (opening.x + opening.right) // 2) + (opening.sill + opening.top) // 2
    return line.y0 == line.y1 and line.y0 < middle


def reveal_pieces(run: Run, opening: Opening, number: int) -> list[Piece]:
    """The pieces that line an opening's faces, numbered from `number`."""
    deep = (opening.reveal or 0) + run.method.batten_depth + run.panel.thick
    out: list[Piece] = []
    for face in lined_faces(opening):
        jamb = face.endswith("jamb")
        along = opening.height if jamb else opening.width
        widths = strips_from_joint(0, deep, run.panel.cover, 0)
        lengths = strips_from_joint(0, along, run.longest, 0)
        into = 0
        for strip, width in enumerate(widths):
            at = 0
            for place, length in enumerate(lengths):
                (x0, x1), (y0, y1) = (into, into + width), (at, at + length)
                if not jamb:
                    (x0, x1), (y0, y1) = (y0, y1), (x0, x1)
                ends = (place > 0, place + 1 < len(lengths)) if run.panel.joined == "all edges" else (False, False)
                out.append(Piece(
                    number + len(out),
                    place + 1 if jamb else strip + 1, strip + 1 if jamb else place + 1,
                    ((x0, y0), (x1, y0), (x1, y1), (x0, y1)), (), half(2 * width * length), length, width,
                    _SIDES[strip > 0, strip + 1 < len(widths)], _SIDES[ends],
                    strip % max(1, run.panel.sequence), f"{opening.kind} {face}",
                ))  # fmt: skip
                at += length
            into += width
    return out
