"""The nearest known words to a misspelt one."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from roomspec.text.nearness import distance, nearest

WORDS = st.text("abc", max_size=7)


@pytest.mark.parametrize(
    ("a", "b", "edits"),
    [("wall", "wall", 0), ("wal", "wall", 1), ("wlal", "wall", 1), ("kitten", "sitting", 3), ("", "abc", 3)],
)
def test_distance_counts_edits(a: str, b: str, edits: int) -> None:
    """Put in, left out, changed or swapped: each is one. `kitten` to `sitting` is three (Levenshtein's example)."""
    assert distance(a, b, 9) == edits


@settings(max_examples=100)
@given(WORDS, WORDS)
def test_distance_is_the_same_both_ways(a: str, b: str) -> None:
    """Nothing depends on which word is the misspelt one, and only like words are apart by nothing."""
    assert distance(a, b, 9) == distance(b, a, 9)
    assert (distance(a, b, 9) == 0) == (a == b)


@settings(max_examples=100)
@given(WORDS, WORDS, st.integers(0, 4))
def test_a_limit_changes_nothing_below_it(a: str, b: str, most: int) -> None:
    """With a limit the distance is the same, or the limit and one."""
    assert distance(a, b, most) == min(distance(a, b, 9), most + 1)


def test_nearest_comes_first() -> None:
    """The nearer word comes first, words alike near by their letters, far ones not at all."""
    assert nearest("limestone", ("limstone", "limestones", "oak", "lime")) == ("limestones", "limstone")


def test_long_words_are_not_compared() -> None:
    """A name of ten thousand letters costs nothing."""
    assert nearest("a" * 10_000, ["a" * 9_999] * 100) == ()
