"""Rooms written another way: a pattern taken out of a room, equal rooms told once, the wall that is missing."""

from collections.abc import Iterator, Sequence

from msgspec.structs import replace

from roomspec.analysis.found import FoundEdit, Place
from roomspec.compile.parts import child, word
from roomspec.layout.room_plan import closure_limit, plan_room
from roomspec.model.wall import Corner
from roomspec.names.spans import Refused, expanded
from roomspec.quantities.length import METRE, mm_text
from roomspec.syntax.tree import Block, Node, Placed
from roomspec_lsp.features.mends import EXTRACT, REWRITE, Mend
from roomspec_lsp.features.view import View, block_at, last_line

_OWN = ("level", "note")
"""Lines that tell of one room, not of its kind."""


def rewritings(view: View, line: int) -> Iterator[Mend]:
    """What may be done with the room around a line."""
    placed = block_at(view.tree, line)
    if placed is None or placed.block.kind != "room":
        return
    for mend in (_pattern_of(view, placed), _told_once(view, placed), _missing_wall(view, placed)):
        if mend is not None:
            yield mend


def _pattern_of(view: View, placed: Placed) -> Mend | None:
    """A pattern with all that does not tell of this room alone."""
    block = placed.block
    if child(block.head.node, "made_as") is not None or not block.parts:
        return None
    name = _free(view, f"{block.name}-pattern")
    own = [statement.line for statement in block.lines if statement.node.kind in _OWN]
    first = placed.line + block.head.line
    lines = block.text.split("\n")
    kept = [text for at, text in enumerate(lines) if at and at + block.head.line not in own]
    title = word(block.head.node, "STRING")
    head = f"room {block.name}{f' {title.text}' if title is not None else ''} as {name}"
    texts = [f"pattern {name}", *kept, "", head, *(lines[at - block.head.line] for at in own)]
    edit = FoundEdit(_lines(view, first, last_line(placed)), "\n".join(texts) + "\n")
    return Mend(f"extract pattern {name} from room {block.name}", EXTRACT, (edit,))


def _told_once(view: View, placed: Placed) -> Mend | None:
    """The neighbouring rooms that differ in their names only, as `rooms ... as`."""
    group = _alike(view.tree.blocks, placed)
    if len(group) < 2:
        return None
    blocks = [one.block for one in group]
    made = child(blocks[0].head.node, "made_as")
    names = span_of([block.name for block in blocks])
    body = blocks[0].text.split("\n")[1:]
    if made is not None:
        texts = [f"rooms {names} {_said(made)}", *body]
    else:
        pattern = _free(view, f"{blocks[0].name}-pattern")
        own = {statement.line - blocks[0].head.line for statement in blocks[0].lines if statement.node.kind in _OWN}
        kept = [text for at, text in enumerate(body, 1) if at not in own]
        title = word(blocks[0].head.node, "STRING")
        head = f"pattern {pattern}{f' {title.text}' if title is not None else ''}"
        texts = [head, *kept, "", f"rooms {names} as {pattern}", *(body[at - 1] for at in sorted(own))]
    first, last = group[0], group[-1]
    edit = FoundEdit(_lines(view, first.line + first.block.head.line, last_line(last)), "\n".join(texts) + "\n")
    return Mend(f"write these {len(group)} rooms as `rooms {names}`", REWRITE, (edit,))


def _missing_wall(view: View, placed: Placed) -> Mend | None:
    """The wall that would close the room, where one wall at the last corner does."""
    room = next((one for one in view.snapshot.compiled.job.rooms if one.name == placed.block.name), None)
    if room is None or room.pattern or len(room.walls) < 2 or not room.closed or room.incomplete:
        return None
    name = _next_name(tuple(wall.name for wall in room.walls))
    tried = plan_room(replace(room, walls=(*room.walls, replace(room.walls[-1], width=METRE, corner=Corner()))))
    (x0, y0), (x1, y1) = tried.corners[-2:]
    across, along = abs(x0 * (y1 - y0) - y0 * (x1 - x0)) // METRE, -(x0 * (x1 - x0) + y0 * (y1 - y0)) // METRE
    limit = closure_limit(tried.perimeter)
    if not name or across > limit or along <= limit:
        return None
    width = mm_text(round(along, -6)) + (" mm" if view.tree.units != "mm" else "")
    text = f"  wall {name} about {width}\n"
    edit = view.insert(last_line(placed) + 1, text)
    return Mend(f"add wall {name}, which closes room {room.name}", REWRITE, (edit,))


def _next_name(names: Sequence[str]) -> str:
    """`d` after `a`, `b`, `c`; "" where the names do not count so."""
    last = names[-1]
    following = chr(ord(last) + 1) if len(last) == 1 and last.isascii() and last.isalnum() and last not in "zZ9" else ""
    return following if following not in names else ""


def _alike(blocks: Sequence[Placed], placed: Placed) -> list[Placed]:
    at = next(number for number, one in enumerate(blocks) if one.line == placed.line)
    first = last = at
    while first > 0 and _same(blocks[first - 1].block, placed.block):
        first -= 1
    while last + 1 < len(blocks) and _same(blocks[last + 1].block, placed.block):
        last += 1
    return list(blocks[first : last + 1])


def _same(one: Block, other: Block) -> bool:
    return one.kind == "room" and _without_name(one) == _without_name(other)


def _without_name(block: Block) -> tuple[object, ...]:
    head = tuple(_said(part) if isinstance(part, Node) else part.text for part in block.head.node.parts[2:])
    return head, tuple(line.split("#")[0].split() for line in block.text.split("\n")[1:] if line.split("#")[0].strip())


def _said(node: Node) -> str:
    return " ".join(_said(part) if isinstance(part, Node) else part.text for part in node.parts)


def span_of(names: Sequence[str]) -> str:
    """The names as a heading tells them: `101 to 104, 107`."""
    runs: list[list[str]] = []
    for name in names:
        if runs and _follows(runs[-1], name):
            runs[-1].append(name)
        else:
            runs.append([name])
    return ", ".join(f"{run[0]} to {run[-1]}" if len(run) > 2 else ", ".join(run) for run in runs)


def _follows(run: Sequence[str], name: str) -> bool:
    counted = expanded(run[0], name)
    return not isinstance(counted, Refused) and counted == (*run, name)


def _free(view: View, wanted: str) -> str:
    taken = view.snapshot.names.all_of("pattern")
    return next(name for name in (wanted, *(f"{wanted}-{n}" for n in range(2, 1000))) if name not in taken)


def _lines(view: View, first: int, last: int) -> Place:
    if last + 1 < len(view.lines.starts):
        return Place(view.path, first + 1, 1, last + 2, 1)
    return Place(view.path, first + 1, 1, last + 1, len(view.lines.line(last)) + 1)
