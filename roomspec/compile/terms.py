"""The job's own block to its terms and what stands beside them."""

from functools import lru_cache
from typing import Any

from msgspec import Struct

from roomspec.compile.gather import Gathered, gather
from roomspec.compile.origins import Origins, Source
from roomspec.compile.parts import quoted
from roomspec.diagnostics.diagnostic import Diagnostic, Related
from roomspec.model.job import Terms
from roomspec.model.wall import Extra
from roomspec.syntax.tree import Block

_TERMS = frozenset(Terms.__struct_fields__)


class MadeTerms(Struct, frozen=True, gc=False):
    """What a job's block says: its name and terms, its gang's name, the rest of the Job's fields."""

    name: str
    title: str
    terms: Terms
    gang: str
    extras: tuple[Extra, ...]
    assumptions: tuple[str, ...]
    exclusions: tuple[str, ...]
    notes: tuple[str, ...]
    problems: tuple[Diagnostic, ...]
    origins: Origins


@lru_cache(64)
def make_terms(block: Block, units: str) -> MadeTerms:
    """The terms of a job's block."""
    found = gather(block.key, "job", block.lines, units)
    values: dict[str, Any] = {field: values[-1] for field, values in found.values.items() if field in _TERMS}
    _wrong_together(found)
    lists: dict[str, Any] = {field: found.all(field) for field in ("extras", "assumptions", "exclusions", "notes")}
    return MadeTerms(
        name=block.name,
        title=quoted(block.head.node),
        terms=Terms(**values, units=units),
        gang=str(found.last("gang", "")),
        problems=tuple(found.problems),
        origins=Origins(Source(block.key, block.head.line, block.head.node), found.fields()),
        **lists,
    )


def _wrong_together(found: Gathered) -> None:
    """Lines that are sound by themselves and cannot both hold."""
    if "profit" in found.values and "margin" in found.values:
        message = "profit on cost and margin on price are two ways to say one thing; both are said"
        _add(found, "margin", "profit", message, "keep one of them")
    date, fit_on = found.last("date"), found.last("fit_on")
    if isinstance(date, type(fit_on)) and date is not None and fit_on is not None and fit_on < date:  # type: ignore[operator]
        _add(found, "fit_on", "date", f"the fitting on {fit_on} comes before the job's date, {date}", "")
    built, refitted = found.last("built"), found.last("refitted")
    if isinstance(built, int) and isinstance(refitted, int) and refitted < built:
        _add(found, "refitted", "built", f"refitted in {refitted}, before it was built in {built}", "")


def _add(found: Gathered, field: str, other: str, message: str, help_: str) -> None:
    related = (Related("the other is here", found.sources[other][-1].place()),)
    at = found.sources[field][-1].place()
    found.problems.append(Diagnostic("impossible-value", "error", message, at, help_, related))
