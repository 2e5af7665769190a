"""A piece of text, from one sure heading to the next, gathered under its headings: the one place where it is decided
to which heading a line belongs."""

from functools import lru_cache

import msgspec
from msgspec import Struct

from roomspec.diagnostics.diagnostic import Diagnostic, Edit, Fix
from roomspec.syntax.gathering import Gathering, Heading, placed
from roomspec.syntax.line import Line, read_line
from roomspec.syntax.misplaced import misplaced, option_again, repeated, units_again
from roomspec.syntax.misreading import Misreading, explain
from roomspec.syntax.parser import Misfit
from roomspec.syntax.recover import broken_heading, deeper_follows, indent
from roomspec.syntax.statements import Placing, placing, words_of
from roomspec.syntax.tree import Node, Placed, Statement

MOST_AGAIN = 5
"""Options given again that are told of in one line."""


class Piece(Struct, frozen=True):
    """What a piece of text holds: its blocks, and what stands under no heading: the `units` line and problems."""

    blocks: tuple[Placed, ...]
    units: str | None
    problems: tuple[Diagnostic, ...]


@lru_cache(8192)
def read_piece(text: str, outside: str, suffix: str = "") -> Piece:
    """Read a piece; `outside` is the key of what stands under no heading, `suffix` is added to its blocks' keys."""
    lines = text.split("\n")
    if "\r" in text:
        lines = [line.rstrip("\r") for line in lines]
    state, place = Gathering(outside, suffix), placing()
    for number, line in enumerate(lines):
        read = read_line(line)
        if read is None:
            continue
        if state.under is not None and indent(line) <= state.under:
            state.under = None
        if isinstance(read, Line):
            _take(state, place, read, number, line)
        else:
            _take_misfit(state, place, read, number, lines)
        if state.blocks:
            state.blocks[-1].last = number
    _count_unsaid(state)
    units = words_of(state.units.node)[1].text if state.units is not None else None
    return Piece(tuple(placed(block, lines) for block in state.blocks), units, tuple(state.problems))


def _take(state: Gathering, place: Placing, line: Line, number: int, text: str) -> None:
    """Put a readable line where it belongs."""
    if state.under is not None:
        return
    node = line.node
    if line.again:
        for option in line.again[:MOST_AGAIN]:
            state.say(option_again(state, option, number, text))
        again = {id(option) for option in line.again}
        node = Node(node.kind, tuple(part for part in node.parts if id(part) not in again))
    if node.kind in place.table_of:
        _open(state, place, node, number, text)
    elif node.kind == "units_in" and state.top is None and state.inner is None:
        if state.units is None:
            state.units = Statement(number, node)
        else:
            state.say(units_again(state, node, number, text))
    else:
        _put(state, place, node, line.mark, number, text)


def _open(state: Gathering, place: Placing, node: Node, number: int, text: str, broken: bool = False) -> None:
    """Open a heading; of a broken one nothing more is said than that."""
    table = place.table_of[node.kind]
    if node.kind not in place.inner:
        state.open(node, table, number)
        return
    held = state.top is not None and table in place.holds[state.top.table]
    if not held and not broken:
        state.inner = None
        state.say(misplaced(state, node, number, text))
    state.open_inside(node, table, number, held)


def _put(state: Gathering, place: Placing, node: Node, mark: str | None, number: int, text: str) -> None:
    """Give a line to the nearest heading that can hold it."""
    holds = place.holds
    target: Heading | None = state.inner or (state.blocks[-1] if state.blocks else None)
    if target is not None and target.dropped and node.kind not in holds[target.table]:
        target = state.top
    if target is None or node.kind not in holds[target.table]:
        if target is not None or not state.headless:
            state.say(misplaced(state, node, number, text))
        state.headless = state.headless or target is None
        return
    if mark is not None and mark in target.marks:
        if not target.dropped:
            state.say(repeated(state, target.marks[mark], node, number, text))
        return
    statement = Statement(number - target.first, node)
    if mark is not None:
        target.marks[mark] = statement
    target.lines.append(statement)


def _take_misfit(state: Gathering, place: Placing, misfit: Misfit, number: int, lines: list[str]) -> None:
    """Report a line that cannot be read; open the heading that it was meant for, or keep the lines under it apart."""
    text = lines[number]
    full = state.full()
    said = explain(text, misfit, state.table) if not full else Misreading(misfit.start, misfit.end, "")
    problem = _unreadable(state, said, number)
    if state.under is not None:
        state.say(problem)
        return
    heading = broken_heading(text, misfit, said.end, state.table) if misfit.read or not full else None
    if heading is None:
        if not misfit.read and deeper_follows(lines, number):
            state.under = indent(text)
            problem = msgspec.structs.replace(
                problem, message=f"{problem.message}; the lines under it are set aside too"
            )
        state.say(problem)
        return
    _open(state, place, heading, number, text, broken=True)
    state.say(_unreadable(state, said, number))


def _unreadable(state: Gathering, said: Misreading, number: int) -> Diagnostic:
    at = state.origin(number, said.start, said.end)
    fixes: tuple[Fix, ...] = ()
    if said.instead is not None:
        title = f"write `{said.instead.strip()}`" if said.instead else "leave it out"
        fixes = (Fix(title, (Edit(at, said.instead),), said.certain),)
    return Diagnostic("unreadable-line", "error", said.message, at, said.help, fixes=fixes)


def _count_unsaid(state: Gathering) -> None:
    if state.unsaid:
        more = len(state.unsaid)
        message = f"{more} more {'lines' if more > 1 else 'line'} from here on cannot be used"
        at = state.unsaid[0]
        owner = next((block for block in state.blocks if block.key == at.block), None)
        problems = owner.problems if owner is not None else state.problems
        problems.append(Diagnostic("unreadable-line", "error", message, at, "is this a room file?"))
