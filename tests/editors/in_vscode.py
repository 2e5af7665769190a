"""VS Code itself with the packed extension, against `roomspec serve`: typed at, pointed at, left without a server."""

import os
import re
import shutil
import signal
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Locator, sync_playwright
from real_editor import LONG_LINE, copied_job, processes, replaced, surroundings, until
from vscode_window import BROWSER, Window, packed, window

GROUND, FIRST, TRIMS = "rooms/0-ground.room", "rooms/1-first.room", "catalogue/trims.room"


@pytest.fixture(scope="module")
def extension(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The packed extension."""
    return packed(tmp_path_factory.mktemp("extension"))


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    """Debian's chromium."""
    with sync_playwright() as playwright:
        yield playwright.chromium.launch(executable_path=shutil.which("chromium"), args=BROWSER)


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory, extension: Path, browser: Browser) -> Iterator[Window]:
    """A window on Kestrel House, with roomspec on the PATH."""
    folder = tmp_path_factory.mktemp("vscode")
    job, environment = copied_job(folder), surroundings(folder)
    with window(browser, folder, job, extension, environment, "--disable-workspace-trust") as opened:
        yield opened


@pytest.fixture(scope="module")
def bare(tmp_path_factory: pytest.TempPathFactory, extension: Path, browser: Browser) -> Iterator[Window]:
    """A window on Kestrel House that is not trusted; roomspec is in its `.venv` only."""
    folder = tmp_path_factory.mktemp("bare")
    job, environment = copied_job(folder), surroundings(folder)
    path = environment["PATH"].split(os.pathsep)
    elsewhere = [place for place in path if not Path(place, "roomspec").exists()]
    environment["PATH"] = os.pathsep.join(elsewhere)
    (job / ".venv" / "bin").mkdir(parents=True)
    (job / ".venv" / "bin" / "roomspec").symlink_to(Path(sys.executable).with_name("roomspec"))
    with window(browser, folder, job, extension, environment) as opened:
        yield opened


@pytest.fixture
def room(shared: Window, request: pytest.FixtureRequest) -> Iterator[Window]:
    """That window; its editors are closed afterwards. A test writes back what it wrote, in the editor: a file that is
    changed on disk while VS Code still has its text is not saved any more.
    """
    yield shared
    shared.picture(request.node.name)
    shared.press("Escape", "Escape")
    shared.command("File: Save All Files")
    shared.page.locator(".tab.dirty").first.wait_for(state="detached")
    shared.command("View: Close All Editors")


@pytest.mark.parametrize(
    ("file", "before", "right", "wrong", "mended"),
    [
        (GROUND, "  surface  sound\n  flat     3 under ", "2 m", "2,5 m", "2.5 m"),
        (FIRST, LONG_LINE.removesuffix("450"), "450", "0,45 m", "0.45 m"),
    ],
    ids=["plain", "after wide letters"],
)
def test_a_mistake_is_shown_at_its_place_and_mended_by_the_bulb(
    room: Window, file: str, before: str, right: str, wrong: str, mended: str
):
    """Mistyped words are underlined where they stand, listed with line and column, and one click writes them right."""
    text = (room.folder / file).read_text()
    line, column = room.go(file, f"{before}{right}\n", len(before))
    room.press("Shift+End")
    room.write(wrong)
    word = room.see(".view-line span span", re.compile(wrong.replace(" ", r"\W")))
    until(lambda: underlined(room, word), lambda: "the line is not under the words")
    room.command("Problems: Focus on Problems View")
    room.see(".markers-panel .monaco-list-row", re.compile(rf"decimal comma.*\[Ln {line}, Col {column}\]"))
    room.picture("mistake")
    room.command("View: Focus Active Editor Group")
    room.press("ArrowLeft")
    room.see("[class*=codicon-gutter-lightbulb], .lightBulbWidget").click()
    offered = room.see(".action-widget .monaco-list-row.action", mended)
    room.picture("bulb")
    room.click(offered)
    room.page.locator(".squiggly-error").first.wait_for(state="detached")
    assert room.saved(file, before + mended) == text.replace(before + right, before + mended)
    room.go(file, before + mended, len(before))
    room.press("Shift+End")
    room.write(right)
    assert room.saved(file, text) == text


def underlined(room: Window, word: Locator) -> bool:
    """Whether a word, and no more and no less, is underlined as an error."""
    mark, box = (place.bounding_box() for place in (room.see(".squiggly-error"), word))
    return bool(mark and box and abs(mark["x"] - box["x"]) < 2 and abs(mark["width"] - box["width"]) < 3)


def test_a_line_is_completed_word_by_word(room: Window):
    """What the grammar allows and what the catalogue holds is offered with its facts; taking it writes the line."""
    before = (room.folder / GROUND).read_text()
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
    room.press("Control+Shift+k", "ArrowUp", "Control+Shift+k")
    assert room.saved(GROUND, before) == before


def test_snippets_are_offered_where_a_line_begins_and_not_after_a_unit(room: Window):
    """Enter after a unit that is written out ends the line."""
    before = (room.folder / GROUND).read_text()
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
    room.press("Control+Shift+k", "ArrowUp", "Control+Shift+k")
    assert room.saved(GROUND, before) == before


