"""What is shown and found while reading: hover, names across files, symbols, folding, links, the one format."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some
from viewing import CATALOGUE, edited, marked, samples, view_of

from roomspec.syntax.format import format_text
from roomspec_lsp.features.formatting import depth_at, formatted, typed
from roomspec_lsp.features.hover import hover_at
from roomspec_lsp.features.names import Name, files_at, name_at, occurrences, refusal, renamed
from roomspec_lsp.features.outline import folds, links, selections, symbols
from roomspec_lsp.features.search import found_names
from roomspec_lsp.features.view import Standing, View, standing

ROOM = """\
# A store.
room 1 "Store"
  height 2400
  on plasterboard
  surface sound
  finish board by glued vertical
  wall a 3000
    window 600 x 900 at 640 sill 1150
  wall b 2000
    allow narrow-strip because "behind shelves"
  wall c 3000
  wall d 2000
  diagonal a b 3606
"""
JOB = 'job x "X"\n  use "*.room"\n'
FILES = {"job.room": JOB, "catalogue.room": CATALOGUE, "one.room": ROOM}


def pointed(text: str, path: str = "one.room") -> tuple[View, Standing]:
    """The file with its `$0` taken out, and what stands there."""
    text, line, column = marked(text)
    view = view_of({**FILES, path: text}, path)
    return view, standing(view, line, column)


def hovered(before: str, after: str) -> str:
    """What is shown at `$0`, put between two texts of the room."""
    found = hover_at(*pointed(ROOM.replace(before + after, f"{before}$0{after}", 1)))
    return found.text if found is not None else ""


def test_a_wall_shows_its_area_its_pieces_and_its_load():
    """3000 by 2400 less a window of 600 by 900; 12 columns of 250, one of them cut through by the window."""
    text = hovered("  wall ", "a 3000")
    assert "3000 wide, 7.20 m2, 6.66 m2 without openings" in text
    assert "`board` by `glued`, vertical: 6.6" in text
    assert "pieces, 240 at the left, 240 at the right" in text or "at the left" in text
    assert "kg/m2 on plasterboard of 32 that it may carry" in text


def test_names_lengths_checks_and_words_are_explained():
    """The catalogue's own lines, other units, why a check asks, an example of a statement."""
    assert "price 31.50 each" in hovered("finish bo", "ard")
    assert hovered("height 24", "00") == "2400 mm = 2.4 m = about 7' 10 1/2\""
    assert "ANSI A108.02" in hovered("allow narrow", "-strip")
    assert "surface sound" in hovered("surf", "ace sound")
    assert hovered("# A st", "ore") == ""


def name_under(text: str, path: str = "one.room") -> tuple[View, Name]:
    """The name at `$0`."""
    view, at = pointed(text, path)
    name = name_at(view, at)
    assert name is not None
    return view, name


def test_a_name_is_found_across_files():
    """Its definition in the catalogue, its use in the room."""
    view, name = name_under(ROOM.replace("finish board", "finish bo$0ard"))
    found = {(one.place.path, one.place.line, one.defines) for one in occurrences(view, name)}
    assert found == {("catalogue.room", 1, True), ("one.room", 6, False)}


def test_a_name_is_renamed_everywhere():
    """In each file; refused where it is taken, or is no name."""
    view, name = name_under(CATALOGUE.replace("method glued", "method gl$0ued"), "catalogue.room")
    edits = renamed(view, name, "stuck")
    assert [(edit.place.path, edit.text) for edit in edits] == [("catalogue.room", "stuck"), ("one.room", "stuck")]
    assert refusal(view, name, "stuck") == ""
    assert "no name" in refusal(view, name, "two words")
    grab = Name("adhesive", "grab", name.place)
    assert refusal(view, grab, "grab") == "there is already an adhesive called grab"


def test_a_name_that_a_line_would_read_otherwise_is_refused():
    """A trim called `mitred` would be no trim where a method names it."""
    catalogue = CATALOGUE + "  edge steel\ntrim ste$0el\n  role edge\n  length 2600\n  price 3.00 each\n"
    view, name = name_under(catalogue, "catalogue.room")
    assert "would be read otherwise in catalogue.room" in refusal(view, name, "mitred")


