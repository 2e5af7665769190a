"""Which checks run on which facts."""

from collections.abc import Iterator

from msgspec import structs

from roomspec.checks.facts import JobFacts, Path, written
from roomspec.checks.finding import Finding
from roomspec.checks.record import Check, finds
from roomspec.checks.registry import record_of
from roomspec.checks.run import run_checks
from roomspec.diagnostics.diagnostic import Origin
from roomspec.model.job import Job, Terms

PLACES = {(): (0, 0, 9), ("rate",): (1, 2, 20), ("rate", "amount"): (1, 7, 12), ("takes", 0): (2, 2, 30)}


def where(path: Path) -> Origin:
    """The nearest known place."""
    while path not in PLACES:
        path = path[:-1]
    return Origin("gang two", *PLACES[path])


def made_up(scope: str) -> Check:
    """A check that finds one thing, twice."""

    @finds(structs.replace(record_of("narrow-strip"), name="made-up", scope=scope, severity="hint"))
    def check(facts: JobFacts) -> Iterator[Finding]:
        for _ in range(2):
            yield Finding(facts.here(("rate",)), "no rate", about=("gang two",))
        yield Finding(facts.here(("rate",)), "a poor rate", severity="error")

    return check


def test_a_check_runs_on_the_facts_of_its_scope_and_gives_its_name_and_severity() -> None:
    """What is said twice counts once; a finding's own severity wins."""
    facts = JobFacts(Job("j", "", Terms(), ()), where, lambda _: where)
    found, again = run_checks([facts, facts], (made_up("room"), made_up("job")))
    assert found == again
    assert [(one.diagnostic.name, one.diagnostic.severity, one.diagnostic.message) for one in found] == [
        ("made-up", "hint", "no rate"),
        ("made-up", "error", "a poor rate"),
    ]
    assert found[0].about == ("gang two",)
    assert run_checks([facts], (made_up("room"),)) == [()]


def test_a_fact_is_written_where_its_place_is_its_own() -> None:
    """A default has the place of what holds it, and so is not written."""
    assert written(where, ("rate", "amount")) == Origin("gang two", 1, 7, 12)
    assert written(where, ("takes", 0)) == Origin("gang two", 2, 2, 30)
    assert written(where, ("takes", 0, "hours")) is None
    assert written(where, ("title",)) is None
