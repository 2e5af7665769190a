"""Findings in the forms that code hosts and CI servers read: valid, escaped, the same on every run."""

import json
import re
from pathlib import Path
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from roomspec.analysis.fingerprint import fingerprints
from roomspec.analysis.found import Found, FoundRelated, Place
from roomspec.checks.registry import every_record
from roomspec.reports import findings_sarif as sarif
from roomspec.reports.findings_checkstyle import findings_checkstyle
from roomspec.reports.findings_github import findings_github
from roomspec.reports.findings_gitlab import findings_gitlab
from roomspec.reports.findings_junit import findings_junit
from roomspec.reports.findings_sarif import findings_sarif

SCHEMA = Path(__file__).parents[1] / "published" / "sarif-2.1.0.schema.json"
"""The schema of the OASIS standard, as the npm package @microsoft/sarif-multitool-linux 5.7.0 ships it, unchanged."""
VALID = Draft202012Validator(json.loads(SCHEMA.read_text(encoding="utf-8")))


def found(name: str = "narrow-strip", severity: str = "warning", line: int = 3, **more: object) -> Found:
    """A finding in a file whose name needs care."""
    place = Place("rooms/a b,c:50%.room", line, 3, line, 9)
    values: dict[str, object] = {
        "message": "wall a: the strip is 43 wide, 60 at least",
        "help": "start balanced",
    } | more
    return Found(name, severity, place=place, **values)  # type: ignore[arg-type]


SOME = (
    found(),
    found("unknown-name", "error", 5, related=(FoundRelated("the first is here", Place("b.room", 1, 1, 1, 4)),)),
    found("no-gap", "hint", 7, message='50% <b> & "c"\nsecond line', help=""),
)


def printed(findings: tuple[Found, ...]) -> str:
    """The SARIF log."""
    return findings_sarif(findings, fingerprints(findings, lambda _p, _l: "x"), every_record(), "0.1.0")


@pytest.mark.parametrize("findings", [(), SOME[:1], SOME, (found("no-such-check"),)])
def test_sarif_is_valid_by_the_schema_of_the_standard(findings):
    """SARIF 2.1.0, section 3: every log validates against the official JSON schema."""
    assert not list(VALID.iter_errors(json.loads(printed(findings))))


def test_the_reference_rejects_what_is_no_sarif():
    """The schema is really applied: a log without its tool is not valid."""
    log = json.loads(printed(SOME))
    del log["runs"][0]["tool"]
    assert list(VALID.iter_errors(log))


def test_sarif_says_where_and_by_which_rule():
    """Paths are relative URIs, rules come from the records with help, fingerprints are partial."""
    (run,) = json.loads(printed(SOME))["runs"]
    rules = run["tool"]["driver"]["rules"]
    assert [rules[result["ruleIndex"]]["id"] for result in sorted(run["results"], key=lambda r: r["ruleId"])] == [
        "narrow-strip",
        "no-gap",
        "unknown-name",
    ]
    assert all(rule["help"]["text"] and "helpUri" not in rule for rule in rules)
    first = run["results"][0]
    location = first["locations"][0]["physicalLocation"]
    assert location["artifactLocation"] == {"uri": "rooms/a%20b%2Cc%3A50%25.room", "uriBaseId": "ROOT"}
    assert location["region"] == {"startLine": 3, "startColumn": 3, "endLine": 3, "endColumn": 9}
    assert set(first["partialFingerprints"]) == {"roomspec/v1"}
    assert run["results"][1]["relatedLocations"][0]["message"]["text"] == "the first is here"
    assert [result["level"] for result in run["results"]] == ["warning", "error", "note"]


def test_sarif_keeps_the_worst_five_thousand(monkeypatch):
    """More results are left out from the mildest on, and a note says so."""
    monkeypatch.setattr(sarif, "MOST", 2)
    (run,) = json.loads(printed(SOME))["runs"]
    assert [result["ruleId"] for result in run["results"]] == ["narrow-strip", "unknown-name"]
    notes = run["invocations"][0]["toolExecutionNotifications"]
    assert "1 finding more" in notes[0]["message"]["text"]
    assert not list(VALID.iter_errors(json.loads(printed(SOME))))


