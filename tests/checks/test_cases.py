"""Every case of `tests/cases` and every example of a record, through the whole analysis.

A case file that has the name of a check looks at that check, at what cannot be read and at idle allows, unless a case
says otherwise: a small job leaves out much that other checks rightly ask for.
"""

from datetime import date
from pathlib import Path

import pytest
from case_files import Case, applied, marks_of, read_cases, rewrite, unlike
from msgspec.structs import replace

from roomspec.analysis.found import Found
from roomspec.analysis.mend import mended
from roomspec.analysis.session import Session
from roomspec.analysis.stray import files_in_no_job
from roomspec.analysis.world import MemoryWorld
from roomspec.checks.record import Check, files_of
from roomspec.checks.registry import CHECKS, every_record

FOLDER = Path(__file__).parents[1] / "cases"
CHECK_NAMES = {check.name for check in CHECKS}
PROBLEM_NAMES = tuple(check.name for check in every_record() if check.name not in CHECK_NAMES)


def looked_at(topic: str, case: Case) -> Case:
    """The case, looking at its topic's findings where the topic is a check and the case names none."""
    return case if case.only or topic not in CHECK_NAMES else replace(case, only=(topic, *PROBLEM_NAMES))


CASES = [(path, looked_at(path.stem, case)) for path in sorted(FOLDER.glob("*.md")) for case in read_cases(path)]


def findings(files: dict[str, str]) -> tuple[Found, ...]:
    """What is found in the job whose own file is the first."""
    world = MemoryWorld(files, date(2026, 11, 25))
    snapshot = Session(world).snapshot(next(iter(files)))
    return (*snapshot.findings, *files_in_no_job(world, (snapshot,)))


def fixed(case: Case, found: tuple[Found, ...]) -> str | None:
    """The file that the case shows mended, with the first fix that any finding offers."""
    seen = [one for one in found if not case.only or one.name in case.only]
    fix = next((fix for one in seen for fix in one.fixes), None)
    if case.fixed is None or fix is None:
        return None
    edits = [edit for edit in fix.edits if edit.place.path == case.fixed[0]]
    return applied(case.files[case.fixed[0]], edits)


@pytest.mark.parametrize(("path", "case"), CASES, ids=[f"{path.stem}: {case.title}" for path, case in CASES])
def test_case(path: Path, case: Case, update: bool) -> None:
    """What is found is what the carets say, and the first fix gives the text shown."""
    found = findings(case.files)
    actual = marks_of(found, case)
    mended = fixed(case, found)
    if update:
        rewrite(path, case.title, actual, mended)
        return
    assert not unlike(case.marks, actual)
    assert mended == (case.fixed[1] if case.fixed else None)


@pytest.mark.parametrize("check", every_record(), ids=lambda check: check.name)
def test_bad_example_is_found_and_good_one_is_clean(check: Check) -> None:
    """The bad example gives this finding, the good one does not; neither has an error or anything unreadable besides.

    Warnings and hints of other checks are not looked at: an example is as short as its point allows. What a mend is to
    name is not used yet.
    """
    problems = tuple(name for name in PROBLEM_NAMES if name != "unused-name")

    def telling(example: str) -> set[str]:
        return {
            found.name
            for found in findings(files_of(example))
            if found.name in (check.name, *problems) or found.severity == "error"
        }

    assert telling(check.bad) == {check.name}
    assert telling(check.good) == set()


@pytest.mark.parametrize("check", every_record(), ids=lambda check: check.name)
def test_bad_example_is_mended_by_each_mend_that_the_record_speaks_of(check: Check) -> None:
    """A record with a `fix` offers one in its bad example, others none; each settles the finding and makes no error."""
    files = files_of(check.bad)
    found = [one for one in findings(files) if one.name == check.name]
    ways = max(len(one.fixes) for one in found)
    assert bool(ways) == bool(check.fix)
    for way in range(ways):
        chosen = [replace(one, fixes=(replace(one.fixes[way], to_fill_in=False),)) for one in found if one.fixes[way:]]
        texts, count = mended(files, chosen, unsafe=True)
        assert count == len(chosen)
        after = findings({**files, **texts})
        assert [one for one in after if one.name == check.name or one.severity == "error"] == []
