"""The lines of the language as a finite automaton: no rule of a line stands inside itself, so a line needs no stack.

Each state says which words may come next, as the server's reader would take them, and where each leads. States that
allow the same for ever after are one.
"""

from collections.abc import Sequence
from functools import lru_cache

from msgspec import Struct

from roomspec.syntax.statements import placing
from roomspec.syntax.tables import tables
from roomspec_lsp.features.tokens import kind_of

OUTER, INNER, PLAIN = "outer", "inner", "plain"
"""Headings that begin a block, headings that stand inside one, other lines."""
LOOSE = -1
"""Where a word leads that does not fit: the rest of the line is coloured by the look of its words."""


class Step(Struct, frozen=True, order=True):
    """One way on. `word` is a keyword's text, or empty for a value; `terminal` names the value's pattern.

    Values of one pattern and one kind are one step: a name is a name, whatever it names. `declares` marks a name that
    a heading gives.
    """

    terminal: str
    word: str
    kind: str
    declares: bool
    target: int


class State(Struct, frozen=True):
    """What may come next: keywords first, then values, in the order in which they are tried."""

    steps: tuple[Step, ...]

    @property
    def keywords(self) -> tuple[Step, ...]:
        """The steps that are keywords."""
        return tuple(step for step in self.steps if step.word)

    @property
    def values(self) -> tuple[Step, ...]:
        """The steps that are values."""
        return tuple(step for step in self.steps if not step.word)


@lru_cache(1)
def automaton() -> tuple[State, ...]:
    """State 0 is the beginning of a line; the others are numbered as they are met."""
    rows = _explored()
    classes = _merged(rows)
    number: dict[int, int] = {}
    first: list[int] = []
    waiting = [0]
    for row in waiting:
        if classes[row] in number:
            continue
        number[classes[row]] = len(first)
        first.append(row)
        waiting.extend(target for _, target in rows[row])
    states = []
    for row in first:
        steps = {Step(*label, number[classes[target]]) for label, target in rows[row]}
        states.append(State(tuple(sorted(steps, key=lambda step: (not step.word, step)))))
    return tuple(states)


def line_kind(word: str) -> str:
    """What sort of line a word begins."""
    heads = [kind for kind in placing().by_word[word] if kind in placing().table_of]
    if not heads:
        return PLAIN
    return INNER if placing().table_of[heads[0]] in placing().inner else OUTER


def shape_of(terminal: str) -> str:
    """The terminal that stands for all of one pattern: every name has the shape of the first, every quantity too."""
    shared = tables().patterns[terminal]
    return shared if shared in tables().patterns else terminal


_Label = tuple[str, str, str, bool]
_Row = list[tuple[_Label, int]]


def _explored() -> list[_Row]:
    """Every stack that the parser can have inside a line, with its ways on."""
    read = tables()
    seen: dict[tuple[int, ...], int] = {(0,): 0}
    rows: list[_Row] = []
    waiting: list[tuple[int, ...]] = [(0,)]
    for stack in waiting:
        row: _Row = []
        for symbol in read.states[stack[-1]]:
            after = _taken(stack, symbol) if symbol.isupper() and symbol != "$END" else None
            if after is not None:
                if after not in seen:
                    seen[after] = len(seen)
                    waiting.append(after)
                row.append((_label(symbol), seen[after]))
        rows.append(row)
    return rows


def _taken(stack: tuple[int, ...], symbol: str) -> tuple[int, ...] | None:
    """The stack after one more word; None where it does not fit."""
    read = tables()
    states = list(stack)
    while (action := read.states[states[-1]].get(symbol)) is not None:
        if action >= 0:
            return (*states, action)
        origin, size, _ = read.rules[~action]
        del states[len(states) - size :]
        states.append(read.states[states[-1]][origin])
    return None


def _label(symbol: str) -> _Label:
    word = tables().keywords.get(symbol, "")
    return "" if word else shape_of(symbol), word, kind_of(symbol), symbol == "NAME"


def _merged(rows: Sequence[_Row]) -> list[int]:
    """A number for each row; rows with one number allow the same words for ever after (Moore, 1956)."""
    classes = [0] * len(rows)
    while True:
        numbers: dict[tuple[tuple[_Label, int], ...], int] = {}
        finer = []
        for row in rows:
            mark = tuple(sorted({(label, classes[target]) for label, target in row}))
            finer.append(numbers.setdefault(mark, len(numbers)))
        if len(numbers) == len(set(classes)):
            return finer
        classes = finer
