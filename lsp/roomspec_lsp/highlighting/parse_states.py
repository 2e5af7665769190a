"""The automaton as the states of an LR parser: lines as they are read, and blocks of lines under their headings.

Any text has a tree without errors: a word that does not fit leads to a state that takes anything. A line's words are
right-recursive: each is shifted, and after the line's end they are reduced back to its beginning.
"""

from collections.abc import Iterator, Mapping

from msgspec import Struct

from roomspec_lsp.highlighting.automaton import INNER, LOOSE, OUTER, PLAIN, Step, automaton, line_kind

END, LINE_END, COMMENT, BROKEN, OPEN = "end", "line_end", "comment", "broken", "open_string"
"""Terminals beside the grammar's own. `line_end` has no letters, so that a line's node ends with its words;
`open_string` is a text whose quotation mark is not closed on its line."""
LINES = {OUTER: "block_heading", INNER: "part_heading", PLAIN: "statement"}
"""The node of each sort of line."""
NODES = ("source_file", "block", "part", *LINES.values())


class Action(Struct, frozen=True):
    """What a parser does: `shift` to a state, `reduce` so many children to a symbol, take an `extra`, `accept`.

    A `target` beside a reduction is where the runtime comes to when it takes a balanced list apart again.
    """

    kind: str
    target: int = 0
    symbol: str = ""
    count: int = 0


Row = Mapping[str, Action]


class ParseState(Struct, frozen=True):
    """Actions by terminal, states by nonterminal, and the state of the automaton that says which words may come."""

    actions: Row
    gotos: Mapping[str, int]
    reads: int


def symbol_of(step: Step) -> str:
    """The terminal of a step: a keyword is its own; names tell whether a heading gives them."""
    if step.word:
        return step.word
    if step.kind == "variable":
        return "name" if step.declares else "reference"
    return {"enumMember": "constant", "operator": "," if step.terminal == "COMMA" else "x"}.get(step.kind, step.kind)


LOOSE_TERMINALS = (BROKEN, "string", OPEN, "number")
"""What the words of a line that cannot be read are taken for."""


def nonterminals() -> tuple[str, ...]:
    """Nodes, then what holds nodes together and is not seen."""
    return (*NODES, *_LISTS, *(_rest(kind) for kind in LINES))


def _rest(kind: str) -> str:
    return f"_{kind}_rest"


# States by name before they have numbers: ("file", 1), ("word", kind, state) and the like.
_Name = tuple[str | int, ...]
_LISTS: dict[str, tuple[tuple[str, ...], tuple[str, ...]]] = {
    # the nodes that a list holds, the sorts of line that end it
    "_items": (("statement", "part", "block"), ()),
    "_members": (("statement", "part"), (OUTER,)),
    "_lines": (("statement",), (OUTER, INNER)),
}
_OF_LIST = {"file": "_items", "block": "_members", "part": "_lines"}
_WHOLE = {"file": "source_file", "block": "block", "part": "part"}


def parse_states() -> tuple[ParseState, ...]:
    """State 0 is the one that the runtime takes where it is lost, state 1 the beginning of a file."""
    names = [("lost",), ("file", 0), ("accept",), *(name for name in _names() if name != ("file", 0))]
    number = {name: at for at, name in enumerate(names)}
    assert len(number) == len(names)
    return tuple(_state(name, number) for name in names)


def _names() -> Iterator[_Name]:
    for place, held in _OF_LIST.items():
        yield from ((place, 0), (place, 1), (place, 2), (held,))
    for kind in LINES:
        yield from (("whole", kind), ("rest", kind), ("ended", kind))
        waiting = [step.target for step in automaton()[0].steps if line_kind(step.word) == kind]
        reached = [LOOSE]
        for state in waiting:
            if state not in reached:
                reached.append(state)
                waiting.extend(step.target for step in automaton()[state].steps)
        yield from (("word", kind, state) for state in reached)


def _state(name: _Name, number: Mapping[_Name, int]) -> ParseState:
    sort, at = name[0], name[-1]
    if sort == "accept":
        return ParseState({END: Action("accept")}, {}, 0)
    if sort == "lost":
        return ParseState(_everywhere(Action("recover")), {}, 0)
    if sort == "word":
        return _inside_line(str(name[1]), int(at), number)
    if sort in ("rest", "ended"):
        return ParseState(_everywhere(Action("reduce", symbol=_rest(str(at)), count=2)), {}, 0)
    if sort == "whole":
        return ParseState(_everywhere(Action("reduce", symbol=LINES[str(at)], count=1)), {}, 0)
    if sort in _LISTS:
        return ParseState(_everywhere(Action("reduce", symbol=str(sort), count=1)), {}, 0)
    return _between_lines(str(sort), int(at), number)


def _everywhere(action: Action) -> dict[str, Action]:
    """For whatever can come between two lines."""
    first = [step.word for step in automaton()[0].steps]
    return dict.fromkeys((END, *LOOSE_TERMINALS, *first), action) | _COMMENTS


_COMMENTS = {COMMENT: Action("extra")}


def _inside_line(kind: str, state: int, number: Mapping[_Name, int]) -> ParseState:
    lost = Action("shift", number["word", kind, LOOSE])
    actions = {LINE_END: Action("shift", number["ended", kind])} | _COMMENTS
    actions |= dict.fromkeys(LOOSE_TERMINALS, lost)
    steps = automaton()[state].steps if state != LOOSE else ()
    found = {symbol_of(step): Action("shift", number["word", kind, step.target]) for step in steps}
    assert len(found) == len(steps), "two ways on by one terminal"
    return ParseState(actions | found, {_rest(kind): number["rest", kind]}, state)


def _between_lines(place: str, lists: int, number: Mapping[_Name, int]) -> ParseState:
    """Before the first of a list's nodes, after a list, or after two, which are then made one."""
    held = _OF_LIST[place]
    nodes, ending = _LISTS[held]
    children = lists if place == "file" else 1 + lists
    whole = Action("reduce", symbol=held if lists == 2 else _WHOLE[place], count=2 if lists == 2 else children)
    actions: dict[str, Action] = dict(_COMMENTS)
    ways = {step.word: (line_kind(step.word), step.target) for step in automaton()[0].steps}
    ways |= dict.fromkeys(LOOSE_TERMINALS, (PLAIN, LOOSE))
    for symbol, (kind, state) in ways.items():
        target = number["word", kind, state]
        shift = Action("reduce", target, held, 2) if lists == 2 else Action("shift", target)
        actions[symbol] = whole if kind in ending else shift
    gotos = {_rest(kind): number["whole", kind] for kind in LINES if kind not in ending}
    gotos |= dict.fromkeys(nodes, number[(held,)]) | {held: number[place, min(lists + 1, 2)]}
    gotos |= {LINES[kind]: number[into, 0] for kind, into in ((OUTER, "block"), (INNER, "part")) if kind not in ending}
    if place == "file" and not lists:
        gotos["source_file"] = number[("accept",)]
    return ParseState(actions | {END: whole}, gotos, 0)
