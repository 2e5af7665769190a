"""Of very many findings on one face the first few stand for all."""

import pytest

from roomspec.checks.finding import Finding
from roomspec.checks.first_few import MOST, first_few
from roomspec.diagnostics.diagnostic import Edit, Fix, Origin


def finding(line: int, about: tuple[str, ...] = ("wall a",), severity: str = "") -> Finding:
    """A finding on a line, with its mend."""
    at = Origin("room 1", line, 4, 9)
    fix = Fix("take it out", (Edit(at, ""),), safe=True)
    return Finding(at, f"the door of line {line}", "take it out", about, fixes=(fix,), severity=severity)


@pytest.mark.parametrize("count", [0, 1, MOST, MOST + 1])
def test_a_few_are_all_said(count: int) -> None:
    """Twenty are, and a single one more."""
    found = [finding(line) for line in range(count)]
    assert list(first_few(found, "doors")) == found


def test_the_rest_are_counted_in_one_with_all_of_their_mends() -> None:
    """1,020 on wall a: 20, and one at the 21st for a thousand."""
    found = [finding(line) for line in range(1020)]
    *first, rest = first_few(found, "a door has a sill")
    assert first == found[:MOST]
    assert (rest.at, rest.about) == (found[MOST].at, ("wall a",))
    assert rest.message == "and 1,000 more on wall a: a door has a sill"
    assert [len(fix.edits) for fix in rest.fixes] == [1000]


def test_each_wall_and_each_severity_has_its_own() -> None:
    """Twenty on each of two walls, and twenty hints beside, are all said; so is what concerns several or none."""
    found = [
        *(finding(line) for line in range(20)),
        *(finding(line, ("wall b", "panel p")) for line in range(20)),
        *(finding(line, severity="hint") for line in range(20)),
        *(finding(line, ("wall a", "wall b")) for line in range(50)),
        *(finding(line, ("panel p",)) for line in range(50)),
    ]
    assert list(first_few(found, "doors")) == found
