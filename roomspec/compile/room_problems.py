"""What is said of a room that does not fit together."""

from collections.abc import Collection

from roomspec.compile.draft import Face
from roomspec.compile.gather import missing
from roomspec.compile.origins import Source
from roomspec.compile.parts import every_word
from roomspec.diagnostics.diagnostic import Diagnostic, Origin
from roomspec.names.suggest import offered
from roomspec.quantities.in_units import is_imperial
from roomspec.syntax.tree import Block


def without_height(block: Block, walls: list[str], units: str) -> Diagnostic:
    """No height for these walls."""
    many = len(walls) > 1
    which = f"wall{'s' if many else ''} {', '.join(walls[:8])}{' ...' if len(walls) > 8 else ''}"
    message = f"nothing says how high {which} {'are' if many else 'is'}; {'they are' if many else 'it is'} left empty"
    return missing(block, message, "height 8 ft" if is_imperial(units) else "height 2400")


def no_such_face(face: Face, pattern: str, known: Collection[str]) -> Diagnostic:
    """A wall or ceiling that would take the place of one that the pattern does not have."""
    at = _name_at(face.source, face.name)
    help_, fixes = offered(at, face.name, known)
    message = f"pattern {pattern} has no {face.kind} {face.name}; it is left out"
    help_ = help_ or f"its {face.kind}s are {_listed(known)}"
    return Diagnostic("unknown-name", "error", message, at, help_, fixes=fixes)


def unknown_end(source: Source, name: str, known: Collection[str]) -> Diagnostic:
    """A diagonal to a wall that the room does not have."""
    at = _name_at(source, name)
    help_, fixes = offered(at, name, known)
    message = f"this room has no wall {name}; the diagonal is left out"
    help_ = help_ or f"its walls are {_listed(known)}"
    return Diagnostic("unknown-name", "error", message, at, help_, fixes=fixes)


def _name_at(source: Source, name: str) -> Origin:
    found = next((word for word in every_word(source.node) if word.text == name), None)
    place = source.place()
    return Origin(place.block, place.line, found.start, found.end) if found is not None else place


def _listed(names: Collection[str]) -> str:
    """The first few names."""
    return ", ".join(sorted(names)[:8]) or "none"
