"""Every feature at every place, of samples and of damaged texts: nothing falls."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some
from viewing import CATALOGUE, repository_of, samples, view_of

from roomspec.analysis.found import Place
from roomspec_lsp.features.completion import offers
from roomspec_lsp.features.formatting import formatted, typed
from roomspec_lsp.features.hierarchy import block_symbol, called, callers
from roomspec_lsp.features.hints import hints
from roomspec_lsp.features.hover import hover_at
from roomspec_lsp.features.lenses import lenses
from roomspec_lsp.features.mends import mend_all, mends_of
from roomspec_lsp.features.names import files_at, name_at, occurrences, refusal
from roomspec_lsp.features.outline import folds, links, selections, symbols
from roomspec_lsp.features.rewriting import rewritings
from roomspec_lsp.features.signature import signature_at
from roomspec_lsp.features.tokens import tokens
from roomspec_lsp.features.units import conversions
from roomspec_lsp.features.view import View, standing

SAMPLES = samples()
FILES = [(job, path) for job, files in SAMPLES.items() for path in files]
IDS = [f"{job}/{path}" for job, path in FILES]


def inside(view: View, place: Place) -> bool:
    """True where a place of this file lies in it, forward."""
    last = len(view.lines.starts)
    forward = (place.line, place.column) <= (place.end_line, place.end_column)
    return place.path != view.path or (forward and place.line >= 1 and place.end_line <= last + 1)


def hold(view: View, step: int) -> None:
    """Ask everything of a file; at every `step`th column."""
    found = repository_of({view.path: view.lines.text}).check().get(view.path, ())
    for edit in formatted(view):
        assert inside(view, edit.place)
    assert mend_all(view, ()) is None
    for many in (list(tokens(view.lines)), list(hints(view, 0, 10_000)), list(lenses(view)), list(folds(view))):
        assert many is not None
    for symbol in symbols(view):
        assert inside(view, symbol.place)
    assert all(link.files for link in links(view))
    for mend in (*mends_of(view, found, 0, 10_000), *conversions(view)):
        assert all(inside(view, edit.place) for edit in mend.edits)
    for line in range(len(view.lines.starts)):
        for mend in rewritings(view, line):
            assert all(inside(view, edit.place) for edit in mend.edits)
        for edit in typed(view, line):
            assert inside(view, edit.place)
        for column in range(0, len(view.lines.line(line)) + 1, step):
            _hold_at(view, line, column)


def _hold_at(view: View, line: int, column: int) -> None:
    at = standing(view, line, column)
    hover = hover_at(view, at)
    assert hover is None or (hover.text and inside(view, hover.place))
    name = name_at(view, at)
    if name is not None:
        assert any(one.place == name.place for one in occurrences(view, name)), name
        assert refusal(view, name, "a b")
    assert isinstance(files_at(view, at), tuple)
    places = selections(view, at)
    assert all(inside(view, place) for place in places)
    assert all(offer.start <= column for offer in offers(view, line, column))
    signature = signature_at(view, line, column)
    assert signature is None or signature.wanted
    symbol = block_symbol(view, line)
    if symbol is not None and column == 0:
        assert list(callers(view, symbol.kind, symbol.name)) is not None
        assert list(called(view, symbol.kind, symbol.name)) is not None


@pytest.mark.parametrize(("job", "path"), FILES, ids=IDS)
def test_everything_is_answered_everywhere_in_the_samples(job: str, path: str):
    """At every seventh column of every line."""
    hold(view_of(SAMPLES[job], path), 7)


LINES = (
    *CATALOGUE.split("\n"),
    *("job x", '  use "*.room"', "room 1", "room 1 as p mirrored", "pattern p", "rooms 1 to 3 as p", "rooms", "wall"),
    *(
        "  wall a 3000",
        "  wall a",
        "  wall b about 2 m",
        "  height 2400",
        "    finish board by glued vertical",
        "units in",
    ),
    *(
        "    finish board by",
        "  diagonal a b 3606",
        '  allow narrow-strip because "x"',
        "  levl 1",
        "# é🚪",
        "",
        "  \t",
    ),
    *("  ceiling", "    door 900 x 2000", '  use "../x', "  takes 0.3 h/m2 for", '"', "  floor 0 to 5"),
)


@given(some.lists(some.sampled_from(LINES), max_size=14))
@settings(max_examples=60, deadline=None)
def test_everything_is_answered_in_damaged_texts(lines: list[str]):
    """Lines in any order, broken ones among them."""
    hold(view_of({"one.room": "\n".join(lines)}, "one.room"), 5)
