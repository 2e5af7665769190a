"""What a finding is known by from one run to the next, wherever its line has moved to."""

from collections import Counter
from collections.abc import Callable, Sequence
from functools import lru_cache

from roomspec.analysis.found import Found

LineOf = Callable[[str, int], str]
"""Takes a path and a line from 1; gives its text, "" where there is none."""


def fingerprints(findings: Sequence[Found], line_of: LineOf) -> tuple[str, ...]:
    """For each finding 32 hexadecimal digits of its name, file, message and the words of its line.

    The line's number, its indent and its spacing do not count. Findings alike in all of these are told apart by their
    order, so that each has its own.
    """
    seen: Counter[str] = Counter()
    prints: list[str] = []
    for found in findings:
        words = " ".join(line_of(found.place.path, found.place.line).split())
        key = "\0".join((found.name, found.place.path, words, found.message))
        seen[key] += 1
        prints.append(_digits(f"{key}\0{seen[key]}"))
    return tuple(prints)


@lru_cache(4096)
def _digits(key: str) -> str:
    # Loading it takes as long as checking a room, and most runs find nothing.
    from hashlib import sha256

    return sha256(key.encode("utf-8", "surrogatepass")).hexdigest()[:32]
