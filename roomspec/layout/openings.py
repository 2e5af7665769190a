"""How a lining ends round an opening.

A lined side is an outside corner with its reveal, finished as the method finishes outside corners; the opening's size
is the hole in the finish, so a mitred side takes nothing and gains nothing. A kept architrave goes round doors, windows
and hatches that are not lined; panels stop at it without trim. A new one goes there in place of the edge trim, which
every other side takes. A void's sides are edges too, and a niche's where it is not lined.
"""

from functools import lru_cache

from roomspec.layout.corner import Side, Sides
from roomspec.layout.ends import beside, trimmed
from roomspec.layout.plane import Cover
from roomspec.model.method import Method
from roomspec.model.product import Trim
from roomspec.model.wall import Finish, Opening, Wall

FACES = ("left jamb", "right jamb", "sill", "head")


def lined_faces(opening: Opening) -> tuple[str, ...]:
    """Which of `FACES` are lined as deep as the reveal, or the niche; none without a depth."""
    if not opening.lined or (opening.deep if opening.kind == "niche" else opening.reveal) is None:
        return ()
    return _faces_named(opening.lined)


@lru_cache(64)
def _faces_named(lined: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(face for face in FACES if face in lined or ("jamb" in face and "jambs" in lined))


def sides_of(wall: Wall, opening: Opening, method: Method) -> Sides:
    """How the lining ends left of, right of, below and above an opening; `take` is what each side is grown by."""
    lined = lined_faces(opening)
    other = _unlined(wall, opening, method)
    if not lined:
        return other, other, other, other
    corner = method.outside_corner
    trim = corner if isinstance(corner, Trim) else None
    treatment = "trim" if trim else corner if isinstance(corner, str) else "none"
    reveal = Side("reveal", treatment, trim, trim.allows if trim else 0)
    left, right, below, above = (reveal if face in lined else other for face in FACES)
    return left, right, below, above


def _unlined(wall: Wall, opening: Opening, method: Method) -> Side:
    kept, trim = wall.keep("architrave"), method.edge
    if not opening.lined and opening.kind in ("door", "window", "hatch"):
        if kept:
            return Side("keep", take=kept)
        trim = method.architrave or trim
    return trimmed("opening", trim)


def cover_sides(cover: Cover, finish: Finish) -> Sides:
    """How a lining ends left of, right of, below and above a box; an edge against a face of it that is bare."""
    left, right, below, above = (beside(beyond, finish) for beyond in cover.sides)
    return left, right, below, above
