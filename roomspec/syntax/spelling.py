"""The nearest word: for a misspelt keyword or name."""

from collections.abc import Iterable

LONGEST = 40


def distance(one: str, other: str, most: int) -> int:
    """Letters to add, drop, change or swap with their neighbour; `most + 1` where it takes more.

    Damerau-Levenshtein in its restricted form (optimal string alignment).
    """
    if abs(len(one) - len(other)) > most:
        return most + 1
    before: list[int] = []
    last = list(range(len(other) + 1))
    for i, letter in enumerate(one, 1):
        row = [i]
        for j, wanted in enumerate(other, 1):
            cost = min(last[j] + 1, row[j - 1] + 1, last[j - 1] + (letter != wanted))
            if i > 1 and j > 1 and letter == other[j - 2] and one[i - 2] == wanted:
                cost = min(cost, before[j - 2] + 1)
            row.append(cost)
        if min(row) > most:
            return most + 1
        before, last = last, row
    return min(last[-1], most + 1)


def nearest(word: str, words: Iterable[str]) -> tuple[str, ...]:
    """The words likest to `word`, the likest first; empty where none is close: one slip in up to four letters, two in
    longer words. Capitals do not count."""
    if len(word) > LONGEST:
        return ()
    low = word.lower()
    most = 0 if len(low) < 3 else 1 if len(low) < 5 else 2
    near = sorted((distance(low, other.lower(), most), other) for other in words)
    return tuple(other for slips, other in near if slips <= most and slips < len(other))
