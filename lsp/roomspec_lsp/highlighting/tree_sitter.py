"""The parser of tree-sitter's runtime: its tables in C (ABI 14), beside the scanner written by hand in `src/scan.h`.

The tables are made here rather than by tree-sitter's own generator: its tokens cannot look past their end, so that
`2000 head` would be two thousand hours; and any line has a tree here, so that none breaks the next.
"""

from collections.abc import Iterable, Sequence
from functools import lru_cache

from msgspec import Struct

from roomspec.syntax.tables import tables
from roomspec_lsp.highlighting.automaton import LOOSE, automaton, shape_of
from roomspec_lsp.highlighting.parse_states import (
    BROKEN,
    COMMENT,
    END,
    LINE_END,
    LOOSE_TERMINALS,
    NODES,
    OPEN,
    Action,
    ParseState,
    nonterminals,
    parse_states,
    symbol_of,
)
from roomspec_lsp.highlighting.scanning import scanner

_VALUES = ("string", "number", "name", "reference", "constant", "x", ",")


class Mode(Struct, frozen=True):
    """What the scanner may find in some states: keywords by their symbols; values by symbol and the scanner's start."""

    keywords: tuple[int, ...]
    values: tuple[tuple[int, int], ...]
    name: int


class Symbols(Struct, frozen=True):
    """Every terminal, the end first, then every nonterminal; `number` finds each."""

    terminals: tuple[str, ...]
    all: tuple[str, ...]
    number: dict[str, int]


@lru_cache(1)
def symbols() -> Symbols:
    """In a fixed order."""
    keywords = sorted({step.word for state in automaton() for step in state.keywords})
    terminals = (END, LINE_END, COMMENT, BROKEN, OPEN, *_VALUES, *keywords)
    every = (*terminals, *nonterminals())
    assert len(set(every)) == len(every)
    return Symbols(terminals, every, {name: at for at, name in enumerate(every)})


def parser_text() -> str:
    """`src/parser.c`."""
    states = parse_states()
    known = symbols()
    values = sorted({step.terminal for state in automaton() for step in state.values})
    scan = scanner([tables().patterns[name] for name in values])
    start = dict(zip(values, scan.starts, strict=True))
    modes: dict[Mode, int] = {}
    of_state = [modes.setdefault(_mode(state.reads, start), len(modes)) for state in states]
    actions: dict[Action, int] = {}
    rows = [_row(state, actions) for state in states]
    places, at = [], 0
    for row in rows:
        places.append(at)
        at += len(row)
    names = [_seen(name) for name in known.all]
    first, rest = _keyword_rows(modes)
    return "\n".join(
        (
            "// Generated from the parser's tables by `python -m roomspec_lsp.highlighting.write`.",
            '#include "language.h"',
            "",
            f"enum {{ TERMINALS = {len(known.terminals)}, SYMBOLS = {len(known.all)}, STATES = {len(states)},",
            f"  CLASSES = {scan.classes}, RANGES = {len(scan.ranges)}, NAME_START = {start[shape_of('NAME')]},",
            f"  BETWEEN_LINES = 0, NUMBER_START = {start[shape_of('LENGTH')]}, STRING_START = {start['STRING']} }};",
            "enum { " + ", ".join(f"sym_{name} = {known.number[name]}" for name in known.terminals[:7]) + " };",
            "",
            _array("char *const", "SYMBOL_NAMES", [f'"{name}"' for name in names]),
            _array("TSSymbolMetadata", "SYMBOL_METADATA", [_metadata(name) for name in known.all]),
            _array("TSSymbol", "PUBLIC_SYMBOLS", [names.index(name) for name in names]),
            _array("TSParseActionEntry", "ACTIONS", _action_entries(actions)),
            _array("uint16_t", "ROWS", [cell for row in rows for cell in row]),
            _array("uint32_t", "ROW_OF", places),
            _array("TSStateId", "STATE_IDS", range(len(states))),
            _array("TSLexMode", "MODE_OF", [f"{{{mode},0}}" for mode in of_state]),
            _array("uint16_t", "KEYWORDS", rest),
            _array("Mode", "MODES", [_mode_entry(mode, *span) for mode, span in zip(modes, first, strict=True)]),
            _array("Range", "CLASS_RANGES", [f"{{{first:#x},{last:#x},{kind}}}" for first, last, kind in scan.ranges]),
            _array("uint16_t", "SCAN[][CLASSES]", [f"{{{','.join(map(str, row))}}}" for row in scan.rows]),
            '#include "scan.h"',
            '#include "export.h"',
            "",
        )
    )


