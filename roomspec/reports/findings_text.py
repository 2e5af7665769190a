"""Findings for people: the line, the exact words underlined, the other places, and the mend."""

import re
from collections import Counter, defaultdict
from collections.abc import Callable, Sequence

from roomspec.analysis.found import Found, FoundEdit, FoundFix, Place
from roomspec.diagnostics.diagnostic import SEVERITIES
from roomspec.reports.paint import Paint, plain
from roomspec.reports.width import columns, shown
from roomspec.reports.wording import number_of
from roomspec.text.listing import listed

LineOf = Callable[[str, int], str]
"""Takes a path and a line from 1; gives its text, "" where there is none."""

WIDEST = 140
"""Characters of a line that are shown; of a longer one, those around the words."""
FIXES_SHOWN = 2
LINES_OF_A_FIX = 4


def findings_text(
    findings: Sequence[Found], line_of: LineOf, paint: Paint = plain, called: Callable[[str], str] = str
) -> str:
    """All findings with their lines, then how many there are; ends with a line break.

    `called` says how a path is written: from the folder where the reader is, so that a terminal can open it.
    """
    parts = [_finding(found, line_of, paint, called) for found in findings]
    return "\n".join([*parts, counted(findings) + "\n"])


def counted(findings: Sequence[Found]) -> str:
    """`2 errors and 1 hint in 2 files.`"""
    counts = Counter(found.severity for found in findings)
    if not counts:
        return "No findings."
    told = listed([number_of(counts[severity], severity) for severity in SEVERITIES if counts[severity]])
    return f"{told} in {number_of(len({found.place.path for found in findings}), 'file')}."


def _finding(found: Found, line_of: LineOf, paint: Paint, called: Callable[[str], str]) -> str:
    place = found.place
    margin = len(str(place.line)) + 1
    rows = [
        f"{paint(_at(place, called), 'place')}: {paint(found.severity, found.severity)}: "
        f"{paint(shown(found.message), 'strong')} {paint(f'[{found.name}]', 'faint')}"
    ]
    rows += _quoted(place, line_of, margin, paint, found.severity)
    for other in found.related:
        rows.append(f"{'':{margin}} {paint('see', 'help')} {_at(other.place, called)}: {shown(other.message)}")
    if found.help:
        rows.append(f"{'':{margin}} {paint('help', 'help')}: {shown(found.help)}")
    for fix in found.fixes[:FIXES_SHOWN]:
        if not _says(found.help, fix.title):
            rows.append(f"{'':{margin}} {paint('help', 'help')}: {shown(fix.title)}")
        rows += _mended(fix, line_of, margin, paint)
    return "\n".join(rows) + "\n"


def _says(help_: str, title: str) -> bool:
    """True where the help says what the fix does: "did you mean stone?" says "write stone"."""
    plain = title.replace("`", "").removeprefix("write ")
    return re.search(rf"(?<!\w){re.escape(plain)}(?!\w)", help_.replace("`", "")) is not None


def _at(place: Place, called: Callable[[str], str]) -> str:
    return f"{shown(called(place.path))}:{place.line}:{place.column}"


def _quoted(place: Place, line_of: LineOf, margin: int, paint: Paint, severity: str) -> list[str]:
    line = line_of(place.path, place.line)
    if not line.strip():
        return []
    start = min(place.column - 1, len(line))
    end = len(line) if place.end_line > place.line else min(place.end_column - 1, len(line))
    first = max(0, min(start - WIDEST // 3, len(line) - WIDEST))
    last = min(len(line), first + WIDEST)
    before, words, after = line[first:start], line[start : min(end, last)], line[max(start, min(end, last)) : last]
    dots = "... " if first else ""
    indent = len(dots) + columns(shown(before))
    marks = "^" * max(1, columns(shown(words)))
    bar = paint("|", "faint")
    text = f"{dots}{shown(before)}{shown(words)}{shown(after)}{' ...' if last < len(line) else ''}".rstrip()
    return [f"{place.line:{margin}} {bar} {text}", f"{'':{margin}} {bar} {' ' * indent}{paint(marks, severity)}"]


def _mended(fix: FoundFix, line_of: LineOf, margin: int, paint: Paint) -> list[str]:
    edited: defaultdict[tuple[str, int], list[FoundEdit]] = defaultdict(list)
    for edit in fix.edits:
        edited[edit.place.path, edit.place.line].append(edit)
    rows: list[str] = []
    for (path, number), edits in sorted(edited.items(), key=lambda item: item[0])[:LINES_OF_A_FIX]:
        for offset, text in enumerate(_applied(line_of(path, number), edits).split("\n")[:LINES_OF_A_FIX]):
            if text.strip():
                rows.append(f"{number + offset:{margin}} {paint('|', 'faint')} {shown(text[:WIDEST]).rstrip()}")
    return rows


def _applied(line: str, edits: list[FoundEdit]) -> str:
    for edit in sorted(edits, key=lambda edit: edit.place, reverse=True):
        end = len(line) if edit.place.end_line > edit.place.line else edit.place.end_column - 1
        line = line[: edit.place.column - 1] + edit.text + line[end:]
    return line
