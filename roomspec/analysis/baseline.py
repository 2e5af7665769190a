"""A baseline: the findings that a repository starts with, set aside until somebody gets to them.

A JSON file, one finding a line, in the order of the files, so that a change of it reads well in a diff. Problems of
reading are never set aside: what cannot be read is missing from the figures.
"""

from collections.abc import Container, Sequence
from typing import Literal

import msgspec
from msgspec import Struct

from roomspec.analysis.found import Found
from roomspec.checks.choosing import stays_whatever_is_chosen

FORMAT: Literal["roomspec/baseline"] = "roomspec/baseline"
VERSION: Literal[1] = 1


class Entry(Struct, frozen=True):
    """One finding set aside. What counts is the fingerprint; the rest is for the reader."""

    fingerprint: str
    file: str
    name: str
    message: str


class Baseline(Struct, frozen=True):
    """The findings set aside."""

    format: Literal["roomspec/baseline"]
    version: Literal[1]
    findings: tuple[Entry, ...]


class NoBaseline(Struct, frozen=True):
    """Why bytes are no baseline of this version: a clause that follows the file's name."""

    reason: str


class SetAside(Struct, frozen=True):
    """What is left to tell, with its fingerprints; how many findings were set aside, and how many are gone."""

    findings: tuple[Found, ...]
    fingerprints: tuple[str, ...]
    aside: int = 0
    gone: int = 0


def set_aside(
    findings: Sequence[Found], fingerprints: Sequence[str], baseline: Baseline, looked_at: Container[str]
) -> SetAside:
    """The findings that the baseline does not hold; entries of files `looked_at` that occur no longer are counted."""
    held = held_by({entry.fingerprint for entry in baseline.findings}, findings, fingerprints)
    met = set(fingerprints)
    gone = sum(entry.fingerprint not in met and entry.file in looked_at for entry in baseline.findings)
    return SetAside(
        tuple(found for found, aside in zip(findings, held, strict=True) if not aside),
        tuple(print_ for print_, aside in zip(fingerprints, held, strict=True) if not aside),
        sum(held),
        gone,
    )


def held_by(known: Container[str], findings: Sequence[Found], fingerprints: Sequence[str]) -> list[bool]:
    """For each finding whether it is set aside; `known` are the fingerprints of a baseline."""
    return [
        print_ in known and not stays_whatever_is_chosen(found.name)
        for found, print_ in zip(findings, fingerprints, strict=True)
    ]


def baseline_of(findings: Sequence[Found], fingerprints: Sequence[str]) -> Baseline:
    """The baseline that holds these findings, problems aside."""
    pairs = zip(findings, fingerprints, strict=True)
    return Baseline(
        FORMAT,
        VERSION,
        tuple(
            Entry(print_, found.place.path, found.name, found.message)
            for found, print_ in pairs
            if not stays_whatever_is_chosen(found.name)
        ),
    )


def baseline_text(baseline: Baseline) -> str:
    """The file's text, ending in a line break."""
    rows = ",\n".join(f"  {msgspec.json.encode(entry).decode()}" for entry in baseline.findings)
    body = f"[\n{rows}\n]" if rows else "[]"
    return f'{{"format": "{FORMAT}", "version": {VERSION}, "findings": {body}}}\n'


def read_baseline(data: bytes) -> Baseline | NoBaseline:
    """The baseline that the bytes hold, or why they hold none."""
    try:
        head = msgspec.json.decode(data.removeprefix(b"\xef\xbb\xbf"))
    except (msgspec.DecodeError, UnicodeDecodeError, RecursionError):
        return NoBaseline("is not JSON")
    if not isinstance(head, dict) or head.get("format") != FORMAT:
        return NoBaseline("is no baseline")
    if head.get("version") != VERSION:
        told = head.get("version")
        return NoBaseline(f"is a baseline of version {told!s:.20}; this roomspec reads version {VERSION}")
    try:
        return msgspec.convert(head, Baseline)
    except msgspec.ValidationError as mistake:
        return NoBaseline(f"is damaged: {mistake}")
