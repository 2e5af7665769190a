"""What is said of a line that can be read, but not where it stands or not once more."""

from collections.abc import Sequence

from roomspec.diagnostics.diagnostic import Diagnostic, Edit, Fix, Origin, Related
from roomspec.syntax.gathering import Gathering, Heading
from roomspec.syntax.statements import placing, words_of
from roomspec.syntax.tree import Node, Statement, Word
from roomspec.syntax.wording import TABLES, some_listed


def misplaced(state: Gathering, node: Node, number: int, text: str) -> Diagnostic:
    """A line that no heading above it can hold; it can be moved where the block holds it before its first wall."""
    word = words_of(node)[0]
    at = state.origin(number, word.start, word.end)
    if node.kind == "units_in":
        return Diagnostic("misplaced-line", "error", "`units` stands at the top of a file, before any heading", at)
    place, top, inner = placing(), state.top, state.inner
    holders = [TABLES[table] for table in place.holders(node.kind)]
    belongs = f"it belongs under {some_listed(holders)}"
    if top is None and inner is None:
        return Diagnostic("misplaced-line", "error", f"`{word.text}` stands under no heading", at, belongs)
    if top is not None and inner is not None and not inner.dropped and node.kind in place.holds[top.table]:
        around, within = TABLES[top.table].removeprefix("a "), TABLES[inner.table].removeprefix("a ")
        move = _move(state, top, number, text)
        message = f"`{word.text}` belongs to the {around}, but stands under a {within} of it"
        return Diagnostic("misplaced-line", "error", message, at, move.title, fixes=(move,))
    under = inner or top
    assert under is not None
    holder = TABLES[under.table]
    return Diagnostic("misplaced-line", "error", f"`{word.text}` is no line of {holder}", at, belongs)


def _move(state: Gathering, top: Heading, number: int, text: str) -> Fix:
    before = top.parts[0].head.line
    inserted = Edit(Origin(top.key, before, 0, 0), f"{text.rstrip()}\n")
    removed = Edit(whole_line(state, number, text), "")
    return Fix(
        f"move it before `{top.parts[0].head.node.kind} {_name(top.parts[0])}`".strip(), (inserted, removed), True
    )


def _name(heading: Heading) -> str:
    return next((word.text for word in words_of(heading.head.node) if word.type == "NAME"), "")


def whole_line(state: Gathering, number: int, text: str) -> Origin:
    """A line with its end: one column past the last stands for the line's end, so that no blank line is left."""
    return state.origin(number, 0, len(text) + 1)


def _said(state: Gathering, number: int, text: str, words: Sequence[Word]) -> Origin:
    """The line with its end, or only what it says where a comment follows that must stay."""
    comment = text[words[-1].end :].strip()
    return state.origin(number, words[0].start, words[-1].end) if comment else whole_line(state, number, text)


def repeated(state: Gathering, first: Statement, node: Node, number: int, text: str) -> Diagnostic:
    """A line that may stand once, standing a second time under one heading."""
    words, earlier = words_of(node), words_of(first.node)
    under = state.inner or state.top
    assert under is not None
    where = TABLES[under.table].split(" ", 1)[1]
    said = " ".join(word.text for word in earlier)
    same = [word.text for word in words] == [word.text for word in earlier]
    related = Related(f"the first one says `{said}`", Origin(under.key, first.line, earlier[0].start, earlier[-1].end))
    shown = words[0].text if node.kind != "keep" else f"{words[0].text} {words[1].text}"
    return Diagnostic(
        "repeated-line",
        "error",
        f"`{shown}` stands twice in this {where}; the first one, `{said}`, holds",
        state.origin(number, words[0].start, words[-1].end),
        "remove this line, or the first",
        (related,),
        (Fix("remove this line", (Edit(_said(state, number, text, words), ""),), same),),
    )


def units_again(state: Gathering, node: Node, number: int, text: str) -> Diagnostic:
    """A second `units` line at the top of a file."""
    words = words_of(node)
    removed = Fix("remove this line", (Edit(_said(state, number, text, words), ""),))
    at = state.origin(number, words[0].start, words[-1].end)
    return Diagnostic("repeated-line", "error", "`units` stands twice; the first one holds", at, fixes=(removed,))


def option_again(state: Gathering, option: Node, number: int, text: str) -> Diagnostic:
    """A part of a line that is given a second time; the first holds."""
    words = words_of(option)
    start, end = words[0].start, words[-1].end
    blank = len(text[:start]) - len(text[:start].rstrip())
    return Diagnostic(
        "repeated-line",
        "error",
        f"`{text[start:end]}` is given a second time in this line; the first one holds",
        state.origin(number, start, end),
        "leave it out",
        fixes=(Fix("leave it out", (Edit(state.origin(number, start - blank, end), ""),)),),
    )
