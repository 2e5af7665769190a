"""What is read, checked and formatted, but does not yet change any figure: each such line says so.

An entry leaves this table when the engine computes its effect.
"""

from collections.abc import Callable
from functools import lru_cache

from roomspec.compile.parts import child, children, every_word, has, span, word
from roomspec.compile.reading import MOST
from roomspec.diagnostics.diagnostic import Diagnostic, Origin
from roomspec.names.references import by_kind
from roomspec.syntax.tree import Block, Node

AS_IF = "panels are counted as if it were not there"


def _always(_node: Node) -> bool:
    return True


def _two_widths(node: Node) -> bool:
    return word(node, "LENGTH") is not None and child(node, "dimension") is not None


def _run_on(node: Node) -> bool:
    return any(has(bond, "run-on") for bond in children(node, "bond"))


def _lined(node: Node) -> bool:
    return child(node, "lined") is not None


def _panelled(node: Node) -> bool:
    return child(node, "panelled") is not None


def _by_place(node: Node) -> bool:
    task = child(node, "task")
    return task is not None and any(found.text in ("on", "in", "removing") for found in every_word(task))


Case = tuple[str, Callable[[Node], bool], str]
"""What is not counted, when a statement of the kind is such a case, what is done instead."""

TABLE: dict[str, Case] = {
    "floor": ("the rise of the floor", _always, "the floor is taken as level"),
    "bath": ("the bath", _always, AS_IF),
    "tray": ("the tray", _always, AS_IF),
    "units": ("the units", _always, AS_IF),
    "heat": ("the heat", _always, AS_IF),
    "boxing": ("the boxing", _always, AS_IF),
    "wall": ("the second width of this wall", _two_widths, "panels are counted on the first"),
    "joints": ("where panels meet", _always, "panels meet at their length"),
    "finish": ("a bond that runs on", _run_on, "each row begins with a new panel"),
    "niche": ("the lining of a niche", _lined, "its inner faces are left out"),
    "hatch": ("the panelled leaf of a hatch", _panelled, "it is left out"),
    "upstand": ("the upstand", _always, AS_IF),
    "remove": ("stripping out", _always, "it is not priced"),
    "behind": ("the sheet behind the panels", _always, "it is not ordered"),
    "takes": ("labour by place", _by_place, "this constant is not used"),
}
"""Kind of statement -> the case in which it is not counted."""

OVERHEAD = ("remove",)
"""What is told of a ceiling as it is of a wall; nothing else there changes a figure but its finish."""
CEILING = ("the finish of a ceiling", "ceilings are left out of every figure")
STOCKS = ("a second length", "all panels are cut from the longest")


@lru_cache(8192)
def not_counted(block: Block) -> tuple[Diagnostic, ...]:
    """A `not-yet-counted` warning for each line of the block whose effect is not computed, or the first of many."""
    written = by_kind(block)
    ceilings = tuple(part for part in block.parts if part.kind == "ceiling")
    overhead = {statement.line for part in ceilings for statement in part.lines}
    found = [
        _note(block.key, statement.line, statement.node, *CEILING)
        for part in ceilings
        for statement in part.lines
        if statement.node.kind == "finish"
    ]
    for kind, (what, applies, instead) in TABLE.items():
        for statement in written.get(kind, ()):
            if (kind in OVERHEAD or statement.line not in overhead) and applies(statement.node):
                found.append(_note(block.key, statement.line, statement.node, what, instead))
    if block.kind == "panel":
        found.extend(_note(block.key, s.line, s.node, *STOCKS) for s in written.get("length", ())[1:])
    return tuple(found[:MOST])


def _note(key: str, line: int, node: Node, what: str, instead: str) -> Diagnostic:
    message = f"{what} {'are' if what.endswith('units') else 'is'} read, but not yet counted: {instead}"
    return Diagnostic("not-yet-counted", "warning", message, Origin(key, line, *span(node)))
