"""Fixes put to work: which of those offered are applied, and the text that results.

What is not named by an edit stays as it is, to the last space. A round applies fixes that do not touch one another; the
caller checks again and asks for the next round, since one mend may settle or uncover another.
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence

from roomspec.analysis.found import Found, FoundEdit, FoundFix
from roomspec.text.lines import Lines, lines_of

ROUNDS = 20
"""Rounds at most; a mend that leads back to where it began must end."""


def fix_for(found: Found, unsafe: bool) -> FoundFix | None:
    """The fix that may be applied unasked: the first safe one; else, where `unsafe`, the only one there is."""
    for fix in found.fixes:
        if fix.safe and fix.edits:
            return fix
    only = found.fixes[0] if unsafe and len(found.fixes) == 1 else None
    return only if only is not None and only.edits and not only.to_fill_in else None


def mended(texts: Mapping[str, str], findings: Iterable[Found], unsafe: bool) -> tuple[dict[str, str], int]:
    """One round: the texts that change, and how many findings were mended.

    `texts` holds the files that may change; a fix that would edit another file is left alone, and so is one that
    touches words which an earlier fix of this round has changed. What is not safe and only takes out waits until
    nothing else is left to mend: another mend may come to use it.
    """
    lines = {path: lines_of(text) for path, text in texts.items()}
    taken: defaultdict[str, list[tuple[int, int, str]]] = defaultdict(list)
    done: set[tuple[FoundEdit, ...]] = set()
    count = 0
    fixes = [fix for fix in (fix_for(found, unsafe) for found in findings) if fix is not None]
    fixes = [fix for fix in fixes if all(edit.place.path in lines for edit in fix.edits)]
    for fix in [fix for fix in fixes if not _waits(fix)] or fixes:
        if fix.edits in done:
            count += 1
            continue
        spans = [(edit.place.path, *span(lines[edit.place.path], edit)) for edit in fix.edits]
        if not any(_touches(words, taken[path]) for path, *words in spans):
            done.add(fix.edits)
            count += 1
            for path, start, end, text in spans:
                taken[path].append((start, end, text))
    changed = {path: applied(texts[path], edits) for path, edits in taken.items()}
    return {path: text for path, text in changed.items() if text != texts[path]}, count


def _waits(fix: FoundFix) -> bool:
    return not fix.safe and not any(edit.text for edit in fix.edits)


def applied(text: str, edits: Sequence[tuple[int, int, str]]) -> str:
    """The text with the edits (start, end, text) made; a line that they leave empty goes, line ends stay."""
    for edit in sorted(edits, reverse=True):
        start, end, new = settled(text, *edit)
        text = text[:start] + new + text[end:]
    return text


def settled(text: str, start: int, end: int, new: str) -> tuple[int, int, str]:
    """One edit as it is made: with the text's line ends, and with the whole line where it would leave that empty."""
    if "\n" in new and _ends_in_cr(text, start):
        new = new.replace("\r\n", "\n").replace("\n", "\r\n")
    if not new and end > start:
        start, end = _with_its_line(text, start, end)
    return start, end, new


def span(lines: Lines, edit: FoundEdit) -> tuple[int, int, str]:
    """Offsets of an edit's words, and its text."""
    place = edit.place
    start = lines.offset(place.line - 1, place.column - 1)
    return start, max(start, lines.offset(place.end_line - 1, place.end_column - 1)), edit.text


def _touches(words: Sequence[object], taken: Iterable[tuple[int, int, str]]) -> bool:
    """True where words overlap, and where two insertions stand at one place: which comes first nobody can say."""
    start, end, _ = words
    assert isinstance(start, int) and isinstance(end, int)
    return any((start < other_end and other < end) or start == other for other, other_end, _ in taken)


def _ends_in_cr(text: str, at: int) -> bool:
    """True where the line at an offset, or the one before a last line without end, ends in CRLF."""
    feed = text.find("\n", at)
    feed = feed if feed >= 0 else text.rfind("\n", 0, at)
    return feed > 0 and text[feed - 1] == "\r"


def _with_its_line(text: str, start: int, end: int) -> tuple[int, int]:
    """The whole line where what is taken out leaves it empty; the blanks before it where it was the line's last."""
    first = text.rfind("\n", 0, start) + 1
    feed = text.find("\n", end)
    last = feed if feed >= 0 else len(text)
    if text[end - 1] == "\n" or text[end:last].strip():
        return start, end
    if not text[first:start].strip():
        return first, (feed + 1 if feed >= 0 else len(text))
    return len(text[:start].rstrip(" \t")), end
