"""The price leaves out labour: no gang is named, or it gives no time for work that the job has."""

from collections.abc import Iterator
from fractions import Fraction
from functools import lru_cache

from roomspec.checks.facts import JobFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.checks.used import Task, tasks_used
from roomspec.diagnostics.diagnostic import Edit, Fix, Origin, Related
from roomspec.model.method import Gang, Takes
from roomspec.pricing.labour import ALLOWANCES, fitting
from roomspec.takeoff.work import Work
from roomspec.text.listing import listed

_JOB = """\
job example
{}room 1 "Bedroom"
  height 2400
  wall a 3000
    on      plaster
    surface sound
    finish  limestone-long by glued vertical
panel limestone-long "Limestone print, long"
  length 2600
  cover  250
  thick  10
  price  31.50 each
adhesive grab
  tube  290 ml
  price 6.20 each
method glued
  glue grab bead 8 every 100
"""
_GANG = """\
gang two-fitters
  rate  62.00 per h
  takes 0.30 h/m2 for panels vertical
"""


@finds(
    Check(
        name="no-labour",
        group="order and price",
        severity="warning",
        scope="job",
        summary="no gang is named, or it gives no time for work that the job has",
        why=(
            "Work without a gang, or without a time in it, is counted at nothing: the quotation then covers material"
            " alone, or leaves out the battens, the trims or the stripping. Mitres and rooms are part of the other"
            " times where a gang gives none for them."
        ),
        source=(COMMON_PRACTICE,),
        fix="names the gang, where the catalogue has just one",
        bad=_JOB.format("") + _GANG,
        good=_JOB.format("  labour two-fitters\n") + _GANG,
    )
)
def no_labour(facts: JobFacts) -> Iterator[Finding]:
    """The job's gang, then its constants against the tasks that the rooms call for."""
    tasks, gang = tasks_used(facts.used), facts.job.gang
    if gang is not None:
        yield from _untimed(facts, gang, tasks)
    elif tasks and facts.job.name and written(facts.here, ("gang",)) is None:
        only = facts.gangs[0] if len(facts.gangs) == 1 else ""
        head = facts.here(())
        edit = Edit(Origin(head.block, head.line, head.end, head.end), f"\n  labour {only}")
        yield Finding(
            at=head,
            message="the job names no gang: the totals leave labour out",
            help=f"add `labour {only or 'NAME'}`{'' if facts.gangs else ', and a gang of that name'}",
            fixes=(Fix(f"add `labour {only}`", (edit,)),) if only else (),
        )


def _untimed(facts: JobFacts, gang: Gang, tasks: tuple[Task, ...]) -> Iterator[Finding]:
    lacking = dict.fromkeys(_called(*task[:2]) for task in tasks if not _timed(task, gang.takes))
    if not lacking:
        return
    named = written(facts.here, ("gang",))
    yield Finding(
        at=facts.elsewhere(f"gang {gang.name}")(()),
        message=f"gang {gang.name} gives no time for {listed(list(lacking))}: the totals leave that work out",
        help=f"add a line such as `takes 0.08 {_unit(tasks, lacking)} for {next(iter(lacking))}`",
        about=(f"gang {gang.name}",),
        related=(Related("the job's gang", named),) if named else (),
    )


@lru_cache(1024)
def _timed(task: Task, constants: tuple[Takes, ...]) -> bool:
    """True where one of a gang's constants is for the task, or none is called for."""
    name, where, units = task
    work = Work(name, where, tuple((unit, Fraction(1)) for unit in units))
    return name in ALLOWANCES or fitting(work, constants) is not None


def _called(task: str, where: tuple[str, ...]) -> str:
    """As a gang's line says it: `panels vertical`, `removing tile`, `trims`."""
    if task not in ("panels", "removing") or not where:
        return task
    return f"{task} {where[-1]}" if task == "panels" else f"{task} {where[0]}"


def _unit(tasks: tuple[Task, ...], lacking: dict[str, None]) -> str:
    first = next(iter(lacking))
    unit = next(units[0] for task, where, units in tasks if _called(task, where) == first)
    return "h each" if unit == "each" else f"h/{unit}"