def test_pointing_tells_figures_and_facts(room: Window):
    """A wall's panels with its drawing, a method; hints and lenses stand beside the text; colours are the server's."""
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
    said = re.compile(r"semantic token type\s*variable.*declaration.*entity\.name\.type", re.DOTALL)
    room.see(".token-inspect-widget", said)
    room.picture("colours")
    room.press("Escape")


def drawn(room: Window, wall: Locator) -> int:
    """How wide the drawing is that comes with a wall's figures; 0 while it is still to be made."""
    room.point_at(wall)
    room.see(".monaco-hover-content", "pieces")
    images = room.page.locator(".monaco-hover-content img")
    return max(images.evaluate_all("images => images.map(image => image.naturalWidth)"), default=0)


def test_renaming_reaches_every_file(room: Window):
    """F2 on a panel's name: each file that speaks of it says the new name, and nothing else is touched; and back."""
    for old, new in (("limestone-short", "limestone-half"), ("limestone-half", "limestone-short")):
        expected = replaced(room.folder, old, new)
        assert len(expected) > 2
        room.go(GROUND, old, 3)
        room.press("F2")
        room.see(".rename-box input:focus")
        room.press("Control+a")
        room.write(new)
        room.picture("rename")
        room.press("Enter")
        room.page.locator(".rename-box input").wait_for(state="hidden")
        room.see(".view-line", new)
        room.command("File: Save All Files")
        until(lambda: replaced(room.folder, new, new) == expected, lambda: "other texts")  # noqa: B023 - called at once
        room.picture("renamed")


def test_formatting_writes_the_one_layout(room: Window):
    """Columns and depth come back as they were, in one command."""
    file = room.folder / TRIMS
    laid = file.read_text()
    file.write_text(re.sub(r"(?m)^ +(\w+) +", r" \1 ", laid))
    room.go(TRIMS, "role")
    room.see(".view-line", re.compile(r"^\Wrole\W\w"))
    room.press("Control+Shift+i")
    room.see(".view-line", re.compile(r"^\W\Wrole\W\W"))
    assert room.saved(TRIMS, laid) == laid


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
    assert "[error]" not in logged(room.folder.parent), "whatever was done to this window, nothing went wrong"


def test_a_command_that_is_not_there_is_named(room: Window):
    """With a button to the setting; once the setting is right the server comes without being asked."""
    room.go(GROUND, "level")
    room.see(".codelens-decoration", "201 pieces")
    settings = room.folder / ".vscode" / "settings.json"
    settings.parent.mkdir()
    settings.write_text('{"roomspec.command": ["/nowhere/roomspec"]}')
    said = room.see(".notification-toast", "roomspec does not run: /nowhere/roomspec: there is no such program")
    room.picture("no-command")
    said.get_by_role("button", name="Set the command").click()
    room.see(".settings-editor", "Roomspec: Command")
    room.picture("setting")
    settings.unlink()
    room.open("0-ground.room")
    room.see(".codelens-decoration", "201 pieces")


def test_a_server_that_dies_comes_back_and_is_given_up_when_it_keeps_dying(room: Window):
    """Three deaths are made good without a word; the fourth is told, with a way to start again."""
    folder = room.folder.parent
    room.go(GROUND, "level")
    room.see(".codelens-decoration", "201 pieces")
    for death in range(4):
        begun = logged(folder).count("serves")
        (number,) = [number for number, command in processes(folder).items() if command.endswith("roomspec serve ")]
        os.kill(number, signal.SIGKILL)
        until(lambda number=number: number not in processes(folder), lambda: "the process stays")
        if death < 3:
            until(lambda begun=begun: logged(folder).count("serves") > begun, lambda: logged(folder))
    said = room.see(".notification-toast", "has ended 4 times within 3 minutes")
    room.picture("keeps-dying")
    said.get_by_role("button", name="Show the log").click()
    room.see(".part.panel .view-line", "roomspec")
    room.picture("log")
    room.command("roomspec: Start the server again")
    room.open("0-ground.room")
    room.see(".codelens-decoration", "201 pieces")


def logged(folder: Path) -> str:
    """What the extension has written into its log."""
    return "".join(file.read_text(encoding="utf-8") for file in (folder / "code" / "logs").rglob("roomspec.log"))


def test_what_a_folder_holds_is_not_run_before_it_is_trusted(bare: Window):
    """Nothing found is told, with a button to how it is installed; trust brings the folder's own roomspec."""
    bare.picture("restricted")
    bare.open("0-ground.room")
    said = bare.see(".notification-toast", "roomspec was found neither on the PATH nor in a .venv of this folder")
    bare.picture("not-found")
    said.get_by_role("button", name="How to install").click()
    page = bare.page.frame_locator("iframe.webview").frame_locator("iframe")
    page.get_by_role("heading", name="How to install").wait_for()
    bare.picture("how-to-install")
    bare.command("Workspaces: Manage Workspace Trust")
    bare.see(".workspace-trust-editor a", "Trust").click()
    bare.open("0-ground.room")
    bare.see(".codelens-decoration", "201 pieces")
    bare.picture("trusted")
