"""Names of all jobs by some of their letters."""

from collections.abc import Iterable, Iterator

from msgspec import Struct

from roomspec.analysis.found import Place
from roomspec.analysis.session import Snapshot
from roomspec.names.index import name_word
from roomspec.syntax.statements import words_of

MOST = 500


class FoundName(Struct, frozen=True):
    """A heading that was looked for."""

    name: str
    kind: str
    title: str
    place: Place


def found_names(snapshots: Iterable[Snapshot], query: str) -> tuple[FoundName, ...]:
    """The headings whose name or title holds the letters of `query` in their order, the closest first."""
    wanted = query.lower()
    found = {one.place: one for snapshot in snapshots for one in _headings(snapshot) if _fits(wanted, one)}
    ranked = sorted(found.values(), key=lambda one: (wanted not in one.name.lower(), one.place))
    return tuple(ranked[:MOST])


def _headings(snapshot: Snapshot) -> Iterator[FoundName]:
    for tree in snapshot.files:
        for placed in tree.blocks:
            block = placed.block
            words = words_of(block.head.node)
            word = name_word(block.head.node, block.name) or words[0]
            title = next((one.text[1:-1] for one in words if one.type == "STRING"), "")
            line = placed.line + block.head.line + 1
            name = block.name
            if block.kind == "rooms":
                name = " ".join(one.text for one in words[1:])
            yield FoundName(name, block.kind, title, Place(tree.path, line, word.start + 1, line, word.end + 1))


def _fits(wanted: str, one: FoundName) -> bool:
    return _in_order(wanted, one.name.lower()) or wanted in one.title.lower()


def _in_order(wanted: str, name: str) -> bool:
    letters = iter(name)
    return all(letter in letters for letter in wanted)
