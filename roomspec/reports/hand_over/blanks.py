"""What is cut for one room: panels by wall, trims and battens by their lengths."""

from collections.abc import Iterator

from roomspec.layout.laid import Lining, Piece
from roomspec.reports.hand_over.given import FaceMade, SameRooms, begun, called
from roomspec.reports.paper.numerals import Numerals
from roomspec.reports.paper.sheet import Table
from roomspec.reports.wording import ranged
from roomspec.takeoff.clip import box_round, length_of
from roomspec.takeoff.lengths import lengths_of_run


def panel_blanks(same: SameRooms, numerals: Numerals) -> Table:
    """Pieces of one size and kind on a wall are one row; their numbers are those of the drawing."""
    rows: list[tuple[str, ...]] = []
    for face in same.faces:
        for lining in face.laid:
            panel, method = lining.panel, lining.method
            rows.append((f"{begun(face.name)}: {panel.title or panel.name}; {method.title or method.name}",))
            rows += _rows_of(face, lining, numerals)
    heads = ("Pieces", "How many", "Length", "Width", "Note")
    return Table("Panels to cut", heads, "lrrrl", tuple(rows))


def _rows_of(face: FaceMade, lining: Lining, numerals: Numerals) -> Iterator[tuple[str, ...]]:
    groups: dict[tuple[int, int, str], list[Piece]] = {}
    for piece in lining.pieces:
        groups.setdefault((piece.length, piece.width, _note(piece, lining)), []).append(piece)
    for (length, width, note), pieces in groups.items():
        numbers = ranged([str(piece.number) for piece in pieces])
        sizes = numerals.size(length), numerals.size(width)
        yield (f"{face.mark}/{numbers}", numerals.number(len(pieces)), *sizes, note)


def _note(piece: Piece, lining: Lining) -> str:
    box = box_round(piece.outline)
    notes = []
    if piece.where != lining.where:
        notes.append(piece.where)
    if lining.panel.sequence > 1:
        notes.append(f"panel {piece.set_number + 1} of its set")
    if piece.holes:
        notes.append("with a hole")
    if len(piece.outline) > 4:
        notes.append("notched or stepped: see the wall")
    elif piece.area != (box.right - box.left) * (box.top - box.bottom) and not piece.holes:
        notes.append("cut on a slope: see the wall")
    return ", ".join(notes)


def length_blanks(same: SameRooms, numerals: Numerals) -> Table:
    """Trims and battens: lengths of one product and role on a wall, longest first."""
    rows: list[tuple[str, ...]] = []
    for face in same.faces:
        counts: dict[tuple[str, str, int, int], int] = {}
        for taken in face.taken:
            for run in taken.trims:
                for part in lengths_of_run(run.length, run.trim, same.room.access):
                    key = called(run.trim), run.role.replace("-", " "), part, run.mitres
                    counts[key] = counts.get(key, 0) + 1
            for batten in taken.battens:
                for part in lengths_of_run(length_of(batten.line), batten.support, same.room.access):
                    key = called(batten.support), _LAYERS[min(batten.layer, 1)], part, 0
                    counts[key] = counts.get(key, 0) + 1
        rows += [(begun(face.name),)] if counts else []
        for title, role, length, mitres in sorted(counts, key=lambda key: (key[0], key[1], -key[2], key[3])):
            note = {0: "", 1: "one end mitred"}.get(mitres, "both ends mitred")
            count = numerals.number(counts[title, role, length, mitres])
            rows.append((title, role, count, numerals.size(length), note))
    return Table("Trims and battens to cut", ("What", "Where", "How many", "Length", "Note"), "llrrl", tuple(rows))


_LAYERS = ("batten under the panels", "batten behind")