def test_fingerprints_stay_when_lines_move_and_tell_twins_apart():
    """Neither the line's number nor its indent counts; two findings alike have two fingerprints."""
    here, moved = (found(), found()), (found(line=30), found(line=40))
    first = fingerprints(here, lambda _p, _l: "  wall a  2400")
    assert first == fingerprints(moved, lambda _p, _l: "\twall a 2400  ")
    assert len(set(first)) == 2
    assert first != fingerprints(here, lambda _p, _l: "  wall a 2500")


def test_github_puts_errors_first_and_escapes():
    """Only ten are shown; `%`, line breaks, and in properties `:` and `,`, are escaped."""
    lines = findings_github(SOME).split("\n")
    assert [line.split(" ")[0] for line in lines[:-1]] == ["::error", "::warning", "::notice"]
    assert "file=rooms/a b%2Cc%3A50%25.room,line=5,endLine=5,col=3,endColumn=8,title=unknown-name::" in lines[0]
    assert lines[2].endswith('::50%25 <b> & "c"%0Asecond line')


def test_gitlab_has_what_a_merge_request_needs():
    """Description, check name, fingerprint, severity, path and line."""
    issues = json.loads(findings_gitlab(SOME, ("1", "2", "3")))
    assert [(issue["check_name"], issue["severity"], issue["fingerprint"]) for issue in issues] == [
        ("narrow-strip", "minor", "1"),
        ("unknown-name", "major", "2"),
        ("no-gap", "info", "3"),
    ]
    assert issues[0]["location"] == {"path": "rooms/a b,c:50%.room", "lines": {"begin": 3, "end": 3}}


def test_junit_has_a_case_a_finding_and_one_for_a_clean_file():
    """Counts agree with the cases, and a file without findings passes."""
    root = ElementTree.fromstring(findings_junit(SOME, ["clean.room", "rooms/a b,c:50%.room"]))
    assert root.attrib == {"name": "roomspec", "tests": "4", "failures": "3", "errors": "0"}
    assert [len(suite.findall("testcase/failure")) for suite in root] == [0, 3]
    assert root[1][2][0].attrib["message"] == "no gap".replace("no gap", '50% <b> & "c"\nsecond line')


def test_junit_fails_for_what_fails_the_check():
    """A finding milder than asked for passes with its text."""
    root = ElementTree.fromstring(findings_junit(SOME, [], ("error",)))
    assert root.attrib["failures"] == "1"
    assert ["failure" if case.find("failure") is not None else case[0].tag for case in root[0]] == [
        "system-out",
        "failure",
        "system-out",
    ]


def test_checkstyle_has_a_file_and_its_errors():
    """Line, column, severity, message and source."""
    root = ElementTree.fromstring(findings_checkstyle(SOME))
    (file,) = root
    assert file.attrib == {"name": "rooms/a b,c:50%.room"}
    assert [error.attrib["severity"] for error in file] == ["warning", "error", "info"]
    assert file[0].attrib["source"] == "roomspec.narrow-strip"


@given(st.text(st.characters(codec="utf-8"), max_size=30), st.text(st.characters(codec="utf-8"), max_size=30))
@settings(max_examples=150, deadline=None)
def test_no_text_breaks_a_form(message, path):
    """Whatever a message or a file's name holds, each form stays what it is and one line of GitHub's stays one."""
    one = (Found("narrow-strip", "warning", message, Place(path, 1, 1, 1, 2), message),)
    prints = fingerprints(one, lambda _p, _l: message)
    assert json.loads(findings_gitlab(one, prints))[0]["description"] == message
    assert json.loads(printed(one))["runs"][0]["results"][0]["message"]["text"].startswith(message)
    assert re.fullmatch(r"::warning [^\n\r]*::[^\n\r]*\n", findings_github(one))
    told = ElementTree.fromstring(findings_checkstyle(one))[0][0].attrib["message"]
    assert len(told) == len(message)
    ElementTree.fromstring(findings_junit(one, [path]))
