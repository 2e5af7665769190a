"""The definitions of a job's files by kind and name; the first of a name counts."""

from collections.abc import Iterable

from msgspec import Struct

from roomspec.diagnostics.diagnostic import Diagnostic, Edit, Fix, Origin, Related
from roomspec.names.kinds import DEFINED, counted
from roomspec.names.spans import MOST_ROOMS, Refused, expanded
from roomspec.syntax.joiners import APART, TOGETHER, unjoined
from roomspec.syntax.tree import Block, FileTree, Node, Word


class Definition(Struct, frozen=True, gc=False):
    """One named thing: its block, the file and line where that stands, the file's unit for bare lengths."""

    kind: str
    name: str
    block: Block
    path: str
    line: int
    units: str


class Names(Struct, frozen=True, gc=False):
    """All that a job's files define.

    `defined` holds every kind but rooms by (kind, name); `rooms` is in the order of the text, repeats one by one
    (a definition each, sharing one block); `trees` are the files themselves.
    """

    defined: dict[tuple[str, str], Definition]
    rooms: dict[str, Definition]
    job: Definition | None
    trees: tuple[FileTree, ...]
    blocks: tuple[Block, ...]
    """Those that count: the first of each name, in the order of the text."""
    problems: tuple[Diagnostic, ...]
    whole: bool = True
    """False where a file that the job uses is missing, or is no text."""

    def find(self, kind: str, name: str) -> Definition | None:
        """What is called so, or None."""
        return self.rooms.get(name) if kind == "room" else self.defined.get((kind, name))

    def all_of(self, kind: str) -> tuple[str, ...]:
        """The names of one kind, in the order of the text."""
        return tuple(self.rooms) if kind == "room" else tuple(name for k, name in self.defined if k == kind)


def index_files(trees: Iterable[FileTree], whole: bool = True) -> Names:
    """Index the files of one job, its own file first; `whole` where none that it uses is missing.

    Problems: `duplicate-name`, and spans that count wrongly.
    """
    trees = tuple(trees)
    defined: dict[tuple[str, str], Definition] = {}
    rooms: dict[str, Definition] = {}
    jobs: list[Definition] = []
    blocks: list[Block] = []
    problems: list[Diagnostic] = []
    for tree in trees:
        for placed in tree.blocks:
            block, counts = placed.block, False
            for kind, name, word in _named(block, placed.line, tree.path, problems):
                if kind == "room" and len(rooms) >= MOST_ROOMS:
                    problems.append(_too_many(block, word or name_word(block.head.node, name)))
                    break
                definition = Definition(kind, name, block, tree.path, placed.line, tree.units)
                if kind == "room":
                    first = rooms.setdefault(name, definition)
                else:
                    first = defined.setdefault((kind, name), definition)
                if first is not definition:
                    problems.append(_duplicate(definition, first, word or name_word(block.head.node, name)))
                elif kind == "job" and jobs:
                    problems.append(_second_job(definition, jobs[0]))
                else:
                    counts = True
                    jobs.extend([definition] if kind == "job" else [])
            if counts:
                blocks.append(block)
    if any(APART in tree.text or TOGETHER in tree.text for tree in trees):
        problems.extend(_alike((*defined.values(), *rooms.values())))
    return Names(defined, rooms, jobs[0] if jobs else None, trees, tuple(blocks), tuple(problems), whole)


def name_word(node: Node, name: str) -> Word | None:
    """The word of a heading that gives this name; for a repeat, the span's first word."""
    words = [part for part in node.parts if isinstance(part, Word) and part.type == "NAME"]
    for part in node.parts:
        if isinstance(part, Node) and part.kind == "name_span":
            words.extend(word for word in part.parts if isinstance(word, Word) and word.type == "NAME")
    return next((word for word in words if word.text == name), words[0] if words else None)


def _named(block: Block, line: int, path: str, problems: list[Diagnostic]) -> Iterable[tuple[str, str, Word | None]]:
    """The kinds and names that a block defines, with the word that says so where it is one of a span."""
    if block.kind == "rooms":
        for part in block.head.node.parts:
            if isinstance(part, Node) and part.kind == "name_span":
                yield from _spanned(part, Origin(f"file {path}", line + block.head.line, 0, 0), problems)
    elif block.kind in DEFINED and block.name:
        yield block.kind, block.name, None


def _spanned(span: Node, at: Origin, problems: list[Diagnostic]) -> Iterable[tuple[str, str, Word | None]]:
    words = [part for part in span.parts if isinstance(part, Word) and part.type == "NAME"]
    if len(words) < 2:
        yield from (("room", word.text, word) for word in words)
        return
    names = expanded(words[0].text, words[1].text)
    if isinstance(names, Refused):
        place = Origin(at.block, at.line, words[0].start, words[1].end)
        fixes = (Fix(f"write `{names.instead}`", (Edit(place, names.instead),)),) if names.instead else ()
        message = f"{names.message}; these rooms are left out"
        problems.append(Diagnostic("impossible-value", "error", message, place, names.help, fixes=fixes))
        return
    yield from (("room", name, words[0]) for name in names)


def _duplicate(second: Definition, first: Definition, word: Word | None) -> Diagnostic:
    """The second block has the key of the first, so its place is told by its file."""
    what = "room" if second.kind == "room" else second.kind
    message = f"there is already {counted(what)} called {second.name}; this one is left out"
    related = (Related("the first is here", _place(first, name_word(first.block.head.node, first.name))),)
    return Diagnostic("duplicate-name", "error", message, _place(second, word), "give it another name", related)


def _alike(definitions: Iterable[Definition]) -> Iterable[Diagnostic]:
    """Names of one kind that differ in what cannot be seen only."""
    seen: dict[tuple[str, str], Definition] = {}
    for one in definitions:
        first = seen.setdefault((one.kind, unjoined(one.name)), one)
        if first.name != one.name:
            message = f"{one.kind} {one.name} and {counted(one.kind)} before it differ only in what cannot be seen"
            place = _place(one, name_word(one.block.head.node, one.name))
            related = (Related("the first is here", _place(first, name_word(first.block.head.node, first.name))),)
            yield Diagnostic("duplicate-name", "error", message, place, "give it another name", related)


def _too_many(block: Block, word: Word | None) -> Diagnostic:
    at = Origin(block.key, block.head.line, *((word.start, word.end) if word is not None else (0, 0)))
    message = f"a job holds at most {MOST_ROOMS:,} rooms; the rooms from here on are left out"
    return Diagnostic("impossible-value", "error", message, at, "make it several jobs")


def _second_job(second: Definition, first: Definition) -> Diagnostic:
    word = name_word(second.block.head.node, second.name)
    message = f"the files of job {first.name} hold a second job, {second.name}; it is left out"
    related = (Related("the first is here", _place(first, name_word(first.block.head.node, first.name))),)
    return Diagnostic("duplicate-name", "error", message, _place(second, word), "keep one job a file", related)


def _place(definition: Definition, word: Word | None) -> Origin:
    start, end = (word.start, word.end) if word is not None else (0, 0)
    return Origin(f"file {definition.path}", definition.line + definition.block.head.line, start, end)
