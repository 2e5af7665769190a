"""Seeded fuzzing of the reading side: `python tests/fuzz/fuzz_syntax.py [SEEDS]`; the tests run a fixed number.

Each seed tears up a text made of real statements and noise, then reads it, formats it and reads it again.
"""

import random
import sys

from roomspec.syntax.assemble import read_file
from roomspec.syntax.examples import EXAMPLES
from roomspec.syntax.format import format_text
from roomspec.syntax.quantity import read_length
from roomspec.syntax.tree import FileTree

NOISE = [
    "\0",
    "\x85",
    "\u2028",
    "\r",
    "\r\n",
    "\n",
    '"',
    "#",
    "'",
    "½",
    "9" * 40,
    "\t",
    " ",
    "\ufeff",
    "é",
    "×",
    ":",
    "§",
    "  ",
]
WORDS = [word for example in EXAMPLES.values() for word in example.split()]


def torn_text(seed: int) -> str:
    """Statements in any order, with words exchanged and noise put in."""
    chance = random.Random(seed)
    lines = [chance.choice(list(EXAMPLES.values())) for _ in range(chance.randrange(40))]
    text = "\n".join(" " * chance.randrange(5) + line for line in lines)
    for _ in range(chance.randrange(12)):
        at = chance.randrange(len(text) + 1)
        put = chance.choice(NOISE) if chance.random() < 0.6 else f" {chance.choice(WORDS)} "
        text = text[:at] + put + text[at + chance.randrange(4) :]
    return text


def kinds(tree: FileTree) -> list[object]:
    """What a tree holds, without columns."""
    return [
        (placed.line, block.key, block.kind, [(line.line, line.node.kind) for line in block.lines], len(block.problems))
        for placed in tree.blocks
        for block in (placed.block, *placed.block.parts)
    ]


def run(seeds: int) -> int:
    """Try seeds 0 to `seeds`; the number of texts tried."""
    for seed in range(seeds):
        text = torn_text(seed)
        tree = read_file("fuzz.room", text)
        neat = format_text(text)
        assert format_text(neat) == neat, seed
        assert kinds(read_file("fuzz.room", neat)) == kinds(tree), seed
        for word in text.split():
            read_length(word, building=True)
    return seeds


if __name__ == "__main__":
    print(f"{run(int(sys.argv[1]) if len(sys.argv) > 1 else 2000)} texts read, formatted and read again")
