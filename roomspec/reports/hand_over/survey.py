"""The survey sheet: what nobody has confirmed yet, with room to write what is found."""

from collections.abc import Iterator

from roomspec.model.wall import Wall
from roomspec.reports.hand_over.given import HandOver, SameRooms, begun, faces_text
from roomspec.reports.hand_over.title_block import sheet_of
from roomspec.reports.paper.numerals import Numerals
from roomspec.reports.paper.sheet import Part, Points, Sheet, Table, Words, with_content
from roomspec.text.listing import listed

Row = tuple[str, str, str]
"""Where, what, what it is taken as."""


def survey(given: HandOver) -> Sheet:
    """Sizes and walls to confirm room by room, then what the job itself leaves open."""
    rows: list[tuple[str, ...]] = []
    for same in given.rooms:
        found = [(*row, "", "") for row in open_in(same, given.numerals)]
        rows += [(same.title,), *found] if found else []
    heads = ("Where", "What", "Taken as", "Found on site", "By, on")
    table = (Table("To confirm on site", heads, "lllww", tuple(rows)),) if rows else ()
    parts = with_content(
        Part("Rooms", table or (Words("Every size, wall and surface that is lined was recorded."),)),
        Part("The job", (Points(_open_of_job(given), "tick"),) if _open_of_job(given) else ()),
        Part("Signed", (Table("Who surveyed", ("Name", "On", "Signature"), "www", (("", "", ""),)),)),
    )
    facts = (("Fitting begins", given.numerals.day(given.made.job.terms.fit_on)),)
    return sheet_of(given, "Survey sheet", facts, parts)


def open_in(same: SameRooms, numerals: Numerals) -> Iterator[Row]:
    """What is open in a room: what is only about so large, then what the lined walls are like."""
    room = same.room
    for wall in room.walls:
        yield from _about(wall, numerals)
    for ceiling in room.ceilings:
        if not ceiling.confirmed:
            sizes = [numerals.size(size) for size in (ceiling.width, ceiling.depth) if size is not None]
            yield f"Ceiling {ceiling.name}", "size", f"about {' × '.join(sizes) or 'as the walls'}"
    for line in room.diagonals:
        if not line.confirmed:
            yield f"Diagonal {line.start} {line.end}", "length", f"about {numerals.size(line.length)}"
    faces = [face for face in same.faces if face.taken and face.laid and face.laid[0].where in ("wall", "ceiling")]
    glued = [face for face in faces if any(taken.method.glue for taken in face.taken)]
    unknown = ("unknown",)
    yield from _of_walls([f.name for f in faces if not f.face.substrates], "what it is made of", "fit to carry it")
    yield from _of_walls([f.name for f in glued if not f.face.surfaces], "surface", "sound, dry and clean")
    yield from _of_walls(
        [f.name for f in faces if any(s.condition in unknown for s in f.face.surfaces)], "surface", "unknown"
    )
    yield from _of_walls([f.name for f in faces if not f.face.flatness], "flat and plumb", "within the panels' limits")
    loaded = [(f.name, p) for f in faces for p in f.face.points if p.load is None and p.kind == "fixture"]
    for name, point in loaded:
        yield begun(name), f"weight of {point.label or 'the fixture'}", "not recorded"


def _about(wall: Wall, numerals: Numerals) -> Iterator[Row]:
    name = f"Wall {wall.name}"
    if not wall.confirmed:
        yield name, "width", f"about {numerals.size(wall.width)}"
    if not wall.height_confirmed:
        yield name, "height", f"about {listed(sorted({numerals.size(y) for _, y in wall.top}))}"
    for opening in wall.openings:
        if not opening.confirmed:
            size = f"{numerals.size(opening.width)} × {numerals.size(opening.height)}"
            yield name, f"{opening.kind} {opening.label}".strip(), f"about {size} at {numerals.size(opening.x)}"
    for thing in wall.obstacles:
        if not thing.confirmed:
            size = f"{numerals.size(thing.width)} × {numerals.size(thing.height)}"
            yield name, f"{thing.kind} {thing.label}".strip(), f"about {size} at {numerals.size(thing.x)}"
    for box in wall.boxing:
        if not box.confirmed:
            size = f"{numerals.size(box.width)} × {numerals.size(box.height)}, {numerals.size(box.deep)} deep"
            yield name, f"boxing {box.label}".strip(), f"about {size} at {numerals.size(box.x)}"


def _of_walls(names: list[str], what: str, taken: str) -> Iterator[Row]:
    if names:
        yield begun(faces_text(names)), what, taken


def _open_of_job(given: HandOver) -> tuple[str, ...]:
    job, out = given.made.job, given.out
    terms = job.terms
    missing = (
        (terms.date is None, "The date of the quotation is not given."),
        (terms.fit_on is None, "The day on which fitting begins is not given: deliveries cannot be dated."),
        (terms.built is None, "The year of the building is not recorded."),
        (job.gang is None, "No gang is named."),
        (not any(line.product.valid_until for line in given.made.taken.quantities), "No price is given an end."),
    )
    unpriced = [f"A price for {line.kind} {line.item}." for line in out.order if line.cost is None and line.ordered]
    untimed = [f"The time for {line.task}." for line in out.labour if line.constant_hours is None]
    return (*(text for open_still, text in missing if open_still), *unpriced, *untimed)
