"""What is known of a name, in a few words; and the values that may stand where a name or a number may not."""

from collections.abc import Iterator

from roomspec.checks.registry import CHECKS
from roomspec.syntax.tree import Block, Word
from roomspec_lsp.features.view import View, block_at

_TELLING = ("length", "cover", "thick", "weighs", "price", "section", "tube", "size", "roll", "role", "fits", "rate")
_REACTIONS = ("A1", "A2-s1,d0", "B-s1,d0", "B-s2,d0", "C-s2,d0", "D-s2,d0", "E", "F")
_PLAIN = {
    "TIMES": (("x", "by"),),
    "COMMA": ((",", ""),),
    "STRING": (('""', "a text in quotation marks"),),
    "CURRENCY": (("EUR", ""), ("GBP", ""), ("USD", ""), ("CHF", "")),
    "LOCALE": (("en_GB", ""), ("en_US", ""), ("de_DE", ""), ("fr_FR", "")),
    "REACTION": tuple((text, "reaction to fire, EN 13501-1") for text in _REACTIONS),
}


def key_facts(block: Block) -> str:
    """`length 2600, cover 250, thick 10`; of a method the lines that say how it holds."""
    lines = block.text.split("\n")
    said = [" ".join(lines[line.line - block.head.line].split("#")[0].split()) for line in block.lines]
    kinds = [line.node.kind for line in block.lines]
    telling = [text for kind, text in zip(kinds, said, strict=True) if kind in _TELLING]
    # More than three leave no room for the name in the list that an editor shows.
    return ", ".join((telling or [text for kind, text in zip(kinds, said, strict=True) if kind != "note"])[:3])


def values_for(view: View, line: int, kind: str, read: list[Word]) -> Iterator[tuple[str, str]]:
    """Texts that may stand for a terminal of the grammar, each with what it means."""
    yield from _PLAIN.get(kind, ())
    if kind == "DATE":
        yield view.world.today().isoformat(), "today"
    elif kind == "CHECK_NAME":
        here = {found.name for snapshot in view.snapshots for found in snapshot.findings if _near(view, line, found)}
        for check in sorted(CHECKS, key=lambda check: check.name not in here):
            yield check.name, check.summary
    elif kind == "WALL_NAME":
        placed = block_at(view.tree, line)
        taken = {word.text for word in read if word.type == "WALL_NAME"}
        parts = placed.block.parts if placed is not None else ()
        yield from ((part.name, "wall") for part in parts if part.kind == "wall" and part.name not in taken)
    elif kind == "LEVEL_NAME":
        levels = dict.fromkeys(room.level for room in view.snapshot.compiled.job.rooms if room.level)
        yield from ((level, "level") for level in levels if level.replace("-", "").replace(".", "").isalnum())


def _near(view: View, line: int, found: object) -> bool:
    place = getattr(found, "place", None)
    return place is not None and place.path == view.path and abs(place.line - 1 - line) < 20
