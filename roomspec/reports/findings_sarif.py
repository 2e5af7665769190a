"""Findings as SARIF 2.1.0 (OASIS Standard, 27 March 2020, with errata 01), for code hosts and editors that read it."""

from collections.abc import Sequence
from typing import Any
from urllib.parse import quote

import msgspec

from roomspec.analysis.found import Found, Place
from roomspec.checks.record import Check
from roomspec.diagnostics.diagnostic import SEVERITIES
from roomspec.reports.wording import number_of, sources_text

SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
MOST = 5_000
"""Results; code hosts take no more of one file. The worst are kept, and a note says how many are left out."""
_LEVELS = {"error": "error", "warning": "warning", "hint": "note"}


def findings_sarif(
    findings: Sequence[Found], fingerprints: Sequence[str], records: Sequence[Check], version: str
) -> str:
    """The log as JSON. `records` are those of all checks; `version` is the program's."""
    named = dict.fromkeys(found.name for found in findings)
    rules = [record for record in records if record.name in named]
    places = {rule.name: at for at, rule in enumerate(rules)}
    pairs = list(zip(findings, fingerprints, strict=True))
    kept = sorted(sorted(range(len(pairs)), key=lambda at: SEVERITIES.index(findings[at].severity))[:MOST])
    driver = {"name": "roomspec", "version": version, "semanticVersion": version, "rules": list(map(_rule, rules))}
    run: dict[str, Any] = {
        "tool": {"driver": driver},
        "columnKind": "unicodeCodePoints",
        "originalUriBaseIds": {"ROOT": {"description": {"text": "The root of the repository."}}},
        "invocations": [{"executionSuccessful": True}],
        "results": [_result(*pairs[at], places) for at in kept],
    }
    if len(pairs) > MOST:
        told = f"{number_of(len(pairs) - MOST, 'finding')} more, the least bad, are left out of this file."
        run["invocations"][0]["toolExecutionNotifications"] = [{"level": "note", "message": {"text": told}}]
    log = {"$schema": SCHEMA, "version": "2.1.0", "runs": [run]}
    return msgspec.json.format(msgspec.json.encode(log), indent=2).decode() + "\n"


def _rule(check: Check) -> dict[str, Any]:
    source = f"Source: {sources_text(check.source)}."
    fix = f"Fix: {check.fix}." if check.fix else ""
    wave = f'Where it does not apply: `allow {check.name} because "..."`.' if check.allowable else ""
    said = [part for part in (check.why, source, fix, wave) if part]
    shown = [*said, f"```\n{check.bad}```", "better:", f"```\n{check.good}```"]
    return {
        "id": check.name,
        "shortDescription": {"text": f"{check.summary[:1].upper()}{check.summary[1:]}."},
        "fullDescription": {"text": check.why},
        "help": {"text": "\n\n".join(said), "markdown": "\n\n".join(shown)},
        "defaultConfiguration": {"level": _LEVELS[check.severity]},
        "properties": {"tags": [check.group]},
    }


def _result(found: Found, fingerprint: str, places: dict[str, int]) -> dict[str, Any]:
    text = f"{found.message}\n{found.help}" if found.help else found.message
    result: dict[str, Any] = {
        "ruleId": found.name,
        "level": _LEVELS[found.severity],
        "message": {"text": text},
        "locations": [{"physicalLocation": _location(found.place)}],
        "partialFingerprints": {"roomspec/v1": fingerprint},
    }
    if found.name in places:
        result["ruleIndex"] = places[found.name]
    if found.related:
        result["relatedLocations"] = [
            {"id": number, "message": {"text": other.message}, "physicalLocation": _location(other.place)}
            for number, other in enumerate(found.related, 1)
        ]
    return result


def _location(place: Place) -> dict[str, Any]:
    return {
        "artifactLocation": {"uri": quote(place.path, safe="/"), "uriBaseId": "ROOT"},
        "region": {
            "startLine": place.line,
            "startColumn": place.column,
            "endLine": place.end_line,
            "endColumn": place.end_column,
        },
    }
