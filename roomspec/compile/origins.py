"""Where each fact of a room, a product, a method or the job is written.

A path names a fact by the model's field names: () the heading, ("purpose",), ("wall", "a"), ("wall", "a", "finishes",
0). Behind it may follow a part of the statement, by the grammar's names in lower case: ("wall", "a", "finishes", 0,
"direction"), ("wall", "a", "openings", 1, "at"), or by the model's: ("wall", "a", "openings", 1, "width").
"""

from msgspec import Struct

from roomspec.compile.parts import span
from roomspec.diagnostics.diagnostic import Origin
from roomspec.syntax.tree import Node, Word

Path = tuple[str | int, ...]


class Source(Struct, frozen=True, gc=False):
    """A statement, or the part of one that makes one fact: its block, its line there, its node; and what it states.

    The value's x is measured from the wall's right end where `from_right` says so, and the whole of it from the other
    end where `handed` does.
    """

    block: str
    line: int
    node: Node
    value: object = None
    from_right: bool = False
    handed: bool = False

    def place(self) -> Origin:
        """All of its words."""
        return Origin(self.block, self.line, *span(self.node))


Fields = dict[str, tuple[Source, ...]]
"""A field of the model -> the statements that make it, in the field's order."""


class Origins(Struct, frozen=True, gc=False):
    """The sources of one thing's facts, with its heading; a room's faces, by kind and name, have their own."""

    head: Source
    fields: Fields
    faces: "dict[Path, Origins]" = {}

    def at(self, path: Path) -> Origin:
        """The words that state the fact at `path`, or else the nearest known place around it; the heading at last."""
        return self._found(path)[0]

    def exact(self, path: Path) -> Origin | None:
        """The words that state the very fact; None where it is not written: a default, or something unknown."""
        place, whole = self._found(path)
        return place if whole else None

    def _found(self, path: Path) -> tuple[Origin, bool]:
        face = self.faces.get(path[:2]) if self.faces else None
        if face is not None:
            return face._found(path[2:])
        sources = self.fields.get(str(path[0])) if path else None
        return _within(sources, path[1:]) if sources else _within((self.head,), path)


_PARTS = {
    "width": ("dimension", "length"),
    "height": ("size",),
    "width_top": ("length",),
    "x": ("at",),
    "panel": ("panel_name",),
    "method": ("method_name",),
    "confirmed": ("dimension",),
    "adhesive": ("adhesive_name",),
    "sealant": ("sealant_name",),
    "support": ("support_name",),
    "layers": ("layer",),
    "amount": ("money",),
}
"""Field of the model -> the parts of the grammar that say it, where the names differ."""


def _within(sources: tuple[Source, ...], rest: Path) -> tuple[Origin, bool]:
    source = sources[0]
    whole = True
    if rest and isinstance(rest[0], int):
        whole = 0 <= rest[0] < len(sources)
        source = sources[rest[0]] if whole else source
        rest = rest[1:]
    if not rest:
        return source.place(), whole
    found: Node | Word = source.node
    for place, step in enumerate(rest):
        if isinstance(step, int):
            continue
        after = rest[place + 1] if place + 1 < len(rest) else 0
        index = after if isinstance(after, int) else 0
        parts = _parts(found, step) if isinstance(found, Node) else ()
        if not 0 <= index < len(parts):
            whole = False
            break
        found = parts[index]
    start, end = (found.start, found.end) if isinstance(found, Word) else span(found)
    return Origin(source.block, source.line, start, end), whole


def _parts(node: Node, name: str) -> tuple[Node | Word, ...]:
    """The parts that go by the name, or by the grammar's names for it."""
    found = _called(node, name)
    for other in _PARTS.get(name, ()):
        found = found or _called(node, other)
    return found


def _called(node: Node, name: str) -> tuple[Node | Word, ...]:
    """The parts of one name in the node itself or, failing that, in the first of its parts that has any."""
    terminal = name.upper()
    here = [part for part in node.parts if (part.kind == name if isinstance(part, Node) else part.type == terminal)]
    if here:
        return tuple(here)
    for part in node.parts:
        if isinstance(part, Node) and (inner := _called(part, name)):
            return inner
    return ()
