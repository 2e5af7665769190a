"""Words in a row, as a sentence says them."""

from collections.abc import Sequence


def listed(parts: Sequence[str], joint: str = "and") -> str:
    """`a`, `a and b`, `a, b and c`; "" for none."""
    return f" {joint} ".join(part for part in (", ".join(parts[:-1]), *parts[-1:]) if part)
