"""Names that no file defines, and definitions that nothing uses."""

from collections.abc import Iterable, Iterator
from itertools import islice
from unicodedata import normalize

from roomspec.diagnostics.diagnostic import Diagnostic, Origin
from roomspec.names.index import Names, name_word
from roomspec.names.kinds import PRODUCTS, USED, counted
from roomspec.names.references import Use, uses
from roomspec.names.removal import removal
from roomspec.names.suggest import offered
from roomspec.syntax.parser import pattern_of
from roomspec.syntax.tree import Block
from roomspec.text.nearness import nearest

_LEFT_OUT = {
    "finish": "this finish is left out",
    "room": "this room is left out",
    "rooms": "these rooms are left out",
    "labour": "no labour is priced",
}
"""Statement -> what an unknown name in it leaves out; elsewhere the line itself."""

OFFERED = 50
"""Unknown names for which the nearest are looked up; a job with more lacks a whole catalogue."""


def unknown_names(names: Names, among: Iterable[Block] | None = None) -> tuple[Diagnostic, ...]:
    """One `unknown-name` for each use of a name that no file of the job defines; `among` are all that may hold one."""
    blocks = names.blocks if among is None else among
    unknown = (use for block in blocks for use in uses(block) if (use.kind, use.name) not in names.defined)
    return tuple(_unknown(use, names, number < OFFERED) for number, use in enumerate(unknown))


def unused_names(names: Names) -> tuple[Diagnostic, ...]:
    """Hints: products, methods, patterns and gangs that nothing uses, in files that also hold a job or a room.

    A file with neither is a catalogue, written once for many jobs, of which each uses a part. Nothing is said of what a
    mistaken line may have meant: that line's own error says enough. While there are such lines, or a file is missing,
    no removal is offered.
    """
    own = {tree.path for tree in names.trees if any(p.block.kind in ("job", "room", "rooms") for p in tree.blocks)}
    asked = {
        key: definition
        for key, definition in names.defined.items()
        if definition.path in own and (key[0] in PRODUCTS or key[0] in ("method", "pattern", "gang"))
    }
    used = {(u.kind, u.name) for tree in names.trees if asked for p in tree.blocks for u in uses(p.block)}
    unused = [(*key, definition) for key, definition in asked.items() if key not in used]
    meant: frozenset[str] = frozenset(_meant(names) if unused else ())
    sound = bool(unused) and not _unsound(names)
    texts = {tree.path: tree.text for tree in names.trees} if unused else {}
    lines = {path: [line.rstrip("\r") for line in texts[path].split("\n")] for path in {one[2].path for one in unused}}
    found = []
    for kind, name, definition in unused:
        if name not in meant:
            word = name_word(definition.block.head.node, name)
            start, end = (word.start, word.end) if word is not None else (0, 0)
            at = Origin(definition.block.key, definition.block.head.line, start, end)
            fixes = removal(definition, lines[definition.path]) if sound else ()
            message = f"nothing uses {kind} {name}"
            found.append(Diagnostic("unused-name", "hint", message, at, "use it or remove it", fixes=fixes))
    return tuple(found)


def _unsound(names: Names) -> bool:
    """True where a line or a file cannot be read, or a line names what there is not: nobody knows what it would use."""
    if not names.whole or any(tree.problems for tree in names.trees):
        return True
    unread = any(part.problems for block in names.blocks for part in (block, *block.parts))
    return unread or any((use.kind, use.name) not in names.defined for block in names.blocks for use in uses(block))


def _meant(names: Names) -> Iterator[str]:
    """What lines that could not be read name, and what is nearest to a name that nothing has."""
    for block in names.blocks:
        for part in (block, *block.parts):
            yield from _in_unread_lines(part)
    unknown = (use for block in names.blocks for use in uses(block) if (use.kind, use.name) not in names.defined)
    for use in islice(unknown, OFFERED):
        yield use.name
        yield from nearest(use.name, islice(names.all_of(use.kind), 1_000))


def _in_unread_lines(block: Block) -> Iterator[str]:
    unread = {problem.at.line for problem in block.problems if problem.name != "misplaced-line"}
    if unread:
        lines = block.text.split("\n")
        for line in unread:
            yield from pattern_of("NAME").findall(normalize("NFC", lines[line])) if line < len(lines) else ()


def _unknown(use: Use, names: Names, offer: bool) -> Diagnostic:
    left_out = _LEFT_OUT.get(use.statement, "this line counts for nothing")
    message = f"no {use.kind} is called {use.name}; {left_out}"
    other = next((kind for kind in USED.values() if (kind, use.name) in names.defined), "")
    if other:
        return Diagnostic("unknown-name", "error", message, use.at, f"{use.name} is {counted(other)}")
    help_, fixes = offered(use.at, use.name, names.all_of(use.kind)) if offer else ("", ())
    if not help_:
        help_ = f"define it: `{use.kind} {use.name}`, or name the file that does with `use` in the job"
    return Diagnostic("unknown-name", "error", message, use.at, help_, fixes=fixes)
