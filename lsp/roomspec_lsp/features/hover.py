"""What is shown when somebody points at a word."""

from collections.abc import Sequence
from fractions import Fraction

from msgspec import Struct

from roomspec.analysis.found import Place
from roomspec.checks.registry import record_of
from roomspec.layout.laid import WallLayout
from roomspec.model.room import Room
from roomspec.names.kinds import USED
from roomspec.quantities.area import m2_decimal
from roomspec.quantities.length import shown_mm
from roomspec.syntax.numerals import Trap
from roomspec.syntax.quantity import read_length
from roomspec.syntax.statements import placing
from roomspec.syntax.tables import tables
from roomspec.syntax.tree import Block, Word
from roomspec.takeoff.load import loads_on
from roomspec_lsp.features.pages import block_page, check_page, statement_page
from roomspec_lsp.features.units import in_other_units
from roomspec_lsp.features.view import Standing, View


class Hover(Struct, frozen=True):
    """Markdown, and the words that it is about."""

    text: str
    place: Place
    drawing: tuple[str, str] | None = None
    """The room and the part of it, such as `wall a`, whose drawing goes with it."""


def hover_at(view: View, at: Standing) -> Hover | None:
    """On a wall's heading, a name, a length, a check, or a line's first word."""
    word = at.word
    if word is None:
        return None
    place = view.place(at.line, word.start, word.end)
    if at.part is not None and at.statement is at.part.head and at.part.kind == "wall" and word.type != "LENGTH":
        assert at.placed is not None
        rooms = rooms_of(view, at.placed.block)
        text = wall_page(view, rooms, at.part.name)
        if text:
            return Hover(text, place, (rooms[0].name, f"wall {at.part.name}"))
    text = _on_word(view, at, word)
    return Hover(text, place) if text else None


def _on_word(view: View, at: Standing, word: Word) -> str:
    if word.type == "LENGTH":
        length = read_length(word.text, view.tree.units)
        return "" if isinstance(length, Trap) else " = ".join(in_other_units(length))
    if word.type == "CHECK_NAME":
        check = record_of(word.text)
        return check_page(check) if check is not None else ""
    if word.type in USED:
        found = view.snapshot.names.find(USED[word.type], word.text)
        return block_page(found.block, found.path) if found is not None else ""
    if word.type in tables().keywords and at.statement is not None and _leads(at.statement.node.kind, word):
        return statement_page(at.statement.node.kind)
    return ""


def _leads(kind: str, word: Word) -> bool:
    return kind in placing().by_word.get(word.text, ())


def rooms_of(view: View, block: Block) -> tuple[Room, ...]:
    """The rooms that a block describes: itself, those that it repeats, or those made from a pattern."""
    names = view.snapshot.names
    made = view.snapshot.compiled.job.rooms
    if block.kind == "pattern":
        return tuple(room for room in made if room.pattern == block.name)
    own = {name for name, definition in names.rooms.items() if definition.block is block}
    return tuple(room for room in made if room.name in own)


def wall_page(view: View, rooms: Sequence[Room], name: str) -> str:
    """A wall as it is laid in the first room that has it: its area, and each lining's panels, end strips and load."""
    room = next((one for one in rooms if any(wall.name == name for wall in one.walls)), None)
    if room is None:
        return ""
    at = next(number for number, wall in enumerate(room.walls) if wall.name == name)
    laid = view.snapshot.layout(room).walls[at]
    head = f"**wall {name}** of room {room.name}" + (f" and {len(rooms) - 1} more" if len(rooms) > 1 else "")
    wall = room.walls[at]
    size = f"{shown_mm(wall.width)} wide, {area(laid.gross)}" + (
        f", {area(laid.net)} without openings" if laid.net != laid.gross else ""
    )
    return "\n\n".join([head, size, *_linings(room, at, laid)])


def _linings(room: Room, at: int, laid: WallLayout) -> list[str]:
    said = []
    for lining in laid.linings:
        lines = [f"`{lining.panel.name}` by `{lining.method.name}`, {lining.direction}: {area(lining.area)}"]
        pieces = sum(piece.where == "wall" for piece in lining.pieces)
        lines.append(f"{pieces} pieces" + _strips(lining.strips, lining.direction))
        load = next(iter(loads_on(room.walls[at], lining)), None)
        if load is not None:
            on = f" on {load.layer}" if load.layer else ""
            limit = f" of {load.limit} that it may carry" if load.limit is not None else ""
            lines.append(f"load {load.load:.1f} kg/m2{on}{limit}")
        said.append("\\\n".join([*lines, *lining.troubles]))
    return said or ["no lining"]


def _strips(strips: tuple[int, ...], direction: str) -> str:
    if len(strips) < 2:
        return ""
    first, last = ("left", "right") if direction == "vertical" else ("bottom", "top")
    return f", {shown_mm(strips[0])} at the {first}, {shown_mm(strips[-1])} at the {last}"


def area(square_nanometres: Fraction | int) -> str:
    """Square metres, to the nearest hundredth."""
    return f"{m2_decimal(square_nanometres, 2)} m2"
