"""Patterns of Python's as one deterministic automaton over classes of characters, for a scanner that cannot go back.

It takes what `re` would take: where several ways fit, the first one written, not the longest. A pattern may look at the
one character after it (`(?!...)`); the automaton sees that character before it takes it.
"""

import re
import sys
from collections.abc import Iterable, Sequence
from functools import lru_cache
from itertools import groupby
from typing import Any

from msgspec import Struct

_parser: Any = getattr(re, "_parser")  # noqa: B009 - the parser of `re`; it has no public name
_HIGHEST = sys.maxunicode

_Threads = tuple[int, ...]
Chars = tuple[tuple[int, int], ...]
"""Ranges of code points, both ends in it, in order."""


class Scanner(Struct, frozen=True):
    """`ranges` give each code point's class: (first, last, class), 0 for all others; the last class is the text's end.

    `starts` are the patterns' first states. `rows[state][class]` is twice the next state (0: none), plus one where what
    was taken so far fits.
    """

    ranges: tuple[tuple[int, int, int], ...]
    classes: int
    starts: tuple[int, ...]
    rows: tuple[tuple[int, ...], ...]


class _Program(Struct):
    """Instructions: ("char", set), ("not next", set), ("split", first, second), ("fits",)."""

    code: list[tuple[Any, ...]]
    sets: dict[Chars, int]


def scanner(patterns: Sequence[str]) -> Scanner:
    """One automaton with a beginning for each pattern."""
    program = _Program([], {})
    begins = []
    for text in patterns:
        begins.append(len(program.code))
        _emit(program, _parser.parse(text))
        program.code.append(("fits",))
    ranges, members = _classes([*program.sets])
    numbers: dict[tuple[int, ...], int] = {(): 0}
    for begin in begins:
        numbers.setdefault((begin,), len(numbers))
    rows = []
    waiting = [*numbers]
    for threads in waiting:
        row = []
        for signature in members:
            fits, after = _step(program.code, threads, signature)
            if after not in numbers:
                numbers[after] = len(numbers)
                waiting.append(after)
            row.append(2 * numbers[after] + fits)
        rows.append(tuple(row))
    return Scanner(ranges, len(members), tuple(numbers[(begin,)] for begin in begins), tuple(rows))


def _step(code: list[tuple[Any, ...]], threads: _Threads, signature: frozenset[int]) -> tuple[bool, _Threads]:
    """One character on: whether the text before it fits, and the threads after it, the preferred first."""
    waiting = list(reversed(threads))
    seen: set[int] = set()
    after: list[int] = []
    while waiting:
        at = waiting.pop()
        if at in seen:
            continue
        seen.add(at)
        kind, *rest = code[at]
        if kind == "fits":
            return True, tuple(dict.fromkeys(after))
        if kind == "split":
            waiting.extend(reversed(rest))
        elif (rest[0] in signature) == (kind == "char"):
            after.append(at + 1) if kind == "char" else waiting.append(at + 1)
    return False, tuple(dict.fromkeys(after))


def _emit(program: _Program, parsed: Iterable[tuple[Any, Any]]) -> None:
    for sign, value in parsed:
        name = str(sign)
        if name in ("LITERAL", "NOT_LITERAL", "IN"):
            program.code.append(("char", _set(program, _chars(name, value))))
        elif name == "SUBPATTERN":
            _emit(program, value[-1])
        elif name == "BRANCH":
            _emit_branch(program, value[1])
        elif name == "MAX_REPEAT":
            _emit_repeat(program, *value)
        elif name == "ASSERT_NOT":
            ((one, what),) = value[1]
            program.code.append(("not next", _set(program, _chars(str(one), what))))
        else:
            raise ValueError(f"no scanner for {name}")


def _emit_branch(program: _Program, branches: Sequence[Any]) -> None:
    leaving = []
    for branch in branches[:-1]:
        split = len(program.code)
        program.code.append(())
        _emit(program, branch)
        leaving.append(len(program.code))
        program.code.append(())
        program.code[split] = ("split", split + 1, len(program.code))
    _emit(program, branches[-1])
    for place in leaving:
        program.code[place] = ("split", len(program.code))


