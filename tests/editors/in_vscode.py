"""VS Code itself with the packed extension, against `roomspec serve`: typed at, pointed at, left without a server."""

import os
import re
import shutil
import signal
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, sync_playwright
from real_editor import LONG_LINE, copied_job, processes, replaced, surroundings, until
from vscode_served import BROWSER, packed, window
from vscode_window import SLOW, Window

GROUND, FIRST, TRIMS = "rooms/0-ground.room", "rooms/1-first.room", "catalogue/trims.room"
BULB = "[class*=codicon-gutter-lightbulb], .lightBulbWidget"
OFFERED = ".action-widget .monaco-list-row.action"


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
    """That window as each test begins with it, whatever the one before has done or left undone."""
    shared.begin()
    yield shared
    shared.picture(request.node.name)


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
    until(lambda: room.underlines(word), lambda: "the line is not under the words")
    listed = re.compile(rf"decimal comma.*\[Ln {line}, Col {column}\]")
    room.command("Problems: Focus on Problems View", ".markers-panel .monaco-list-row", listed)
    room.picture("mistake")
    room.command("View: Focus Active Editor Group", ".monaco-editor.focused .squiggly-error")
    room.insist(lambda: room.press("Escape", "End", "ArrowLeft"), lambda: room.shows(BULB))
    room.insist(lambda: room.see(BULB).click(), lambda: room.shows(OFFERED, mended))
    room.picture("bulb")
    room.insist(lambda: room.click(room.see(OFFERED, mended)), lambda: not room.shows(".squiggly-error"))
    expected = text.replace(before + right, before + mended)
    assert room.saved(file, expected) == expected
    room.go(file, before + mended, len(before))
    room.press("Shift+End")
    room.write(right)
    assert room.saved(file, text) == text


def test_a_line_is_completed_word_by_word(room: Window):
    """What the grammar allows and what the catalogue holds is offered with its facts; taking it writes the line."""
    before = (room.folder / GROUND).read_text()
    room.go(GROUND, "    wet     splash\n")
    room.press("End", "Enter")
    room.offer("fin", "finish")
    room.picture("words")
    room.press("Tab")
    room.see(".view-line", re.compile(r"^\W+finish\W*$"))
    room.offer(" limestone-s", "limestone-short")
    room.picture("names")
    room.press("Tab")
    room.see(".view-line", re.compile(r"^\W+finish\W+limestone-short\W*$"))
    room.offer(" by glued-wet hori", "horizontal")
    room.press("Enter")
    room.see(".view-line", re.compile(r"limestone-short\Wby\Wglued-wet\Whorizontal\W*$"))
    room.press("Enter")
    line = "    wet     splash\n"
    wanted = before.replace(line, f"{line}    finish  limestone-short by glued-wet horizontal\n    \n", 1)
    assert room.saved(GROUND, wanted) == wanted
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
    room.offer("dad", "dado")
    room.picture("snippet")
    room.press("Tab")
    room.see(".view-line", re.compile(r"^\W+finish\W.*\Wup\W0\Wto\W900"))
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
    method, wall = finish.locator("span span", has_text="glued-dado"), wall.locator("span span", has_text="wall")
    told = "Glued below a dado cap"
    room.insist(lambda: room.point_at(method), lambda: room.shows(".monaco-hover-content", told))
    room.picture("hover-method")
    room.insist(lambda: room.point_at(wall), lambda: drawn(room), 5)
    room.see(".monaco-hover-content", "79 pieces")
    room.picture("hover-wall")
    room.page.mouse.move(2, 2)
    room.go(GROUND, "g.02")
    said = re.compile(r"semantic token type\s*variable.*declaration.*entity\.name\.type", re.DOTALL)
    room.command("Developer: Inspect Editor Tokens and Scopes", ".token-inspect-widget", said)
    room.picture("colours")
    room.press("Escape")


def drawn(room: Window) -> int:
    """How wide the drawing is that comes with a wall's figures; 0 while it is still to be made."""
    images = room.page.locator(".monaco-hover-content", has_text="pieces").locator("img")
    return max(images.evaluate_all("images => images.map(image => image.naturalWidth)"), default=0)


def test_renaming_reaches_every_file(room: Window):
    """F2 on a panel's name: each file that speaks of it says the new name, and nothing else is touched; and back."""
    renamed(room, "limestone-short", "limestone-half")
    renamed(room, "limestone-half", "limestone-short")


