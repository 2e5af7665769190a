"""How a lining ends round an opening.

A lined side is an outside corner with its reveal, finished as the method finishes outside corners; the opening's size
is the hole in the finish, so a mitred side takes nothing and gains nothing. A kept architrave goes round doors, windows
and hatches that are not lined; panels stop at it without trim. Every other side takes the edge trim. A niche's and a
void's sides are edges too.
"""

from roomspec.layout.corner import Side, Sides
from roomspec.model.method import Method
from roomspec.model.product import Trim
from roomspec.model.wall import Opening, Wall

FACES = ("left jamb", "right jamb", "sill", "head")


def lined_faces(opening: Opening) -> tuple[str, ...]:
    """Which of `FACES` are lined with pieces as deep as the reveal; none without a reveal depth."""
    if opening.reveal is None or opening.kind == "niche":
        return ()
    return tuple(face for face in FACES if face in opening.lined or ("jamb" in face and "jambs" in opening.lined))


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
    architrave = wall.keep("architrave")
    if architrave and not opening.lined and opening.kind in ("door", "window", "hatch"):
        return Side("keep", take=architrave)
    edge = method.edge
    return Side("opening", "trim" if edge else "none", edge, edge.allows if edge else 0)
