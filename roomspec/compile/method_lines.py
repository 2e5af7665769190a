"""The lines of a method. Products stand in them by name; `methods` puts the products in."""

from msgspec import Struct

from roomspec.compile.amounts import BESIDE, SMALL, length, number
from roomspec.compile.parts import child, choice, has, word, words
from roomspec.compile.product_lines import note
from roomspec.compile.reading import Fact, Line, Reader, complain
from roomspec.model.method import Gap, More
from roomspec.quantities.length import METRE, MM
from roomspec.syntax.tree import Node, Word

BEAD = 50 * MM
THINNEST = MM // 2
"""No gun lays a thinner bead, and no seal holds."""
CLOSEST = 10 * MM
"""Beads and fixings nearer than this are one."""


class GlueLine(Struct, frozen=True, gc=False):
    """`glue`: the adhesive by its name."""

    adhesive: str
    bead: int
    every: int
    first: bool


class SealLine(Struct, frozen=True, gc=False):
    """`seal`: the sealant by its name."""

    sealant: str
    shape: str
    a: int
    b: int
    places: tuple[str, ...]


class BattenLine(Struct, frozen=True, gc=False):
    """One layer of `battens`: the support by its name."""

    support: str
    every: int
    direction: str | None


class FixLine(Struct, frozen=True, gc=False):
    """`fix`: the fixing by its name."""

    fixing: str
    every: int


def _glue(line: Line) -> tuple[Fact, ...]:
    bead, every = words(line.node, "LENGTH")
    diameter = length(line, bead, "a bead", THINNEST, BEAD)
    pitch = length(line, every, "a spacing of beads", CLOSEST, SMALL)
    if diameter is None or pitch is None:
        return ()
    return (Fact("glue", GlueLine(_name(line.node, "ADHESIVE_NAME"), diameter, pitch, has(line.node, "first"))),)


def _more(line: Line) -> tuple[Fact, ...]:
    percent = number(line, "PERCENT", "a percentage", 0, 1000)
    return () if percent is None else (Fact("more", More(percent, choice(line.part("substrate")))),)


def _seal(line: Line) -> tuple[Fact, ...]:
    for rule, shape in (("bead", "bead"), ("fillet", "fillet"), ("joint_fill", "joint")):
        section = line.part(rule)
        if section is None:
            continue
        sizes = tuple(length(line, found, f"a {shape}", THINNEST, BEAD) for found in words(section, "LENGTH"))
        places = tuple(choice(place) for place in line.all("seal_place"))
        a, b = sizes[0], sizes[-1]
        if a is not None and b is not None:
            name = _name(line.node, "SEALANT_NAME")
            return (Fact("seals", SealLine(name, shape, a, b, tuple(dict.fromkeys(places)))),)
    return ()


def _battens(line: Line) -> tuple[Fact, ...]:
    found = []
    for layer in line.all("batten_layer"):
        every = length(line, word(layer, "LENGTH"), "a spacing of battens", BESIDE, SMALL)
        if every is None:
            return ()
        direction = choice(child(layer, "orientation")) or None
        found.append(Fact("battens", BattenLine(_name(layer, "SUPPORT_NAME"), every, direction), node=layer))
    return tuple(found)


def _screw(line: Line) -> tuple[Fact, ...]:
    return (Fact("screw", _name(line.node, "FIXING_NAME")),)


def _fix(line: Line) -> tuple[Fact, ...]:
    every = length(line, word(line.node, "LENGTH"), "a spacing of fixings", CLOSEST, SMALL)
    return () if every is None else (Fact("fix", FixLine(_name(line.node, "FIXING_NAME"), every)),)


def _behind(line: Line) -> tuple[Fact, ...]:
    return (Fact("behind", _name(line.node, "SHEET_NAME")),)


def _scribe(line: Line) -> tuple[Fact, ...]:
    value = length(line, word(line.node, "LENGTH"), "a scribe", 0, METRE)
    return () if value is None else (Fact("scribe", value),)


def _gap(line: Line) -> tuple[Fact, ...]:
    value = length(line, word(line.node, "LENGTH"), "a gap", 0, METRE)
    at = line.node.parts[3:]
    places = tuple(part.text for part in at if isinstance(part, Word))
    return () if value is None else tuple(Fact("gaps", Gap(value, place)) for place in dict.fromkeys(places))


def _trimming(line: Line) -> tuple[Fact, ...]:
    """A trim by its name, or how a corner goes without one."""
    role = choice(line.part("trim_role"))
    field = role.replace("-", "_")
    name = word(line.node, "TRIM_NAME")
    if name is not None:
        return (Fact(field, name.text),)
    way = line.node.parts[-1]
    if role in ("inside-corner", "outside-corner") and isinstance(way, Word):
        return (Fact(field, Untrimmed(way.text)),)
    if isinstance(way, Word):
        complain(line, "impossible-value", f"only a corner is {way.text}, not {role}", way, "name a trim")
    return ()


class Untrimmed(Struct, frozen=True, gc=False):
    """A corner without trim: `mitred` or `butted`."""

    way: str


def _name(node: Node, kind: str) -> str:
    found = word(node, kind)
    return found.text if found is not None else ""


METHOD: dict[str, Reader] = {
    "glue": _glue,
    "more": _more,
    "seal": _seal,
    "battens": _battens,
    "screw": _screw,
    "fix": _fix,
    "behind": _behind,
    "scribe": _scribe,
    "gap": _gap,
    "trimming": _trimming,
    "note": note,
}
