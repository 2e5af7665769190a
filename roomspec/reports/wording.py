"""Words and kinds that several reports share."""

import re
from collections.abc import Sequence
from decimal import Decimal
from typing import Literal

from roomspec.diagnostics.diagnostic import Citation

Severity = Literal["error", "warning", "hint"]


def sources_text(sources: Sequence[Citation]) -> str:
    """`BS 5385-4:2015, 7.2.4; common practice`"""
    return "; ".join(f"{source.source}, {source.clause}" if source.clause else source.source for source in sources)


def number_of(count: int, one: str, several: str = "") -> str:
    """`1 room`, `3 rooms`; `several` where an s is not enough."""
    return f"{count} {one if count == 1 else several or one + 's'}"


def money_text(amount: Decimal) -> str:
    """`12 480.50`: thousands set off by a space (ISO 80000-1:2022, 7.3.1, from memory)."""
    return f"{amount:,}".replace(",", " ")


def number_text(value: int | float | Decimal) -> str:
    """A number without trailing zeros: `2400`, `2603.5`."""
    text = f"{Decimal(str(value)):f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def ranged(names: Sequence[str]) -> str:
    """`1.01 to 1.07, 2.01`: names that differ by one in their last run of digits, three or more of them, as a range."""
    runs: list[list[str]] = []
    for name in names:
        if runs and _next(runs[-1][-1]) == name:
            runs[-1].append(name)
        else:
            runs.append([name])
    told = [[f"{run[0]} to {run[-1]}"] if len(run) > 2 else run for run in runs]
    return ", ".join(part for run in told for part in run)


def _next(name: str) -> str | None:
    """The name whose last run of ASCII digits is one more, its width kept."""
    found = re.fullmatch(r"(.*?)([0-9]+)([^0-9]*)", name)
    return None if found is None else f"{found[1]}{int(found[2]) + 1:0{len(found[2])}}{found[3]}"
