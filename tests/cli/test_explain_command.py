"""`roomspec explain`: one check, or all."""

import json
from pathlib import Path

from roomspec.checks.reference import PAGE
from roomspec.checks.registry import every_record

ROOT = Path(__file__).parents[2]


def test_one_check_in_full(run):
    """A check is explained with why, source, a bad and a good example."""
    ended = run("explain", "narrow-strip")
    assert ended.code == 0
    for part in ("narrow-strip", "Why:", "Source:", "Bad:", "Good:", "allow narrow-strip because"):
        assert part in ended.out


def test_all_checks_have_a_line(run):
    """--all lists every check and problem."""
    out = run("explain", "--all").out
    assert all(f"  {check.name} " in out for check in every_record())


def test_json_holds_every_record(run):
    """--all --as json holds every check with every part."""
    checks = json.loads(run("explain", "--all", "--as", "json").out)["checks"]
    assert [check["name"] for check in checks] == [check.name for check in every_record()]
    keys = ["name", "group", "severity", "summary", "why", "source", "bad", "good", "fix"]
    assert all(not set(keys) - set(check) for check in checks)


def test_each_check_leads_to_its_place_on_the_page(run):
    """`page` is a file of the repository and an anchor that a heading of it has."""
    headings = {line[4:] for line in (ROOT / PAGE).read_text(encoding="utf-8").split("\n") if line.startswith("### ")}
    for check in json.loads(run("explain", "--all", "--as", "json").out)["checks"]:
        file, _, anchor = check["page"].partition("#")
        assert file == PAGE and anchor in headings


def test_an_unknown_name_is_refused_with_the_nearest(run):
    """A misspelt name names the nearest."""
    ended = run("explain", "narow-strip")
    assert ended.refused
    assert "narrow-strip" in ended.err


def test_a_name_or_all(run):
    """Neither or both is a mistake."""
    assert run("explain").refused
    assert run("explain", "narrow-strip", "--all").refused
