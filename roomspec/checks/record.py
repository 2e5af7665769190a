"""What a check is: everything that is said about one mistake, and the function that finds it."""

import re
from collections.abc import Callable, Iterable
from typing import Any

from msgspec import Struct, structs

from roomspec.checks.finding import Finding
from roomspec.diagnostics.diagnostic import Citation

COMMON_PRACTICE = Citation("common practice")
SCOPES = ("room", "job")
"""What a check's function is given: RoomFacts or JobFacts."""
GROUPS = ("reading", "survey", "laying", "water", "fixing", "fire and safety", "order and price")

Finder = Callable[[Any], Iterable[Finding]]


class Check(Struct, frozen=True, cache_hash=True):
    """One mistake: its name, what is said about it, and how it is found.

    `why` is two or three sentences that an estimator understands. `bad` and `good` are complete small jobs; a line
    `# --- NAME` begins a further file of that name (the first is `job.room`). `fix` says what the mend does, empty
    where there is none. A room check is asked only about rooms that have all it `needs` (the words of `present`).
    `scope` is empty and `find` None for a problem of reading, which the front end reports.
    """

    name: str
    group: str
    severity: str
    summary: str
    why: str
    source: tuple[Citation, ...]
    bad: str
    good: str
    fix: str = ""
    scope: str = ""
    needs: tuple[str, ...] = ()
    find: Finder | None = None
    allowable: bool = True
    """False for a problem: a line that cannot be understood cannot be waved off."""


def finds(check: Check) -> Callable[[Finder], Check]:
    """Decorate the function that finds the mistake; the name is then the whole record."""

    def complete(find: Finder) -> Check:
        return structs.replace(check, find=find)

    return complete


def files_of(example: str) -> dict[str, str]:
    """The files of a `bad` or `good` example, by name."""
    first, *rest = re.split(r"^# --- (\S+)\n", example, flags=re.MULTILINE)
    return {"job.room": first} | dict(zip(rest[::2], rest[1::2], strict=True))
