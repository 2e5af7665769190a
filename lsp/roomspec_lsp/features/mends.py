"""Mends of what was found: each fix of each finding, all safe ones at once, and an `allow` with its reason."""

from collections.abc import Iterable, Iterator

from msgspec import Struct

from roomspec.analysis.found import Found, FoundEdit, Place
from roomspec.analysis.mend import mended
from roomspec.checks.registry import record_of
from roomspec_lsp.features.view import View, block_at, indent_of, part_at, statement_at

QUICK, REWRITE, EXTRACT, ALL = "quickfix", "refactor.rewrite", "refactor.extract", "source.fixAll"


class Mend(Struct, frozen=True):
    """A change that an editor can offer. `found` is what it mends, `preferred` where nothing else is likelier.

    `hole` is a text in one of the edits that the writer is to replace.
    """

    title: str
    kind: str
    edits: tuple[FoundEdit, ...]
    found: Found | None = None
    preferred: bool = False
    hole: str = ""


def mends_of(view: View, found: Iterable[Found], first: int, last: int) -> Iterator[Mend]:
    """The fixes of what was found on some lines (from 0), and for each check the line that waves it off."""
    for one in found:
        if one.place.line - 1 > last or one.place.end_line - 1 < first:
            continue
        safe = [fix for fix in one.fixes if fix.safe]
        for fix in one.fixes:
            if fix.edits:
                yield Mend(fix.title, QUICK, fix.edits, one, len(one.fixes) == 1 or safe == [fix])
        allow = _allow(view, one)
        if allow is not None:
            yield allow


def mend_all(view: View, found: Iterable[Found]) -> Mend | None:
    """Every safe fix of this file that touches no other's place."""
    texts, _ = mended({view.path: view.lines.text}, found, unsafe=False)
    text = texts.get(view.path)
    return Mend("mend all that is certain", ALL, (rewritten(view, text),)) if text is not None else None


def rewritten(view: View, text: str) -> FoundEdit:
    """One edit that makes the file `text`: from the first line that differs to the last."""
    old, new = view.lines.text.split("\n"), text.split("\n")
    shorter = min(len(old), len(new))
    head = next((at for at in range(shorter) if old[at] != new[at]), shorter)
    tail = next((at for at in range(shorter - head) if old[-1 - at] != new[-1 - at]), shorter - head)
    if tail:
        last, end = len(old) - tail, 0
        return FoundEdit(
            Place(view.path, head + 1, 1, last + 1, end + 1),
            "".join(line + "\n" for line in new[head : len(new) - tail]),
        )
    last = len(old) - 1
    end = len(view.lines.line(last))
    if head == len(old):
        return FoundEdit(Place(view.path, last + 1, end + 1, last + 1, end + 1), "\n" + "\n".join(new[head:]))
    return FoundEdit(Place(view.path, head + 1, 1, last + 1, end + 1), "\n".join(new[head:]))


def _allow(view: View, found: Found) -> Mend | None:
    """`allow NAME because` below the line that the finding stands on; the reason is for the writer to give."""
    record = record_of(found.name)
    line = found.place.line - 1
    placed = block_at(view.tree, line)
    if record is None or not record.find or placed is None or line >= len(view.lines.starts):
        return None
    part = part_at(placed, line)
    statement = statement_at(placed, part, line)
    if statement is None:
        return None
    depth = indent_of(view.lines.line(line))
    if statement is placed.block.head or (part is not None and statement is part.head):
        depth += 2
    hole = "why"
    text = f'{" " * depth}allow {found.name} because "{hole}"\n'
    return Mend(f"allow {found.name} here because ...", QUICK, (view.insert(line + 1, text),), found, hole=f'"{hole}"')
