"""The one corpus that every highlighting is held against, and what the server says of it.

Small texts of its own, all samples, the reference's examples, and a line for each way through the automaton.
"""

import random
import re
from functools import lru_cache
from pathlib import Path

from roomspec.syntax.parser import BLANK, pattern_of
from roomspec.syntax.tables import tables
from roomspec.text.lines import lines_of
from roomspec_lsp.features.tokens import tokens
from roomspec_lsp.highlighting.automaton import State, Step, automaton, shape_of

ROOT = Path(__file__).parents[2]
EDITORS = ROOT / "lsp" / "editors"
CORPUS = Path(__file__).parent / "corpus"

Word = tuple[int, int, str, bool]
"""Columns in code points, the kind of token, whether a heading gives the name."""

_VALUES = {
    shape_of("LENGTH"): ("2400", "8' 6 1/2\"", "2.4 m", "½ in", "2 400", "-5 %", "0.30 h/m2"),
    shape_of("NAME"): ("g.02", "room", "été", "e\u0301te\u0301", "浴室-1", "ห้องน้ำ", "12"),
    "STRING": ('"behind # the unit"', '""'),
    "TIMES": ("x", "×"),
    "COMMA": (",",),
    "CURRENCY": ("EUR",),
    "DATE": ("2026-11-25",),
    "LOCALE": ("en_GB",),
    "REACTION": ("B-s2,d0", "E"),
}


@lru_cache(1)
def corpus() -> dict[str, str]:
    """Texts by name."""
    files = [*sorted(CORPUS.glob("*.room")), *sorted((ROOT / "samples").rglob("*.room"))]
    texts = {file.relative_to(ROOT).as_posix(): file.read_text(encoding="utf-8") for file in files}
    reference = (ROOT / "grammar" / "README.md").read_text(encoding="utf-8")
    blocks = re.findall(r"^```room\n(.*?)^```", reference, re.MULTILINE | re.DOTALL)
    texts |= {f"grammar/README.md {number}": text for number, text in enumerate(blocks)}
    statements = (CORPUS / "statements.room").read_text(encoding="utf-8")
    texts["with carriage returns"] = statements.replace("\n", "\r\n")
    texts["with other blanks"] = "\ufeffroom a\n\theight\t2400\n  wall\u00a0b 1\u00a0200\n\n\f\n    bare"
    texts["every way"] = "\n".join(every_way())
    texts["at random"] = "\n".join(at_random("\n".join(texts.values())))
    return texts


def at_random(text: str) -> list[str]:
    """Lines of words and signs that stand together by chance, always the same ones."""
    chance = random.Random(20261125)
    words = sorted(set(text.split()))
    signs = [*'"#x½,+-=é', '"open', ".5", "_a", "a_", "浴室", "😀", "5.", "''", "1/", "2x4", "\u0301", "हिन्दी"]
    found = []
    for _ in range(600):
        picked = [chance.choice(words if chance.random() < 0.7 else signs) for _ in range(chance.randrange(1, 9))]
        found.append(chance.choice(["", "  "]) + chance.choice([" ", " ", ""]).join(picked))
    return found


def every_way() -> list[str]:
    """Lines that take every step of the automaton with every value above, by the shortest way to it."""
    states = automaton()
    ways = {0: ""}
    waiting = [0]
    found = []
    for number in waiting:
        for step in states[number].steps:
            found += [f"{ways[number]} {word}".strip() + " # so" for word in _words(step)]
            if step.target not in ways:
                ways[step.target] = f"{ways[number]} {_words(step)[0]}".strip()
                waiting.append(step.target)
    assert len(ways) == len(states)
    return found


def _words(step: Step) -> tuple[str, ...]:
    return (step.word,) if step.word else _VALUES[step.terminal]


def lines(text: str) -> list[str]:
    """The lines of a text without their ends."""
    read = lines_of(text)
    return [read.line(number) for number in range(len(read.starts))]


def told(text: str) -> list[list[Word]]:
    """What the server says of each line."""
    read = lines_of(text)
    rows: list[list[Word]] = [[] for _ in read.starts]
    for token in tokens(read):
        rows[token.line].append((token.start, token.end, token.kind, token.declares))
    return rows


def disagreements(text: str, found: list[list[Word]], joined: bool = False) -> list[str]:
    """Lines that are not coloured as they should be, word for word; `joined` makes touching words of a kind one."""
    rows = zip(lines(text), found, strict=True)
    pairs = ((line, row, together(due(line)) if joined else due(line)) for line, row in rows)
    return [f"{line!r}: {row} for {right}" for line, row, right in pairs if row != right]


def together(words: list[Word]) -> list[Word]:
    """Touching words of a kind as one."""
    found: list[Word] = []
    for start, end, *kind in words:
        touches = bool(found) and found[-1][1] == start and [*found[-1][2:]] == kind
        found[-1:] = [(found[-1][0], end, *kind)] if touches else [*found[-1:], (start, end, *kind)]
    return found


@lru_cache(None)
def due(line: str) -> list[Word]:
    """The words that a line has, by the automaton and the grammar's own patterns.

    What comes after the first word that does not fit is told by its look; of that the server says nothing.
    """
    found: list[Word] = []
    state: State | None = automaton()[0]
    place = blank(line, 0)
    while place < len(line):
        taken = comment(line, place) or (next_word(line, place, state) if state else None)
        if taken is None and state:
            state = None
            continue
        kind, declares, end, target = taken or by_look(line, place)
        if kind:
            found.append((place, end, kind, declares))
        state = automaton()[target] if state else None
        place = blank(line, end)
    return found


def blank(line: str, place: int) -> int:
    """The place of the next word."""
    match = BLANK.match(line, place)
    assert match is not None
    return match.end()


_Taken = tuple[str, bool, int, int]


def comment(line: str, place: int) -> _Taken | None:
    """A comment that begins here."""
    return ("comment", False, len(line), 0) if line[place] == "#" else None


def next_word(line: str, place: int, state: State) -> _Taken | None:
    """The way on that fits here."""
    for step in state.steps:
        pattern = keyword(step.word) if step.word else pattern_of(step.terminal)
        match = pattern.match(line, place)
        if match is not None:
            return step.kind, step.declares, match.end(), step.target
    return None


@lru_cache(None)
def keyword(word: str) -> "re.Pattern[str]":
    """A word that nothing goes on."""
    return re.compile(rf"{re.escape(word)}(?![\w.\-]|{tables().marks})")


def by_look(line: str, place: int) -> _Taken:
    """A text, closed or not; a quantity; or something without colour."""
    for kind, pattern in (
        ("string", re.compile('"[^"]*"?')),
        ("number", pattern_of("LENGTH")),
        ("", pattern_of("NAME")),
    ):
        match = pattern.match(line, place)
        if match is not None:
            return kind, False, match.end(), 0
    return "", False, place + 1, 0
