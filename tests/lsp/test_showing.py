"""Tokens, hints, lenses, who is made from whom, and files that move."""

import itertools
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some
from talking import CAPABILITIES, Client, at, between, uri_of
from viewing import CATALOGUE, samples, view_of

from roomspec.syntax.line import Line, read_line
from roomspec.syntax.statements import words_of
from roomspec_lsp.features.hierarchy import called, callers
from roomspec_lsp.features.hints import hints
from roomspec_lsp.features.legend import TYPES
from roomspec_lsp.features.lenses import lenses
from roomspec_lsp.features.moving import followed
from roomspec_lsp.features.tokens import delta, encoded, tokens

Start = Callable[..., Client]
PATTERN = "pattern p\n  height 8 ft\n  wall a 10 ft\n    finish board by glued vertical\nrooms 1 to 3 as p\n  level 1\n"
FILES = {"job.room": 'job x\n  use "*.room"\n', "catalogue.room": CATALOGUE, "one.room": PATTERN}


@pytest.mark.parametrize("job", samples())
def test_every_word_of_every_sample_has_a_token(job: str):
    """In order, none over another; comments too."""
    for path, text in samples()[job].items():
        lines = view_of(samples()[job], path).lines
        found = list(tokens(lines))
        for number, line in enumerate(text.split("\n")):
            read = read_line(line)
            words = [(word.start, word.end) for word in words_of(read.node)] if isinstance(read, Line) else []
            here = [(token.start, token.end) for token in found if token.line == number]
            assert here[: len(words)] == words
            assert all(one[1] <= other[0] for one, other in itertools.pairwise(here))
            assert ("#" in line.replace('"#', "")) == (len(here) > len(words))


@given(some.lists(some.integers(0, 3)), some.lists(some.integers(0, 3)))
@settings(max_examples=50, deadline=None)
def test_a_delta_leads_from_the_old_tokens_to_the_new(old: list[int], new: list[int]):
    """Whatever they are."""
    start, count, data = delta(old, new)
    assert old[:start] + data + old[start + count :] == new


def test_tokens_are_told_from_one_to_the_next():
    """Lines and columns are relative, as the protocol wants them."""
    found = [(0, 0, 4, "keyword", False), (0, 5, 1, "variable", True), (2, 3, 4, "number", False)]
    assert encoded(found) == [0, 0, 4, TYPES.index("keyword"), 0, 0, 5, 1, 2, 1, 2, 3, 4, 3, 0]


def test_figures_stand_beside_walls_finishes_and_imperial_lengths():
    """3048 by 2438.4 mm is 7.43 m2; 12 columns of 250 and one of 48."""
    found = {(hint.line, hint.text) for hint in hints(view_of(FILES, "one.room"), 0, 9)}
    assert {(1, "= 2438.4 mm"), (2, "= 3048 mm"), (2, "7.43 m2, 13 pieces"), (3, "250 ... 48")} <= found


def test_figures_stand_over_rooms_and_jobs():
    """A pattern tells for how many rooms it counts."""
    assert [lens.text for lens in lenses(view_of(FILES, "one.room"))] == [
        "7.43 m2, 13 pieces, in each of 3 rooms",
        "7.43 m2, 13 pieces, in each of 3 rooms",
    ]
    assert [(lens.text, lens.job) for lens in lenses(view_of(FILES, "job.room"))] == [("3 rooms", True)]


@pytest.mark.parametrize(
    ("room", "said"),
    [
        ("room 1\n  height 2400\n  wall a nonsense\n", "cannot be read"),
        ("room 1\n  height 2400\n  finish bored by glued vertical\n  wall a 3000\n", "cannot be read"),
        ("pattern p\n  height 2400\n  wall a nonsense\nroom 1 as p\n", "cannot be read"),
        ("room 1\n  height 2400\n  wall a 3000\n", "nothing is lined"),
    ],
)
def test_no_figures_stand_over_a_room_without_linings(room: str, said: str):
    """It says whether a mistake is why, in the room or in its pattern, instead of nought."""
    assert {lens.text for lens in lenses(view_of({**FILES, "one.room": room}, "one.room"))} == {said}


def test_the_figures_over_a_room_count_its_ceilings():
    """1500 by 500 in six columns of 250, and nothing on a wall."""
    room = "room 1\n  height 2400\n  wall a 1500\n  ceiling over 1500 x 500\n    finish board by glued crosswise\n"
    (lens,) = lenses(view_of({**FILES, "one.room": room}, "one.room"))
    assert lens.text == "0.75 m2, 6 pieces"


def test_rooms_are_found_from_their_pattern_and_back():
    """Both ways, with the words by which one names the other."""
    view = view_of(FILES, "one.room")
    (made,) = callers(view, "pattern", "p")
    assert (made.symbol.name, made.at[0].line) == ("1 to 3 as p", 5)
    assert {call.symbol.name for call in called(view, "pattern", "p")} == {"board", "glued"}
    assert {call.symbol.name for call in callers(view, "panel", "board")} == {"p"}