def test_a_wall_is_renamed_with_what_refers_to_it():
    """In its room's diagonals, and in rooms made from its pattern."""
    view, name = name_under(ROOM.replace("wall b", "wall $0b"))
    assert [edit.place.line for edit in renamed(view, name, "north")] == [9, 13]
    pattern = "pattern p\n  wall $0a 2000\n  wall b 1000\nroom 1 as p\n  wall a 1900\nroom 2\n  wall a 1\n"
    view, name = name_under(pattern)
    assert [edit.place.line for edit in renamed(view, name, "north")] == [2, 5]


def test_a_use_line_leads_to_its_files():
    """All that the pattern finds."""
    view, at = pointed('job x "X"\n  use "*.ro$0om"\n', "job.room")
    assert files_at(view, at) == ("catalogue.room", "job.room", "one.room")
    (link,) = links(view)
    assert (link.place.column, link.files[0]) == (8, "catalogue.room")


def test_symbols_nest_and_names_are_found_by_their_letters():
    """Walls stand in their room; `glu` finds the method, and a title is searched too."""
    view = view_of(FILES, "one.room")
    (room,) = symbols(view)
    assert (room.name, room.kind, room.detail) == ("1", "room", "Store")
    assert [part.name for part in room.parts] == ["a", "b", "c", "d"]
    assert [one.name for one in found_names(view.snapshots, "gld")] == ["glued"]
    assert [one.name for one in found_names(view.snapshots, "store")] == ["1"]


@pytest.mark.parametrize("job", samples())
def test_places_nest_in_every_sample(job: str):
    """A name lies in its symbol, a part in its whole; folds and selections run forward."""
    files = samples()[job]
    for path in files:
        view = view_of(files, path)
        for symbol in symbols(view):
            for one in (symbol, *symbol.parts):
                assert (one.place.line, one.place.column) <= (one.name_place.line, one.name_place.column)
                assert (one.name_place.end_line, one.name_place.end_column) <= (
                    one.place.end_line,
                    one.place.end_column,
                )
                assert symbol.place.line <= one.place.line <= one.place.end_line <= symbol.place.end_line
        assert all(first <= last for first, last, _ in folds(view))


def test_headings_and_comments_fold():
    """A room to its last line, each wall to its own, comments together."""
    view = view_of({"one.room": f"# one\n# two\n{ROOM}\n# of the next\nroom 2\n"}, "one.room")
    assert {(3, 14, "region"), (8, 9, "region"), (0, 2, "comment")} <= set(folds(view))


def test_a_selection_grows_from_the_word_to_the_file():
    """Word, part of a line, line, wall, room, file; each around the one before."""
    places = selections(*pointed(ROOM.replace("at 640", "at 6$040")))
    assert [(place.line, place.column, place.end_line) for place in places][:4] == [
        (8, 25, 8),
        (8, 22, 8),
        (8, 5, 8),
        (8, 1, 8),
    ]
    assert places[-1].line == 1


@given(some.lists(some.sampled_from([*ROOM.split("\n"), "  wieghs 5 # x", "units in", "", "   "]), max_size=12))
@settings(max_examples=40, deadline=None)
def test_format_edits_give_the_formatted_text(lines: list[str]):
    """Whatever the text."""
    text = "\n".join(lines)
    view = view_of({"one.room": text}, "one.room")
    assert edited_exactly(view, formatted(view)) == format_text(text)


def edited_exactly(view: View, edits: object) -> str:
    """The text with the edits made as an editor makes them."""
    from roomspec.analysis.mend import span

    text = view.lines.text
    for start, end, new in sorted((span(view.lines, edit) for edit in edits), reverse=True):  # type: ignore[attr-defined]
        text = text[:start] + new + text[end:]
    return text


def test_a_range_is_formatted_as_in_the_whole():
    """Only its lines change."""
    view = view_of({"one.room": "room 1\nheight   2400\n wall a 3000\n"}, "one.room")
    assert edited(view, formatted(view, 2, 2)) == "room 1\nheight   2400\n  wall a 3000\n"


def test_a_line_break_formats_the_line_before_and_indents_the_next():
    """As deep as a line stands under the heading above."""
    view = view_of({"one.room": "room 1\nheight   2400\n\n"}, "one.room")
    assert edited(view, typed(view, 2)) == "room 1\n  height  2400\n  \n"
    view = view_of({"one.room": "room 1\n  wall a 2400\n\n"}, "one.room")
    assert depth_at(view, 2) == 4
