"""The one corpus that every highlighting is held against, and what the server says of it.

Small texts of its own, all samples, the reference's examples, and a line for each way through the automaton.
"""

import re
from functools import lru_cache
from pathlib import Path

from roomspec.syntax.line import read_line
from roomspec.syntax.parser import Misfit
from roomspec.text.lines import lines_of
from roomspec_lsp.features.tokens import tokens
from roomspec_lsp.highlighting.automaton import Step, automaton

ROOT = Path(__file__).parents[2]
EDITORS = ROOT / "lsp" / "editors"
CORPUS = Path(__file__).parent / "corpus"

Word = tuple[int, int, str, bool]
"""Columns in code points, the kind of token, whether a heading gives the name."""

_VALUES = {
    "AMOUNT": ("2400", "8' 6 1/2\"", "2.4 m", "½ in", "2 400", "-5 %", "0.30 h/m2"),
    "ADHESIVE_NAME": ("g.02", "room", "été", "浴室-1", "12"),
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
    return texts


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


def disagreements(text: str, found: list[list[Word]]) -> list[str]:
    """Lines that are not coloured as the server says, word for word.

    Of a line that cannot be read the server tells the words before the mistake; what comes after them is free.
    """
    rows = zip(lines(text), found, told(text), strict=True)
    return [
        f"{line!r}: {row} for {said}"
        for line, row, said in rows
        if (row[: len(said)] if isinstance(read_line(line), Misfit) else row) != said
    ]
