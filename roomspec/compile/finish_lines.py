"""The `finish` line: panel and method by name, and how the panels are set out."""

from msgspec import Struct

from roomspec.compile.amounts import HEIGHT, WALL, length
from roomspec.compile.parts import child, choice, span, word
from roomspec.compile.reading import Fact, Line, Reader, complain
from roomspec.compile.regions import region
from roomspec.model.shape import Region, SetOut
from roomspec.syntax.tree import Node, Word


class FinishLine(Struct, frozen=True, cache_hash=True, gc=False):
    """A finish before its panel and method are put in; `direction` is "" where none is said."""

    panel: str
    method: str
    direction: str
    bond: str
    start: SetOut
    rows: SetOut
    region: Region


def _finish(line: Line) -> tuple[Fact, ...]:
    node = line.node
    panel, method = word(node, "PANEL_NAME"), word(node, "METHOD_NAME")
    if panel is None or method is None:
        return ()
    start, rows = child(node, "start"), child(node, "rows")
    where = region(line, node)
    if where is None:
        return ()
    value = FinishLine(
        panel.text,
        method.text,
        _direction(line),
        _second(child(node, "bond")) or "stacked",
        _set_out(line, start, WALL) or SetOut("left"),
        _set_out(line, rows, HEIGHT) or SetOut("bottom"),
        where,
    )
    return (Fact("finishes", value),)


def _direction(line: Line) -> str:
    """On a wall vertical or horizontal, on a ceiling lengthwise or crosswise; the other face's words are put right."""
    node = line.part("direction")
    said = choice(node)
    wanted = _INSTEAD["ceiling" if line.table == "ceiling" else "wall"].get(said)
    if node is None or wanted is None:
        return said
    where = "a ceiling" if line.table == "ceiling" else "a wall"
    message = f"panels on {where} do not run {said}"
    complain(line, "impossible-value", message, span(node), f"write `{wanted}`", (wanted,))
    return wanted


_INSTEAD = {
    "wall": {"lengthwise": "horizontal", "crosswise": "vertical"},
    "ceiling": {"horizontal": "lengthwise", "vertical": "crosswise"},
}


def _second(node: Node | None) -> str:
    part = node.parts[1] if node is not None and len(node.parts) > 1 else None
    return part.text if isinstance(part, Word) else ""


def _set_out(line: Line, node: Node | None, most: int) -> SetOut | None:
    if node is None:
        return None
    found = word(node, "LENGTH")
    return SetOut(_second(node), length(line, found, "a place", 0, most, True) if found is not None else None)


FINISH: dict[str, Reader] = {"finish": _finish}