def renamed(room: Window, old: str, new: str) -> None:
    """Rename a panel where it is used first, and save all files."""
    expected = replaced(room.folder, old, new)
    assert len(expected) > 2
    room.go(GROUND, old, 3)
    room.insist(lambda: room.press("Escape", "F2"), lambda: room.shows(".rename-box input:focus"))
    room.press("Control+a")
    room.write(new)
    room.picture("rename")
    room.insist(lambda: room.see(".rename-box input").press("Enter"), lambda: not room.shows(".rename-box input"))
    room.see(".view-line", new)
    room.insist(
        lambda: room.choose(">File: Save All Files", "Save All Files"),
        lambda: replaced(room.folder, new, new) == expected and not room.shows(".tab.dirty"),
    )
    room.picture("renamed")


def test_formatting_writes_the_one_layout(room: Window):
    """Columns and depth come back as they were, in one command."""
    file = room.folder / TRIMS
    laid = file.read_text()
    file.write_text(re.sub(r"(?m)^ +(\w+) +", r" \1 ", laid))
    room.go(TRIMS, "role")
    room.see(".view-line", re.compile(r"^\Wrole\W\w"))
    tidy = re.compile(r"^\W\Wrole\W\W")
    room.insist(lambda: room.press("Escape", "Control+Shift+i"), lambda: room.shows(".view-line", tidy))
    assert room.saved(TRIMS, laid) == laid


def test_the_job_is_estimated_ordered_and_drawn(room: Window):
    """From the line over the job and from the palette; the lens gains its price when the cutting plan is there."""
    room.open("kestrel-house.room")
    room.see(".codelens-decoration a", "40148.46 EUR")
    room.insist(
        lambda: room.see(".codelens-decoration a", "40148.46 EUR").click(),
        lambda: room.shows(".tab.active", "Estimate"),
        SLOW,
    )
    room.see(".view-line", re.compile(r"Limestone\Wprint,\Wlong\W+168\Wpanels\W+168,\Wproven"))
    room.picture("estimate")
    room.open("kestrel-house.room")
    room.command("roomspec: Show the order", ".tab.active", "Order", SLOW)
    room.see(".view-line", re.compile(r"180\WLimestone\Wprint,\Wlong"))
    room.picture("order")
    room.open("kestrel-house.room")
    room.command("roomspec: Show the drawings", ".tab.active", "Drawings", SLOW)
    shown = room.page.frame_locator("iframe.webview").frame_locator("iframe")
    shown.locator("img").first.wait_for()
    room.picture("drawings")
    sizes = shown.locator("img").evaluate_all("images => images.map(image => image.naturalWidth)")
    assert len(sizes) > 20 and all(sizes)
    assert "[error]" not in room.logged(), "whatever was done to this window, nothing went wrong"


def test_a_command_that_is_not_there_is_named(room: Window):
    """With a button to the setting; once the setting is right the server comes without being asked."""
    room.go(GROUND, "level")
    room.see(".codelens-decoration", "201 pieces")
    settings = room.folder / ".vscode" / "settings.json"
    settings.parent.mkdir(exist_ok=True)
    wrong, told = (
        '{"roomspec.command": ["/nowhere/roomspec"]}',
        "does not run: /nowhere/roomspec: there is no such program",
    )
    room.insist(lambda: settings.write_text(wrong), lambda: room.shows(".notification-toast", f"roomspec {told}"))
    room.picture("no-command")
    room.insist(
        lambda: room.see(".notification-toast", told).get_by_role("button", name="Set the command").click(),
        lambda: room.shows(".settings-editor", "Roomspec: Command"),
    )
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
        begun = room.logged().count("serves")
        (number,) = [number for number, command in processes(folder).items() if command.endswith("roomspec serve ")]
        os.kill(number, signal.SIGKILL)
        until(lambda number=number: number not in processes(folder), lambda: "the process stays")
        if death < 3:
            until(lambda begun=begun: room.logged().count("serves") > begun, room.logged)
    said = room.see(".notification-toast", "has ended 4 times within 3 minutes")
    room.picture("keeps-dying")
    room.insist(
        lambda: said.get_by_role("button", name="Show the log").click(),
        lambda: room.shows(".part.panel .view-line", "roomspec"),
    )
    room.picture("log")
    begun = room.logged().count("serves")
    again = "Start the server again"
    room.insist(lambda: room.choose(f">roomspec: {again}", again), lambda: room.logged().count("serves") > begun, SLOW)
    room.open("0-ground.room")
    room.see(".codelens-decoration", "201 pieces")


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
    bare.command("Workspaces: Manage Workspace Trust", ".workspace-trust-editor a", "Trust")
    bare.see(".workspace-trust-editor a", "Trust").click()
    bare.open("0-ground.room")
    bare.see(".codelens-decoration", "201 pieces")
    bare.picture("trusted")
