"""A face that is lined: a wall's own front, a face of a box, an inner face of a niche, a hatch's leaf, a ceiling.

Every face is described as a wall of its own (`wall`: places from its left end, heights from its foot) with what it
meets along its four sides; so one way of laying serves them all.
"""

from msgspec import Struct

from roomspec.layout.corner import Side
from roomspec.layout.laid import Ring
from roomspec.model.wall import Corner, Finish, Wall

CEILING = "ceiling"

Stretch = tuple[int, int, Finish]
"""From and to along a side, and what lines the other face there."""


class Beyond(Struct, frozen=True, cache_hash=True, gc=False):
    """A face that meets this one along a side: what lines it there, and the corner between the two.

    `butts`: this face's panels butt against the other's. `bears`: the corner's trim is counted on this face.
    """

    corner: Corner
    butts: bool
    bears: bool
    lined: tuple[Stretch, ...]


Sideways = tuple[Beyond, ...] | Side | None
"""What lies along one side: faces that are met, a side already known, or None where nothing special is met."""


class Cover(Struct, frozen=True, cache_hash=True, gc=False):
    """A box that stands against a face: left, right, bottom, top of what it hides; heights are above the floor line.

    `sides` are the box's own faces left, right, below and above; None where it shows none (at the floor, in a corner).
    """

    left: int
    right: int
    bottom: int
    top: int
    sides: tuple[Beyond | None, Beyond | None, Beyond | None, Beyond | None]
    to_floor: bool
    to_ceiling: bool


class Face(Struct, frozen=True, cache_hash=True, gc=False):
    """One face to be lined, as a wall of its own.

    `where` names it on its wall (`wall`, `boxing front`, `niche back`, `hatch leaf`, `ceiling`), `place` is the word
    that labour has for it ("" for a wall). `left` and `right` are () at a free end; `foot` and `head` are None at the
    floor and at the ceiling.
    """

    where: str
    place: str
    wall: Wall
    left: Sideways = ()
    right: Sideways = ()
    foot: Sideways = None
    head: Sideways = None
    covers: tuple[Cover, ...] = ()
    plan: tuple[Ring, ...] = ()
    """The outlines of the parts of a ceiling that is no rectangle, anticlockwise within the rectangle round them."""
    corniced: bool = False
    """True for a ceiling whose edges the cornice of the walls' linings covers."""
    lowered: int = 0
    """What a ceiling lined before takes from the face's top."""
    access: int | None = None
    """The longest piece that can be got into the room."""
    trouble: str = ""
    """Why the face cannot be laid."""
