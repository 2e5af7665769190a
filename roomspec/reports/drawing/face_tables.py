"""The tables beside an elevation: what is laid and how, trims, points, pieces, what stays, notes."""

from collections.abc import Iterable, Iterator, Mapping, Sequence

from roomspec.layout.laid import Piece
from roomspec.model.product import Trim
from roomspec.model.wall import Wall
from roomspec.quantities.in_units import is_imperial
from roomspec.reports.drawing.face_drawing import FaceDrawn
from roomspec.reports.drawing.faces import DrawnLining, FaceView
from roomspec.reports.drawing.point_marks import point_rows
from roomspec.reports.drawing.setting_out import start_words
from roomspec.reports.drawing.shape_words import shape_words
from roomspec.reports.drawing.sizes import size_text, sizes_text
from roomspec.reports.drawing.tables import Block
from roomspec.reports.drawing.trim_labels import runs_of
from roomspec.reports.paper.numerals import Numerals
from roomspec.reports.wording import number_of, ranged
from roomspec.takeoff.lines import panels_run_up

_NUMBER, _POINT, _PLACE = 9.0, 8.0, 13.0


def face_blocks(view: FaceView, drawn: FaceDrawn, names: Mapping[Trim, str], numerals: Numerals) -> tuple[Block, ...]:
    """All tables of a face, those without rows too."""
    if view.extent == "stretch":
        return own_blocks(view, drawn, numerals)
    return (
        *(_lining_block(view.wall, at, lining, numerals) for at, lining in enumerate(view.linings, 1)),
        Block("Supports", tuple(_supports(view, numerals))),
        trim_block([view], names, numerals),
        *own_blocks(view, drawn, numerals),
    )


def trim_block(views: Sequence[FaceView], names: Mapping[Trim, str], numerals: Numerals) -> Block:
    """The trims of some faces, with their lengths."""
    return Block("Trims", tuple(_trim_rows(views, names, numerals)), (_NUMBER,))


def lining_rows(views: Sequence[FaceView]) -> Block:
    """What lies on each of some faces, faces that are alike together."""
    told = _alike(
        (
            f"{one.laid.panel.title or one.laid.panel.name}, {_way(one)},"
            f" {one.laid.method.title or one.laid.method.name}",
            view.title,
        )
        for view in views
        for one in view.linings
    )
    return Block("Linings", tuple((f"{where}: {what}",) for what, where in told))


def own_blocks(view: FaceView, drawn: FaceDrawn, numerals: Numerals) -> tuple[Block, ...]:
    """The tables of a face's points, openings and pieces, of what stays, and its notes."""
    wide = 23.0 if is_imperial(numerals.units) else _PLACE
    pieces = [piece for lining in view.linings for piece in lining.pieces if view.extent != "overview"]
    notes = [*view.wall.notes, *(["Seen from below."] if view.where == "ceiling" else [])]
    return (
        Block(
            "Points: from left, up",
            point_rows(view.wall.points, numerals),
            (_POINT, wide, wide)[: 1 if is_imperial(numerals.units) else 3],
        ),
        Block("Openings: from left", drawn.holes, (wide,)),
        Block("Pieces: length × width", size_rows(drawn.without_size, numerals)),
        Block("Too small to number", _order_rows(view, drawn.without_number)),
        Block("Shaped pieces", _shape_rows(pieces, numerals)),
        Block("Stays", tuple(_stays(view.wall, numerals))),
        Block("Notes", tuple((note,) for note in notes)),
    )


def _lining_block(wall: Wall, at: int, lining: DrawnLining, numerals: Numerals) -> Block:
    laid = lining.laid
    finish = wall.finishes[laid.finishes[0]]
    up = panels_run_up(laid.direction)
    rows = [laid.panel.title or laid.panel.name, laid.method.title or laid.method.name]
    rows.append(f"{_way(lining)}, {number_of(len(lining.pieces), 'piece')}" + ("" if up else f", bond {finish.bond}"))
    if up:
        rows.append(start_words(finish.start, "panels"))
    else:
        rows += [start_words(finish.rows, "rows"), start_words(finish.start, "panels")]
    rows += [f"Not laid: {numerals.sentence(trouble)}" for trouble in laid.troubles]
    return Block(f"Lining {at}", tuple((row,) for row in rows))


