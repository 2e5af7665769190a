"""Words and kinds that several reports share."""

from collections.abc import Sequence
from typing import Literal

from roomspec.diagnostics.diagnostic import Citation

Severity = Literal["error", "warning", "hint"]


def sources_text(sources: Sequence[Citation]) -> str:
    """`BS 5385-4:2015, 7.2.4; common practice`"""
    return "; ".join(f"{source.source}, {source.clause}" if source.clause else source.source for source in sources)


def number_of(count: int, one: str, several: str = "") -> str:
    """`1 room`, `3 rooms`; `several` where an s is not enough."""
    return f"{count} {one if count == 1 else several or one + 's'}"


def listed(parts: Sequence[str]) -> str:
    """`a, b and c`"""
    return " and ".join([", ".join(parts[:-1]), parts[-1]]) if len(parts) > 1 else "".join(parts)
