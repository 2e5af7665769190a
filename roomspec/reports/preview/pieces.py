"""What of a job stands on the live page: its findings, its order and price, what changed, and each of its rooms."""

from collections.abc import Callable, Iterable, Sequence
from hashlib import sha256

from msgspec import Struct

from roomspec.analysis.found import Found, Place, place_of
from roomspec.analysis.session import Snapshot
from roomspec.reports.comparison.compare import compare
from roomspec.reports.comparison.side import Side
from roomspec.reports.comparison.variation import variation
from roomspec.reports.drawing.job_drawings import Drawing, draw_rooms
from roomspec.reports.estimate_sections import estimate_sections
from roomspec.reports.findings_text import counted
from roomspec.reports.markup import marked_up
from roomspec.reports.paper.numerals import numerals_of
from roomspec.reports.paper.page import part_lines
from roomspec.reports.paper.sheet import Block, Part, Points, Table, Words
from roomspec.reports.section import Section, used_columns
from roomspec.reports.width import shown

LineOf = Callable[[str, int], str]
"""Takes a path and a line from 1; gives its text, "" where there is none."""

MOST = 200
"""Findings on the page; of more only the number is said."""
PAPERS = {"A4": (1188, 840), "A3": (1680, 1188)}
"""Four pixels a millimetre: a picture takes its place before it is there."""
LINES = 40
"""Lines of a wall's text that are shown."""


class Piece(Struct, frozen=True):
    """A part of the page that is replaced as a whole when its HTML changes; `name` is its id."""

    name: str
    html: str


class RoomShown(Struct, frozen=True):
    """A room's piece, and the SVG of each picture in it by the picture's name."""

    piece: Piece
    pictures: dict[str, str]


def job_title(snapshot: Snapshot) -> str:
    """The job's own title, or its name."""
    return snapshot.compiled.job.title or snapshot.compiled.job.name


def findings_piece(findings: Sequence[Found], line_of: LineOf) -> Piece:
    """Every finding with its line, the worst first."""
    worst = sorted(findings, key=lambda one: ("error", "warning", "hint").index(one.severity))
    items = "".join(_finding(one, line_of) for one in worst[:MOST])
    more = f"<p>and {len(worst) - MOST:,} more</p>" if len(worst) > MOST else ""
    return Piece("findings", f"<h2>Findings</h2><p>{_text(counted(findings))}</p><ul>{items}</ul>{more}")


def _finding(found: Found, line_of: LineOf) -> str:
    line = line_of(found.place.path, found.place.line).strip()
    help_ = f'<p class="help">{_text(found.help)}</p>' if found.help else ""
    return (
        f'<li class="{found.severity}"><p><strong>{found.severity}</strong> {_text(found.message)}</p>'
        f"{_place(found.place)}<pre>{_text(line)}</pre>{help_}</li>"
    )


def _place(place: Place) -> str:
    """The place as words to copy, and as a button that shows it in the editor, where one listens."""
    told = f"<code>{_text(f'{place.path}:{place.line}')}</code>"
    data = f'data-path="{_text(place.path)}" data-line="{place.line}"'
    return f'<p class="place">{told} <button type="button" class="show" {data} hidden>Show in the editor</button></p>'


def cost_pieces(side: Side) -> tuple[Piece, Piece]:
    """The order and the price, as the estimate prints them."""
    found = {section.title: section for section in estimate_sections(side.out)}
    return _of_section("order", found.get("Order")), _of_section("price", found.get("Price"))


def _of_section(name: str, section: Section | None) -> Piece:
    if section is None:
        return Piece(name, f"<h2>{name.capitalize()}</h2><p>Nothing yet.</p>")
    used = used_columns(section)
    rows = tuple(row if len(row) == 1 else tuple(row[at] for at in used) for row in section.rows)
    heads = tuple(section.heads[at] for at in used)
    align = "".join("r" if section.align[at] == "r" else "l" for at in used)
    table = Table(section.title, heads, align, rows, section.totals)
    blocks: list[Block] = [Words(sentence) for sentence in section.before]
    blocks += [table] if rows else []
    blocks += [Points(section.items)] if section.items else []
    return Piece(name, "\n".join(part_lines(Part(section.title, tuple(blocks)), 2)))