def _way(lining: DrawnLining) -> str:
    return {"vertical": "upright", "horizontal": "flat"}.get(lining.laid.direction, lining.laid.direction)


def _supports(view: FaceView, numerals: Numerals) -> Iterator[tuple[str, ...]]:
    told: dict[str, None] = {}
    for lining in view.linings:
        for number, layer in enumerate(lining.laid.method.battens):
            count = sum(batten.layer == number for batten in lining.taken.battens)
            size = f"{size_text(layer.support.depth, numerals)} × {size_text(layer.support.width, numerals)}"
            behind = ", layer behind" if number else ""
            told[f"battens {size}, at most {size_text(layer.every, numerals)} apart{behind}: {count}"] = None
    for studs in view.wall.studs:
        way = "studs" if studs.direction == "vertical" else "level studs"
        told[f"{way} every {size_text(studs.every, numerals)}, drawn from the end: find them on site"] = None
    yield from ((line,) for line in told)


def _trim_rows(views: Iterable[FaceView], names: Mapping[Trim, str], numerals: Numerals) -> Iterator[tuple[str, ...]]:
    lengths: dict[Trim, dict[str, int]] = {}
    for view in views:
        for run in runs_of(view):
            text = size_text(run.length, numerals) + (" mitred" + " both ends" * (run.mitres > 1) if run.mitres else "")
            counts = lengths.setdefault(run.trim, {})
            counts[text] = counts.get(text, 0) + 1
    for trim, counts in lengths.items():
        told = ", ".join(f"{count} of {text}" if count > 1 else text for text, count in counts.items())
        yield names[trim], f"{trim.title or trim.name}: {told}"


def size_rows(pieces: Sequence[Piece], numerals: Numerals) -> tuple[tuple[str, ...], ...]:
    """Pieces of one size on one row: `450 × 150: 15 to 18, 21`."""
    found = _alike((sizes_text(piece.length, piece.width, numerals), str(piece.number)) for piece in pieces)
    return tuple((f"{size}: {numbers}",) for size, numbers in found)


def _order_rows(view: FaceView, pieces: Sequence[Piece]) -> tuple[tuple[str, ...], ...]:
    """Pieces without a number on the drawing, strip by strip in their order: they can be counted there."""
    up = {piece.number: panels_run_up(lining.laid.direction) for lining in view.linings for piece in lining.pieces}
    found = _alike(
        (
            f"column {piece.column}, upwards" if up[piece.number] else f"row {piece.row}, from the left",
            str(piece.number),
        )
        for piece in pieces
    )
    return tuple((f"{strip}: {numbers}",) for strip, numbers in found)


def _shape_rows(pieces: Sequence[Piece], numerals: Numerals) -> tuple[tuple[str, ...], ...]:
    """Pieces cut to one shape on one row."""
    found = _alike((words, str(piece.number)) for piece in pieces if (words := shape_words(piece, numerals)))
    return tuple((f"{numbers}: {words}",) for words, numbers in found)


def _alike(told: Iterable[tuple[str, str]]) -> tuple[tuple[str, str], ...]:
    """What is said, each once, and the numbers of which it is said: `1 to 7, 9`."""
    found: dict[str, list[str]] = {}
    for words, number in told:
        found.setdefault(words, []).append(number)
    return tuple((words, ranged(numbers)) for words, numbers in found.items())


def _stays(wall: Wall, numerals: Numerals) -> Iterator[tuple[str, ...]]:
    for keep in wall.keeps:
        yield (f"{keep.kind} {size_text(keep.size, numerals)}",)
    if wall.upstand is not None:
        lap = "" if wall.upstand.lap is None else f", panels lap {size_text(wall.upstand.lap, numerals)}"
        yield (f"floor covering turned up {size_text(wall.upstand.height, numerals)}{lap}",)