def _emit_repeat(program: _Program, least: int, most: Any, body: Any) -> None:
    for _ in range(least):
        _emit(program, body)
    if str(most) == "MAXREPEAT":
        split = len(program.code)
        program.code.append(())
        _emit(program, body)
        program.code.append(("split", split))
        program.code[split] = ("split", split + 1, len(program.code))
        return
    splits = []
    for _ in range(most - least):
        splits.append(len(program.code))
        program.code.append(())
        _emit(program, body)
    for split in splits:
        program.code[split] = ("split", split + 1, len(program.code))


def _set(program: _Program, chars: Chars) -> int:
    return program.sets.setdefault(chars, len(program.sets))


def _chars(name: str, value: Any) -> Chars:
    """The characters of one item of a parsed pattern."""
    if name == "LITERAL":
        return ((value, value),)
    if name == "NOT_LITERAL":
        return _others(((value, value),))
    if name == "RANGE":
        return (tuple(value),)
    if name == "CATEGORY":
        plain = _category(str(value).removeprefix("CATEGORY_").removeprefix("NOT_"))
        return _others(plain) if "_NOT_" in str(value) else plain
    negated = bool(value) and str(value[0][0]) == "NEGATE"
    union = _joined(pair for sign, what in value[negated:] for pair in _chars(str(sign), what))
    return _others(union) if negated else union


@lru_cache(2)
def _category(name: str) -> Chars:
    """Every character of `\\w` or `\\d`, as Python's own tables of Unicode have it."""
    digits = name == "DIGIT"
    code = range(_HIGHEST + 1)
    found = [at for at in code if (chr(at).isdecimal() if digits else chr(at).isalnum() or at == ord("_"))]
    runs = [[*run] for _, run in groupby(enumerate(found), key=lambda pair: pair[1] - pair[0])]
    return tuple((run[0][1], run[-1][1]) for run in runs)


def _joined(pairs: Iterable[tuple[int, int]]) -> Chars:
    joined: list[tuple[int, int]] = []
    for first, last in sorted(pairs):
        if joined and first <= joined[-1][1] + 1:
            joined[-1] = joined[-1][0], max(last, joined[-1][1])
        else:
            joined.append((first, last))
    return tuple(joined)


def _others(chars: Chars) -> Chars:
    edges = [-1, *(edge for pair in chars for edge in pair), _HIGHEST + 1]
    gaps = zip(edges[::2], edges[1::2], strict=True)
    return tuple((before + 1, after - 1) for before, after in gaps if before + 1 <= after - 1)


def _classes(sets: Sequence[Chars]) -> tuple[tuple[tuple[int, int, int], ...], list[frozenset[int]]]:
    """Ranges of characters that all sets treat alike, and for each class the sets that hold it."""
    edges = {0} | {edge for chars in sets for first, last in chars for edge in (first, last + 1)}
    inside: dict[int, set[int]] = {edge: set() for edge in edges}
    order = sorted(edges)
    place = {edge: at for at, edge in enumerate(order)}
    for number, chars in enumerate(sets):
        for first, last in chars:
            for edge in order[place[first] : place.get(last + 1, len(order))]:
                inside[edge].add(number)
    members: dict[frozenset[int], int] = {frozenset(): 0}
    ranges: list[tuple[int, int, int]] = []
    for at, edge in enumerate(order):
        last = order[at + 1] - 1 if at + 1 < len(order) else _HIGHEST
        kind = members.setdefault(frozenset(inside[edge]), len(members))
        if edge <= _HIGHEST and kind:
            if ranges and ranges[-1][1] == edge - 1 and ranges[-1][2] == kind:
                ranges[-1] = ranges[-1][0], last, kind
            else:
                ranges.append((edge, last, kind))
    return tuple(ranges), [*members, frozenset()]
