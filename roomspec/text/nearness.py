"""Which known words a misspelt one is nearest to."""

from collections.abc import Iterable

LONGEST = 64
"""Characters compared; a longer word is no slip of the finger."""


def distance(a: str, b: str, most: int) -> int:
    """Edits from `a` to `b`: a letter put in, left out, changed, or two neighbours swapped; `most + 1` where more.

    The restricted edit distance (optimal string alignment).
    """
    if abs(len(a) - len(b)) > most or max(len(a), len(b)) > LONGEST:
        return most + 1
    before: list[int] = []
    row = list(range(len(b) + 1))
    for i, letter in enumerate(a, 1):
        older, before, row = before, row, [i]
        for j, other in enumerate(b, 1):
            cost = min(before[j] + 1, row[j - 1] + 1, before[j - 1] + (letter != other))
            if i > 1 and j > 1 and letter == b[j - 2] and a[i - 2] == other:
                cost = min(cost, older[j - 2] + 1)
            row.append(cost)
        if min(row) > most:
            return most + 1
    return min(row[-1], most + 1)


def nearest(word: str, known: Iterable[str], count: int = 3) -> tuple[str, ...]:
    """At most `count` known words at most a third of the letters (or one) away, nearest first, then by letters."""
    most = max(1, len(word) // 3)
    near = ((distance(word.lower(), other.lower(), most), other) for other in set(known))
    return tuple(other for apart, other in sorted(near) if apart <= most and other != word)[:count]
