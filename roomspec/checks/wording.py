"""Words that several checks say alike: lists, and a wall in front of a message."""

from collections.abc import Sequence


def listed(words: Sequence[str], last: str = "and") -> str:
    """`joints, corners and floor`."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {last} {words[-1]}"


def an(word: str) -> str:
    """The word with its article: `a panel`, `an opening`."""
    return f"{'an' if word[:1].lower() in 'aeiou' else 'a'} {word}"
