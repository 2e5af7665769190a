"""Every record is whole, every rule file is registered, the page is fresh."""

from pathlib import Path

import pytest

from roomspec.checks import reference
from roomspec.checks.record import GROUPS, SCOPES, Check, files_of
from roomspec.checks.registry import CHECKS, every_record, record_of
from roomspec.diagnostics.diagnostic import SEVERITIES

ROOT = Path(reference.__file__).parents[2]
RULES = ROOT / "roomspec" / "checks" / "rules"
RECORDS = every_record()


@pytest.mark.parametrize("check", RECORDS, ids=lambda check: check.name)
def test_no_part_is_lacking(check: Check) -> None:
    """Name, group, severity, summary, why in two or three sentences, source, examples, and a way to find it."""
    assert check.name == check.name.lower()
    assert check.name.replace("-", "").isalpha()
    assert check.group in GROUPS
    assert check.severity in SEVERITIES
    assert check.summary and not check.summary.endswith(".")
    assert 2 <= check.why.count(". ") + 1 <= 4
    assert check.why.endswith(".")
    assert check.source and all(cited.source for cited in check.source)
    assert check.bad != check.good
    assert "\njob " in "\n" + check.bad and "\njob " in "\n" + check.good
    assert (check.find is None) == (check.group == "reading")
    assert check.scope in (SCOPES if check.find else ("",))


def test_each_rule_file_is_registered_under_its_own_name() -> None:
    """The file, the record and the name in the tables are one."""
    paths = [path for path in RULES.glob("*/*.py") if path.stem != "__init__"]
    files = {path.stem.replace("_", "-"): path.parent.name.replace("_", " ") for path in paths}
    assert {check.name: check.group for check in RECORDS} == files


def test_names_are_unique_and_found() -> None:
    """A name leads to its record, another to none."""
    assert len({check.name for check in RECORDS}) == len(RECORDS)
    assert all(record_of(check.name) is check for check in RECORDS)
    assert record_of("no-such-check") is None


def test_only_problems_and_all_checks_but_problems_can_be_waved_off() -> None:
    """Checks can; of the problems the two hints that mend nothing."""
    assert all(check.allowable for check in CHECKS)
    assert {check.name for check in RECORDS if check.allowable and not check.find} == {"idle-allow", "unused-name"}


def test_the_page_is_fresh(update: bool) -> None:
    """The reference page is what the records give."""
    page = ROOT / reference.PAGE
    if update:
        page.write_text(reference.page(), "utf-8")
    assert page.read_text("utf-8") == reference.page()


def test_an_example_may_hold_several_files() -> None:
    """A line `# --- NAME` begins the next one."""
    assert files_of("job a\n# --- rooms/1.room\nroom 1\n") == {"job.room": "job a\n", "rooms/1.room": "room 1\n"}