def changes_piece(opened: Side, now: Side) -> Piece:
    """What has changed since the page was opened."""
    out = compare(opened, now)
    title = "Changed since this page was opened"
    if not out.changed:
        return Piece("changes", f"<h2>{title}</h2><p>Nothing.</p>")
    sheet = variation(out, numerals_of(out.units, out.currency, now.job.terms.locale))
    parts = "\n".join(line for part in sheet.parts for line in part_lines(part, 3))
    return Piece("changes", f"<h2>{title}</h2>{parts}")


def room_shown(snapshot: Snapshot, line_of: LineOf) -> dict[str, RoomShown]:
    """Each room by its name, in the job's order; rooms that are alike are drawn with the first of them."""
    job = snapshot.compiled.job
    drawings = draw_rooms(job, zip(job.rooms, snapshot.laid, snapshot.taken, strict=True), errors=0)
    by_room: dict[str, list[Drawing]] = {}
    for drawing in drawings:
        by_room.setdefault(drawing.rooms[0], []).append(drawing)
    found = {}
    for room in job.rooms:
        drawn = by_room.get(room.name, [])
        alike = sorted({name for one in drawn for name in one.rooms if name != room.name})
        title = f"{room.name} {room.title}".strip()
        like = f"<p>Drawn for {_text(', '.join(alike))} too.</p>" if alike else ""
        figures = "".join(_figure(snapshot, room.name, one, line_of) for one in drawn)
        if drawn:
            html = f"<h2>{_text(title)}</h2>{like}{figures}"
            pictures = {picture_name(one.svg): one.svg for one in drawn}
            found[room.name] = RoomShown(Piece(f"room-{_mark(room.name)}", html), pictures)
    return found


def picture_name(svg: str) -> str:
    """The same for the same picture only."""
    return sha256(svg.encode()).hexdigest()[:24]


def _figure(snapshot: Snapshot, room: str, drawing: Drawing, line_of: LineOf) -> str:
    """A drawing that opens the text it comes from."""
    place = _written(snapshot, room, drawing.part)
    text = "\n".join(_text(line) for line in _lines(place, line_of))
    wide, high = PAPERS[drawing.paper]
    size = f'width="{wide}" height="{high}" loading="lazy"'
    return (
        f'<details class="face" id="face-{_mark(drawing.name)}"><summary>'
        f'<img src="picture/{picture_name(drawing.svg)}.svg" alt="{_text(drawing.title)}" {size}>'
        f"<span>{_text(drawing.part)}</span></summary>{_place(place)}<pre>{text}</pre></details>"
    )


def _written(snapshot: Snapshot, room: str, part: str) -> Place:
    """Where a wall or a ceiling is written; the room's heading for its plan."""
    kind, _, name = part.split(", ")[0].partition(" ")
    path = (kind, name) if kind in ("wall", "ceiling") else ()
    origin = snapshot.compiled.origins[f"room {room}"].at(path)
    return place_of(origin, snapshot.blocks, snapshot.path)


def _lines(place: Place, line_of: LineOf) -> Iterable[str]:
    """The heading and the lines under it, without those of the next heading."""
    head = line_of(place.path, place.line)
    yield head
    indent = len(head) - len(head.lstrip())
    for number in range(place.line + 1, place.line + LINES):
        line = line_of(place.path, number)
        if not line.strip() or len(line) - len(line.lstrip()) <= indent:
            return
        yield line


def blocks_of(snapshot: Snapshot, room: str) -> frozenset[str]:
    """The blocks of text that a room is made of: its own, and its pattern's."""
    origins = snapshot.compiled.origins[f"room {room}"]
    paths = [(kind, name) for kind, name in origins.faces]
    return frozenset({origins.head.block, *(origins.at(path).block for path in paths)})


def _mark(name: str) -> str:
    """A name as an id: letters and figures, and a mark of all of it where anything else is in it."""
    plain = "".join(c if c.isascii() and c.isalnum() else "-" for c in name)
    return plain if plain == name else f"{plain}-{sha256(name.encode()).hexdigest()[:6]}"


def _text(text: str) -> str:
    return marked_up(shown(text))