def _mode(state: int, start: dict[str, int]) -> Mode:
    """The mode of a state of the automaton."""
    number = symbols().number
    steps = automaton()[state].steps if state != LOOSE else ()
    keywords = tuple(sorted(number[step.word] for step in steps if step.word))
    values = [step for step in steps if not step.word]
    names = [step for step in values if step.kind == "variable"]
    others = tuple((number[symbol_of(step)], start[step.terminal]) for step in values if step.kind != "variable")
    assert len(names) <= 1 and len(others) <= 2, "src/language.h has room for two"
    return Mode(keywords, others, number[symbol_of(names[0])] if names else 0)


def _mode_entry(mode: Mode, first: int, last: int) -> str:
    values = ",".join(f"{{{symbol},{start}}}" for symbol, start in mode.values)
    return f"{{{first},{last},{mode.name},{len(mode.values)},{{{values or '{0,0}'}}}}}"


def _keyword_rows(modes: Iterable[Mode]) -> tuple[list[tuple[int, int]], list[int]]:
    spans: list[tuple[int, int]] = []
    rest: list[int] = []
    for mode in modes:
        spans.append((len(rest), len(rest) + len(mode.keywords)))
        rest.extend(mode.keywords)
    return spans, rest


def _row(state: ParseState, actions: dict[Action, int]) -> list[int]:
    """A state in the form of a small table: how many groups; for each its value, how many symbols, the symbols.

    `actions` tells where each action stands, after the empty entry: its count, then what it counts.
    """
    number = symbols().number
    groups: dict[int, list[int]] = {}
    for name, action in state.actions.items():
        if action not in actions:
            actions[action] = 1 + sum(len(_done(before)) + 1 for before in actions)
        groups.setdefault(actions[action], []).append(number[name])
    cells = [(value, sorted(held)) for value, held in groups.items()]
    cells += [(target, [number[name]]) for name, target in state.gotos.items()]
    return [len(cells), *(cell for value, held in cells for cell in (value, len(held), *held))]


def _done(action: Action) -> list[str]:
    """An action in C: one, or two for a reduction that a balanced list is taken apart by."""
    number = symbols().number
    shift = f"{{.action={{.shift={{SHIFT,{action.target},false,{str(action.kind == 'reduce').lower()}}}}}}}"
    reduce = f"{{.action={{.reduce={{REDUCE,{action.count},{number.get(action.symbol, 0)},0,0}}}}}}"
    return {
        "shift": [shift],
        "extra": ["{.action={.shift={SHIFT,0,true,false}}}"],
        "reduce": [reduce, shift] if action.target else [reduce],
        "accept": ["{.action={.type=ACCEPT}}"],
        "recover": ["{.action={.type=RECOVER}}"],
    }[action.kind]


def _action_entries(actions: Iterable[Action]) -> list[str]:
    entries = ["{.entry={0,false}}"]
    for action in actions:
        done = _done(action)
        entries += [f"{{.entry={{{len(done)},false}}}}", *done]
    return entries


def _seen(name: str) -> str:
    """The name that a node has in queries."""
    return {OPEN: "string", "block_heading": "heading", "part_heading": "heading"}.get(name, name)


def _metadata(name: str) -> str:
    named = name in (*NODES, COMMENT, *LOOSE_TERMINALS, "name", "reference", "constant")
    visible = not name.startswith("_") and name not in (END, LINE_END)
    return f"{{{str(visible).lower()},{str(named).lower()},false}}"


def _array(kind: str, name: str, entries: Sequence[object]) -> str:
    """A C array, its entries in lines of about 120 letters."""
    lines, line = [], ""
    for entry in map(str, entries):
        if line and len(line) + len(entry) > 118:
            lines.append(line)
            line = ""
        line += f"{entry},"
    brackets = "" if name.endswith("]") else "[]"
    return f"static const {kind} {name}{brackets} = {{\n" + "\n".join((*lines, line)) + "\n};"


def highlights_text(number: str = "number") -> str:
    """`highlights.scm`, which lists the keywords: they are the tree's own words. `number` is the editor's name."""
    words = "\n  ".join(f'"{word}"' for word in symbols().terminals[5 + len(_VALUES) :])
    return (
        "; Generated from the parser's tables by `python -m roomspec_lsp.highlighting.write`.\n"
        f"(comment) @comment\n(string) @string\n(number) @{number}\n(constant) @constant\n"
        '(name) @type\n(reference) @variable\n["x" ","] @operator\n'
        f"[\n  {words}\n] @keyword\n"
    )
