"""Faces in a face's openings: the inner faces of a lined niche, the leaf of a panelled hatch.

A niche's size is the hole in the finish and its depth that of the hole in the wall: the back is as large as the
opening, jambs, head and sill are as deep as the niche, for the lining in front adds what the back's takes. The back is
laid as the face is; jambs, head and sill with their long way along the opening, from its outer edge inwards. Inside
corners are finished as the method finishes them and borne by the back, then by head and sill; the outer edge is borne
by the face round it. The finish is that of the face at each side of the opening.

A leaf takes up the joints of the run round it and gets the method's edge trim on all sides.
"""

from collections.abc import Iterator, Sequence

from msgspec.structs import replace

from roomspec.layout.corner import Side
from roomspec.layout.ends import trimmed
from roomspec.layout.extent import Run
from roomspec.layout.openings import FACES, lined_faces
from roomspec.layout.plane import CEILING, Face
from roomspec.layout.seen import finishes_in, points_in, wet_in
from roomspec.layout.touching import Rect
from roomspec.model.method import Method
from roomspec.model.product import Trim
from roomspec.model.shape import SetOut, level
from roomspec.model.wall import Finish, Opening, Wall


def niche_faces(face: Face) -> Iterator[Face]:
    """The inner faces of a face's lined niches: the back, then those that are lined besides."""
    niches = [one for one in openings_of(face) if one.kind == "niche" and lined_faces(one)]
    for at, niche in enumerate(niches, 1):
        name = _title(face, f"niche {at}" if len(niches) > 1 else "niche")
        yield from (made for made in _inner_faces(face, niche, name) if made.wall.finishes)


def leaf_faces(face: Face, runs: Sequence[Run]) -> Iterator[Face]:
    """The leaves of a face's panelled hatches; `runs` are what is laid on the face."""
    hatches = [opening for opening in openings_of(face) if opening.panelled]
    for at, hatch in enumerate(hatches, 1):
        name = _title(face, f"hatch {at} leaf" if len(hatches) > 1 else "hatch leaf")
        window = (hatch.x, hatch.right, hatch.sill, hatch.top)
        finishes = tuple(_joined_up(finish, run, hatch) for run in runs for finish in _of_run(face.wall, run, window))
        if finishes:
            edge = _edge(finishes[0].method)
            wall = _plain(face.wall, hatch.width, hatch.height, finishes, window)
            yield Face(name, face.place, wall, edge, edge, edge, edge, access=face.access)


def openings_of(face: Face) -> list[Opening]:
    """The openings of a face but for those in a box that stands against it: they are the box's."""
    return [
        opening
        for opening in face.wall.openings
        if not any(
            cover.left <= opening.x
            and opening.right <= cover.right
            and cover.bottom <= opening.sill
            and opening.top <= cover.top
            for cover in face.covers
        )
    ]


def _title(face: Face, name: str) -> str:
    return name if face.where in ("wall", CEILING) else f"{face.where} {name}"


def _of_run(wall: Wall, run: Run, window: Rect) -> tuple[Finish, ...]:
    own = replace(wall, finishes=tuple(wall.finishes[at] for at in run.finishes))
    return finishes_in(own, window)


def _joined_up(finish: Finish, run: Run, hatch: Opening) -> Finish:
    """The finish set out from a joint of the run: the first on the leaf, or of the first whole set there."""
    left, _, bottom, _ = run.bounds
    if not run.strips:
        return finish
    again = run.panel.cover * run.panel.sequence
    if run.upright:
        return replace(finish, start=SetOut("joint", (left + run.strips[0] - hatch.x) % again))
    return replace(finish, rows=SetOut("joint", (bottom + run.strips[0] - hatch.sill) % again))


def _plain(wall: Wall, width: int, height: int, finishes: tuple[Finish, ...], window: Rect) -> Wall:
    return Wall(
        wall.name, width, width, level(width, height), level(width, 0), finishes=finishes,
        wet=wet_in(wall, window), points=points_in(wall, window),
    )  # fmt: skip


def _inner_faces(face: Face, niche: Opening, name: str) -> Iterator[Face]:
    lined = lined_faces(niche)
    x0, x1, y0, y1, deep = niche.x, niche.right, niche.sill, niche.top, niche.deep or 0
    back = finishes_in(face.wall, (x0, x1, y0, y1))
    if not back:
        return
    windows = ((x0, x0 + 1, y0, y1), (x1 - 1, x1, y0, y1), (x0, x1, y0, y0 + 1), (x0, x1, y1 - 1, y1))
    left, right, foot, head = (
        _inner(back[0].method, True) if side in lined else _edge(back[0].method) for side in FACES
    )
    wall = _plain(face.wall, niche.width, niche.height, back, (x0, x1, y0, y1))
    yield Face(f"{name} back", "reveals", wall, left, right, foot, head, access=face.access)
    for side, window in zip(FACES, windows, strict=True):
        if side not in lined:
            continue
        jamb = "jamb" in side
        finishes = tuple(_along(finish, side) for finish in finishes_in(face.wall, window))
        if not finishes:
            continue
        method = finishes[0].method
        outer, at_back = Side("reveal", shared=True), _inner(method, False)
        ends = [
            _inner(method, not jamb) if other in lined else _edge(method)
            for other in (FACES[2:] if jamb else FACES[:2])
        ]
        size = (deep, niche.height) if jamb else (niche.width, deep)
        plane = replace(_plain(face.wall, *size, finishes, window), points=())
        depth = (outer, at_back) if side in ("left jamb", "sill") else (at_back, outer)
        left, right, foot, head = (*depth, *ends) if jamb else (*ends, *depth)
        yield Face(f"{name} {side}", "reveals", plane, left, right, foot, head, access=face.access)


def _edge(method: Method) -> Side:
    return trimmed("opening", method.edge)


def _inner(method: Method, bears: bool) -> Side:
    named = method.inside_corner
    trim = named if isinstance(named, Trim) else None
    treatment = "trim" if trim else named if isinstance(named, str) else "none"
    return Side("inside-corner", treatment, trim, trim.allows if trim else 0, shared=not bears)


def _along(finish: Finish, side: str) -> Finish:
    """The finish with its long way along the opening's side, set out from the outer edge."""
    if "jamb" in side:
        return replace(finish, direction="vertical", start=SetOut("left" if side == "left jamb" else "right"))
    return replace(
        finish, direction="horizontal", start=SetOut("left"), rows=SetOut("bottom" if side == "sill" else "top")
    )
