"""The rooms on the live page: each with its plan and its walls, a drawing being the way to the text it comes from."""

from collections.abc import Iterable, Iterator
from hashlib import sha256

from msgspec import Struct

from roomspec.analysis.found import Place, place_of
from roomspec.analysis.session import Snapshot
from roomspec.reports.drawing.job_drawings import Drawing, draw_rooms
from roomspec.reports.preview.blocks import blocks_of_room, findings_by_block
from roomspec.reports.preview.findings import said_here
from roomspec.reports.preview.piece import LineOf, Piece, mark, place, text
from roomspec.reports.wording import ranged

PAPERS = {"A4": (1188, 840), "A3": (1680, 1188)}
"""Four pixels a millimetre: a picture takes its place before it is there."""
NOTHING = '<p class="faint">Nothing can be drawn of it yet.</p>'
LINES = 40
"""Lines of a wall's text that are shown."""
AS_BEFORE = '<p class="note">As it was last drawn: its text cannot be read as it stands.</p>'


class RoomDrawn(Struct, frozen=True):
    """A room's heading and its figures, the file it is written in, and the SVG of each picture by its name."""

    name: str
    title: str
    figures: str
    path: str
    pictures: dict[str, str]


def rooms_drawn(snapshot: Snapshot, line_of: LineOf) -> dict[str, RoomDrawn]:
    """The rooms by their names, in the job's order; those that are drawn with one that is alike stand with that."""
    job = snapshot.compiled.job
    by_room: dict[str, list[Drawing]] = {}
    elsewhere: set[str] = set()
    for drawing in draw_rooms(job, zip(job.rooms, snapshot.laid, snapshot.taken, strict=True), errors=0):
        by_room.setdefault(drawing.rooms[0], []).append(drawing)
        elsewhere.update(drawing.rooms[1:])
    found = {}
    for room in job.rooms:
        drawn = by_room.get(room.name, [])
        if drawn or room.name not in elsewhere:
            alike = [name for name in dict.fromkeys(name for one in drawn for name in one.rooms) if name != room.name]
            like = f'<p class="faint">Drawn for {text(ranged(alike))} too.</p>' if alike else ""
            figures = like + "".join(_figure(snapshot, room.name, one, line_of) for one in drawn) if drawn else NOTHING
            pictures = {picture_name(one.svg): one.svg for one in drawn}
            path = written(snapshot, room.name, "plan").path
            found[room.name] = RoomDrawn(room.name, f"{room.name} {room.title}".strip(), figures, path, pictures)
    return found


def room_pieces(snapshot: Snapshot | None, rooms: Iterable[RoomDrawn], kept: frozenset[str]) -> Iterator[Piece]:
    """A piece a room: its findings, then its drawings, marked where they are `kept` from before a mistake."""
    by_block = findings_by_block(snapshot) if snapshot is not None else {}
    origins = snapshot.compiled.origins if snapshot is not None else {}
    for room in rooms:
        there = snapshot is not None and f"room {room.name}" in origins
        blocks = blocks_of_room(snapshot, room.name) if snapshot is not None and there else ()
        said = said_here(one for block in blocks for one in by_block.get(block, ()))
        note = AS_BEFORE if room.name in kept else ""
        yield Piece(f"room-{mark(room.name)}", f"{note}{said}{room.figures}", text(room.title), room.name in kept)


def contents_piece(rooms: Iterable[Piece]) -> Piece:
    """A list of the rooms, to go to each."""
    items = [f'<li><a href="#{room.name}">{room.told}</a></li>' for room in rooms]
    return Piece("contents", f"<ul>{''.join(items)}</ul>" if items else "<p>No wall is lined yet.</p>", str(len(items)))


def picture_name(svg: str) -> str:
    """The same for the same picture only."""
    return sha256(svg.encode()).hexdigest()[:24]


def written(snapshot: Snapshot, room: str, part: str) -> Place:
    """Where a wall or a ceiling is written; the room's heading for its plan."""
    kind, _, name = part.split(", ")[0].partition(" ")
    path = (kind, name) if kind in ("wall", "ceiling") else ()
    return place_of(snapshot.compiled.origins[f"room {room}"].at(path), snapshot.blocks, snapshot.path)


def _figure(snapshot: Snapshot, room: str, drawing: Drawing, line_of: LineOf) -> str:
    """A drawing that opens the text it comes from."""
    at = written(snapshot, room, drawing.part)
    lines = "\n".join(text(line) for line in _lines(at, line_of))
    wide, high = PAPERS[drawing.paper]
    size = f'width="{wide}" height="{high}" loading="lazy"'
    return (
        f'<details class="face" id="face-{mark(drawing.name)}"><summary>'
        f'<img src="picture/{picture_name(drawing.svg)}.svg" alt="{text(drawing.title)}" {size}>'
        f"<span>{text(drawing.part)}</span></summary>{place(at)}<pre>{lines}</pre></details>"
    )


def _lines(at: Place, line_of: LineOf) -> Iterator[str]:
    """The heading and the lines under it, without those of the next heading."""
    head = line_of(at.path, at.line)
    yield head
    indent = len(head) - len(head.lstrip())
    for number in range(at.line + 1, at.line + LINES):
        line = line_of(at.path, number)
        if not line.strip() or len(line) - len(line.lstrip()) <= indent:
            return
        yield line
