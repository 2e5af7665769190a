"""The fitters' sheets: cautions, then for each room its drawings, what to cut, the sequence of work, checks to tick."""

from collections.abc import Mapping

from roomspec.reports.hand_over.blanks import length_blanks, panel_blanks
from roomspec.reports.hand_over.cutting import cutting_part
from roomspec.reports.hand_over.given import HandOver, SameRooms
from roomspec.reports.hand_over.sequence import sequence_of
from roomspec.reports.hand_over.ticks import ticks_of
from roomspec.reports.hand_over.title_block import sheet_of
from roomspec.reports.paper.sheet import Drawing, Part, Points, Sheet, Words, with_content

Drawings = Mapping[str, tuple[Drawing, ...]]
"""Room name -> what is drawn of it; under "" the cutting drawings."""
TO_SCALE = "Printed at full size on the paper that its title block names, each is to scale."
ORDER_OF_WORK = "The sequence is common practice; where the makers' instructions say otherwise, they decide."


def fitters(given: HandOver, drawings: Drawings) -> Sheet:
    """A sheet for each room or kind of room that is lined, then the cutting plans; the cautions stand first.

    Rooms that are alike have one sheet; its drawings are those of the first of them.
    """
    numerals, terms = given.numerals, given.made.job.terms
    lined = [(at, same) for at, same in enumerate(given.rooms, start=1) if any(face.taken for face in same.faces)]
    rooms = tuple(_room(given, same, drawings.get(same.room.name, ()), f"room-{at}") for at, same in lined)
    cautions = Part("Cautions", (Points(given.out.cautions),) if given.out.cautions else (), anchor="cautions")
    notes = Part("Notes on the job", (Points(given.made.job.notes),) if given.made.job.notes else ())
    nothing = () if rooms else (Part("Rooms", (Words("No wall is lined."),)),)
    parts = with_content(cautions, notes, *nothing, *rooms, cutting_part(given, drawings.get("", ())))
    return sheet_of(given, "Fitters' sheets", (("Fitting begins", numerals.day(terms.fit_on)),), parts)


def _room(given: HandOver, same: SameRooms, drawn: tuple[Drawing, ...], anchor: str) -> Part:
    numerals = given.numerals
    tables = panel_blanks(same, numerals), length_blanks(same, numerals)
    parts = with_content(
        Part("Notes", _listed(_notes(same))),
        Part("What to cut", tuple(table for table in tables if table.rows)),
        Part("Sequence of work", (*_listed(sequence_of(same, numerals), "numbered"), Words(ORDER_OF_WORK))),
        Part("Checks to tick", _listed(ticks_of(same, numerals, given.made.job.terms.narrowest), "tick")),
        Part("Drawings", (Words(TO_SCALE), *drawn) if drawn else ()),
    )
    kind = "Room" if len(same.names) == 1 else "Rooms"
    return Part(f"{kind} {same.title}", (), parts, anchor, new_page=True)


def _listed(items: tuple[str, ...], way: str = "plain") -> tuple[Points, ...]:
    return (Points(items, way),) if items else ()


def _notes(same: SameRooms) -> tuple[str, ...]:
    """What was written down for whoever reads on: of the room, its walls and ceilings, its methods."""
    room = same.room
    walls = [(f"Wall {wall.name}", note) for wall in room.walls for note in wall.notes]
    ceilings = [(f"Ceiling {ceiling.name}", note) for ceiling in room.ceilings for note in ceiling.notes]
    methods = dict.fromkeys(taken.method for face in same.faces for taken in face.taken)
    panels = dict.fromkeys(taken.panel for face in same.faces for taken in face.taken)
    return (
        *room.notes,
        *(f"{name}: {note}" for name, note in walls + ceilings),
        *(f"{method.title or method.name}: {note}" for method in methods for note in method.notes),
        *(f"{panel.title or panel.name}: {note}" for panel in panels for note in panel.notes),
        *(trouble for face in same.faces for taken in face.taken for trouble in taken.troubles),
    )
