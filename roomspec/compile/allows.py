"""`allow` lines: what is waved off, where it stands, and the reason."""

from collections.abc import Iterable
from functools import lru_cache

from msgspec import Struct

from roomspec.compile.parts import quoted, word
from roomspec.diagnostics.diagnostic import Diagnostic, Origin
from roomspec.syntax.tree import Block, Statement


class Allowed(Struct, frozen=True, gc=False):
    """One `allow`: the check's name, the reason, and the part of its block that it stands in.

    `path` is () for all of the block, ("wall", "a") or ("ceiling", "main"). `at` covers the line, `name_at` the name.
    """

    check: str
    reason: str
    path: tuple[str, ...]
    at: Origin
    name_at: Origin


class Allowance(Struct, frozen=True, gc=False):
    """An `allow` and the thing that it holds for, by kind and name: `room 101`, `panel limestone-long`, `job x`."""

    thing: str
    allowed: Allowed


@lru_cache(1024)
def allowed_in(block: Block) -> tuple[Allowed, ...]:
    """The `allow` lines of a block and its parts."""
    if "allow" not in block.text:
        return ()
    found = list(_allowed(block, block.lines, ()))
    for part in block.parts:
        found.extend(_allowed(block, part.lines, (part.kind, part.name)))
    return tuple(found)


@lru_cache(1024)
def without_reason(block: Block) -> tuple[Diagnostic, ...]:
    """A reason of no words is no reason."""
    return tuple(
        Diagnostic(
            "missing-line",
            "error",
            f"`allow {allowed.check}` gives no reason",
            allowed.at,
            "say why in a few words, for the next reader",
        )
        for allowed in allowed_in(block)
        if not allowed.reason.strip()
    )


def allowances_of_entry(thing: str, block: Block) -> Iterable[Allowance]:
    """Each `allow` that stands in the job's own block or in an entry of a catalogue."""
    return (Allowance(thing, allowed) for allowed in allowed_in(block))


def allowances_of_room(name: str, block: Block, pattern: Block | None) -> Iterable[Allowance]:
    """Each `allow` that holds for a room: its own, and its pattern's but for the faces that it has itself."""
    for allowed in allowed_in(block):
        yield Allowance(f"room {name}", allowed)
    if pattern is not None and allowed_in(pattern):
        replaced = {(part.kind, part.name) for part in block.parts}
        under = (allowed for allowed in allowed_in(pattern) if allowed.path[:2] not in replaced)
        yield from (Allowance(f"room {name}", allowed) for allowed in under)


def _allowed(block: Block, lines: Iterable[Statement], path: tuple[str, ...]) -> Iterable[Allowed]:
    for statement in lines:
        node = statement.node
        if node.kind == "allow" and (name := word(node, "CHECK_NAME")) is not None:
            last = node.parts[-1]
            at = Origin(block.key, statement.line, node.parts[0].start, last.end)  # type: ignore[union-attr]
            name_at = Origin(block.key, statement.line, name.start, name.end)
            yield Allowed(name.text, quoted(node), path, at, name_at)