def test_use_lines_follow_files_and_folders():
    """A file named, a pattern in a folder; a pattern that still finds the file stays."""
    job = 'job x\n  use "rooms/*.room"\n  use "catalogue.room"\n'
    files = {"a/job.room": job, "a/rooms/one.room": "room 1\n", "a/catalogue.room": CATALOGUE}
    snapshot = view_of(files, "a/job.room").snapshot

    def moved(**paths: str) -> list[tuple[int, str]]:
        return [(edit.place.line, edit.text) for edit in followed(snapshot, paths)]

    assert moved(**{"a/catalogue.room": "a/products.room"}) == [(3, "products.room")]
    assert moved(**{"a/rooms": "b/zimmer"}) == [(2, "../b/zimmer/*.room")]
    assert moved(**{"a/rooms/one.room": "a/rooms/two.room"}) == []
    assert moved(**{"a/job.room": "job.room"}) == [(2, "a/rooms/*.room"), (3, "a/catalogue.room")]
    assert moved(a="c") == []


def test_the_price_comes_when_it_is_ready_and_never_holds_anything_up(start: Start, job: Path):
    """A lens says that it is being estimated; the client is asked to look again, and then there is the price."""
    client = start()
    lens = {"codeLens": {"refreshSupport": True}}
    client.start(job, {**CAPABILITIES, "workspace": lens, "general": {"markdown": {"parser": "marked"}}})
    document = {"textDocument": {"uri": uri_of(job / "job.room")}}
    client.open(uri_of(job / "job.room"), (job / "job.room").read_text())
    (before,) = client.ask("textDocument/codeLens", document)
    assert before["command"]["title"] == "1 room; estimating ..."
    client.heard(lambda note: note["method"] == "workspace/codeLens/refresh")
    (after,) = client.ask("textDocument/codeLens", document)
    assert after["command"]["title"].startswith("1 room; 4")
    assert after["command"]["title"].endswith("EUR")
    command = {"command": "roomspec.estimate", "arguments": [uri_of(job / "job.room")]}
    assert "Order\n=====" in client.ask("workspace/executeCommand", command)
    drawings = client.ask("workspace/executeCommand", {**command, "command": "roomspec.drawings"})
    assert any(one["svg"].startswith("<svg") for one in drawings)
    room = {"textDocument": {"uri": uri_of(job / "rooms/one.room")}, "position": at(5, 7)}
    assert "](data:image/svg+xml;base64," in client.ask("textDocument/hover", room)["contents"]["value"]
    order = client.ask("workspace/executeCommand", {**command, "command": "roomspec.order"})
    assert order.split("\n") == ["40 Board", "17 grab"]
    assert client.refused("workspace/executeCommand", {**command, "arguments": [5]}) == -32602


def test_what_changed_is_shown_through_the_protocol(start: Start, job: Path):
    """Tokens and their delta, hints, hierarchy, and a rename of a file that is about to be."""
    client = start()
    operations = {"fileOperations": {"willRename": True}}
    client.start(job, {**CAPABILITIES, "workspace": operations})
    room = uri_of(job / "rooms/one.room")
    document: dict[str, Any] = {"textDocument": {"uri": room}}
    client.open(room, (job / "rooms/one.room").read_text())
    full = client.ask("textDocument/semanticTokens/full", document)
    assert full["data"][:5] == [0, 0, 4, 0, 0]
    client.change(room, 2, {"range": between((1, 9), (1, 13)), "text": "2500 # new"})
    previous = {**document, "previousResultId": full["resultId"]}
    (edit,) = client.ask("textDocument/semanticTokens/full/delta", previous)["edits"]
    changed = full["data"][: edit["start"]] + edit["data"] + full["data"][edit["start"] + edit["deleteCount"] :]
    assert changed == client.ask("textDocument/semanticTokens/full", document)["data"]
    part = {**document, "range": between((0, 0), (0, 9))}
    assert len(client.ask("textDocument/semanticTokens/range", part)["data"]) == 15
    hinted = client.ask("textDocument/inlayHint", {**document, "range": between((0, 0), (6, 0))})
    assert "pieces" in hinted[0]["label"]
    (item,) = client.ask("textDocument/prepareCallHierarchy", {**document, "position": at(0, 5)})
    needs = client.ask("callHierarchy/outgoingCalls", {"item": item})
    assert {call["to"]["name"] for call in needs} == {"board", "glued"}
    assert client.ask("callHierarchy/incomingCalls", {"item": needs[0]["to"]})[0]["from"]["name"] == "1"
    move = {"oldUri": uri_of(job / "catalogue.room"), "newUri": uri_of(job / "products.room")}
    edit = client.ask("workspace/willRenameFiles", {"files": [move]})
    assert edit["changes"][uri_of(job / "job.room")][0]["newText"] == "products.room"
    assert client.stop() == 0
