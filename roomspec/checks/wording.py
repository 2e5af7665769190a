"""Words that several checks say alike."""

from collections.abc import Sequence


def listed(words: Sequence[str]) -> str:
    """`joints, corners and floor`."""
    return " and ".join(part for part in (", ".join(words[:-1]), *words[-1:]) if part)
