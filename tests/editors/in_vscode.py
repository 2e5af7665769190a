"""VS Code itself with the packed extension, against `roomspec serve`: typed at, pointed at, and left without a server."""

import os
import re
import signal
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Locator
from real_editor import copied_job, processes, replaced, surroundings, until
from vscode_window import Window, packed, window

GROUND, FIRST, JOB = "rooms/0-ground.room", "rooms/1-first.room", "kestrel-house.room"


@pytest.fixture(scope="module")
def extension(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The packed extension."""
    return packed(tmp_path_factory.mktemp("extension"))


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory, extension: Path) -> Iterator[Window]:
    """A window on Kestrel House, with roomspec on the PATH."""
    folder = tmp_path_factory.mktemp("vscode")
    with window(folder, copied_job(folder), extension, surroundings(folder), "--disable-workspace-trust") as opened:
        yield opened


@pytest.fixture
def room(shared: Window, request: pytest.FixtureRequest) -> Iterator[Window]:
    """That window without editors; the job's files are put back afterwards."""
    files = {file: file.read_bytes() for file in shared.folder.rglob("*.room")}
    yield shared
    shared.picture(request.node.name)
    shared.press("Escape", "Escape")
    shared.command("File: Save All Files")
    shared.command("View: Close All Editors")
    for file, data in files.items():
        file.write_bytes(data)


def test_a_mistake_is_shown_at_its_place_and_mended_by_the_bulb(room: Window):
    """Mistyped words are underlined where they stand, listed with line and column, and one click writes them right."""
    line, _ = room.go(GROUND, "2400\n")
    room.press("Shift+End")
    room.write("2,4 m")
    word = room.see(".view-line span span", re.compile(r"^2,4\Wm"))
    mark = room.see(".squiggly-error").bounding_box()
    box = word.bounding_box()
    room.command("Problems: Focus on Problems View")
    room.see(".markers-panel .monaco-list-row", re.compile(rf"decimal comma.*\[Ln {line}, Col 12\]"))
    room.picture("mistake")
    assert mark and box and abs(mark["x"] - box["x"]) < 2 and abs(mark["width"] - box["width"]) < 3, (mark, box)
    room.command("View: Focus Active Editor Group")
    room.press("ArrowLeft")
    room.see("[class*=codicon-gutter-lightbulb], .lightBulbWidget").click()
    offered = room.see(".action-widget .monaco-list-row.action", "2.4 m")
    room.picture("bulb")
    room.click(offered)
    room.page.locator(".squiggly-error").first.wait_for(state="detached")
    assert "  height   2.4 m\n" in room.saved(GROUND, "2.4 m")


def test_a_line_is_completed_word_by_word(room: Window):
    """What the grammar allows and what the catalogue holds is offered with its facts; taking it writes the line."""
    room.go(GROUND, "    wet     splash\n")
    room.press("End", "Enter")
    room.write("fin")
    room.see(".suggest-widget.visible .monaco-list-row.focused", "finish")
    room.picture("words")
    room.press("Tab")
    room.write(" limestone-s")
    room.see(".suggest-widget.visible .monaco-list-row.focused", "limestone-short")
    room.picture("names")
    room.press("Tab")
    room.write(" by glued-wet hori")
    room.see(".suggest-widget.visible .monaco-list-row.focused", "horizontal")
    room.press("Enter", "Enter")
    wanted = "    wet     splash\n    finish  limestone-short by glued-wet horizontal\n    \n    window"
    assert wanted in room.saved(GROUND, "limestone-short by glued-wet horizontal\n    \n")


def test_snippets_are_offered_where_a_line_begins_and_not_after_a_unit(room: Window):
    """Enter after a unit that is written out ends the line."""
    room.go(GROUND, "  purpose  shower")
    room.press("End", "Enter")
    room.write("access 2.4 m")
    room.page.wait_for_timeout(1000)
    room.picture("unit")
    room.press("Enter")
    room.see(".view-line", re.compile(r"access\W{3}2.4\Wm"))
    room.write("dad")
    room.see(".suggest-widget.visible .monaco-list-row.focused", "dado")
    room.picture("snippet")
    room.press("Tab")
    room.write("limestone-long")
    room.press("Escape", "End")
    text = room.saved(GROUND, "  finish  limestone-long by method vertical up 0 to 900")
    assert "  access   2.4 m\n" in text


def test_pointing_tells_figures_and_facts(room: Window):
    """A wall's panels with its drawing, a product's data; hints and lenses stand beside the text; colours come from the server."""
    room.go(GROUND, "level")
    room.see(".view-line", re.compile(r"wall\Wa\W6200.*12.03\Wm2,\W79\Wpieces"))
    room.see(".codelens-decoration", "9.58 m2, 201 pieces")
    finish, wall = (room.see(".view-line", re.compile(words)) for words in (r"finish\W+chalk", r"wall\Wa\W6200"))
    room.point_at(finish.locator("span span", has_text="glued-dado"))
    room.see(".monaco-hover-content", "Glued below a dado cap")
    room.picture("hover-method")
    until(lambda: drawn(room, wall.locator("span span", has_text="wall")), lambda: "no drawing")
    room.see(".monaco-hover-content", "79 pieces")
    room.picture("hover-wall")
    room.page.mouse.move(2, 2)
    room.go(GROUND, "g.02")
    room.command("Developer: Inspect Editor Tokens and Scopes")
    said = room.see(".token-inspect-widget").inner_text()
    room.picture("colours")
    assert re.search(r"semantic token type\s+variable", said) and "declaration" in said, said
    room.press("Escape")


def drawn(room: Window, wall: Locator) -> int:
    """How wide the drawing is that comes with a wall's figures; 0 while it is still to be made."""
    room.point_at(wall)
    room.see(".monaco-hover-content", "pieces")
    images = room.page.locator(".monaco-hover-content img")
    return max(images.evaluate_all("images => images.map(image => image.naturalWidth)"), default=0)


def test_renaming_reaches_every_file(room: Window):
    """F2 on a panel's name: each file that speaks of it says the new name, and nothing else is touched."""
    expected = replaced(room.folder, "limestone-short", "limestone-half")
    assert len(expected) > 2
    room.go(GROUND, "limestone-short", 3)
    room.press("F2")
    room.see(".rename-box input:focus")
    room.press("Control+a")
    room.write("limestone-half")
    room.picture("rename")
    room.press("Enter")
    room.page.locator(".rename-box input").wait_for(state="hidden")
    room.see(".view-line", "limestone-half")
    room.command("File: Save All Files")
    until(lambda: all((room.folder / file).read_text() == text for file, text in expected.items()), lambda: "other texts")
    room.picture("renamed")


def test_formatting_writes_the_one_layout(room: Window):
    """Columns and depth come back as they were, in one command."""
    file = room.folder / GROUND
    laid = file.read_text()
    file.write_text(re.sub(r"(?m)^ +", " ", laid).replace("  plaster over", " plaster over"))
    room.go(GROUND, "level")
    room.see(".view-line", re.compile(r"^\Wlevel"))
    room.press("Control+Shift+i")
    room.see(".view-line", re.compile(r"^\W\Wlevel"))
    assert room.saved(GROUND, laid) == laid


def test_the_job_is_estimated_ordered_and_drawn(room: Window):
    """From the line over the job and from the palette; the lens gains its price when the cutting plan is there."""
    room.open("kestrel-house.room")
    room.see(".codelens-decoration a", "40148.46 EUR").click()
    room.see(".tab.active", "Estimate")
    room.see(".view-line", re.compile(r"Limestone\Wprint,\Wlong\W+168\Wpanels\W+168,\Wproven"))
    room.picture("estimate")
    room.open("kestrel-house.room")
    room.command("roomspec: Show the order")
    room.see(".tab.active", "Order")
    room.see(".view-line", re.compile(r"180\WLimestone\Wprint,\Wlong"))
    room.picture("order")
    room.open("kestrel-house.room")
    room.command("roomspec: Show the drawings")
    shown = room.page.frame_locator("iframe.webview").frame_locator("iframe")
    shown.locator("img").first.wait_for()
    room.picture("drawings")
    sizes = shown.locator("img").evaluate_all("images => images.map(image => image.naturalWidth)")
    assert len(sizes) > 20 and all(sizes)
