"""A window of VS Code in chromium, used as a person uses it: what a busy window has not taken is done again."""

import os
import re
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from playwright.sync_api import Locator, Page, TimeoutError
from real_editor import WAIT, until

SHOTS = os.environ.get("ROOMSPEC_SHOTS", "")
"""A folder for pictures of the window, for whoever wants to look."""
SOON = 15.0
"""Seconds after which something is done again whose effect has not been seen."""
SLOW = 40.0
"""The same, for what makes the server work."""
_EDITOR = ".editor-instance .monaco-editor.focused"
_BOX = ".quick-input-widget input[type=text]"
_OFFERED = ".quick-input-list .monaco-list-row.focused"
_SUGGESTED = ".suggest-widget.visible .monaco-list-row.focused"
_SETTINGS = Path(".vscode", "settings.json")


class Window:
    """A window of VS Code on a folder."""

    def __init__(self, page: Page, folder: Path) -> None:
        """Wait for it to be there, and keep the folder's room files in mind."""
        self.page, self.folder = page, folder
        self.texts = {file: file.read_bytes() for file in folder.rglob("*.room")}
        self._limit = WAIT
        page.wait_for_selector(".monaco-workbench .statusbar")

    def begin(self) -> None:
        """Make it what each test begins with: the files as they were, nothing open, nothing told, nothing pointed at.

        The files come first: an editor that is reverted tells the server what is on disk.
        """
        self.page.mouse.move(2, 2)
        changed = [file for file, text in self.texts.items() if file.read_bytes() != text]
        for file in changed:
            file.write_bytes(self.texts[file])
        (self.folder / _SETTINGS).unlink(missing_ok=True)
        tabs = self.page.locator(".tabs-container .tab")
        while count := tabs.count():
            self.insist(
                lambda: self.choose(">View: Revert and Close Editor", "Revert and Close Editor"),
                lambda count=count: tabs.count() < count,
            )
        if self.shows(".notification-toast"):
            self._hide(".notification-toast", "Notifications: Clear All Notifications")
        if self.shows(".part.panel"):
            self._hide(".part.panel", "View: Hide Panel")
        if changed:  # A file that was open in no editor is read anew.
            begun = self.logged().count("serves")
            self.insist(
                lambda: self.choose(">roomspec: Start the server again", "Start the server again"),
                lambda: self.logged().count("serves") > begun,
                SLOW,
            )

    def _hide(self, selector: str, title: str) -> None:
        self.insist(lambda: self.choose(f">{title}", title), lambda: not self.shows(selector))

    @contextmanager
    def _patience(self, seconds: float) -> Iterator[None]:
        before, self._limit = self._limit, seconds
        self.page.set_default_timeout(seconds * 1000)
        try:
            yield
        finally:
            self._limit = before
            self.page.set_default_timeout(before * 1000)

    def insist(self, act: Callable[[], object], seen: Callable[[], object], soon: float = SOON) -> None:
        """Do something, and again where its effect is not seen soon; `act` bears being done twice."""

        def tried() -> bool:
            with self._patience(soon), suppress(TimeoutError):
                act()
            return self.comes(seen, soon)

        until(tried, lambda: "what was done had no effect")

    def comes(self, seen: Callable[[], object], soon: float = SOON) -> bool:
        """Whether something is seen soon."""
        end = time.monotonic() + soon
        while not (found := seen()) and time.monotonic() < end:
            self.page.wait_for_timeout(50)
        return bool(found)

    def press(self, *keys: str) -> None:
        """Press keys one after another."""
        for key in keys:
            self.page.keyboard.press(key)

    def write(self, text: str) -> None:
        """Type letter by letter, as a person does."""
        self.page.keyboard.type(text, delay=20)

    def _shown(self, selector: str, text: str | re.Pattern[str]) -> Locator:
        return self.page.locator(selector, has_text=text or None).locator("visible=true").first

    def shows(self, selector: str, text: str | re.Pattern[str] = "") -> bool:
        """Whether one of a selector, with a text in it, is shown now."""
        return self._shown(selector, text).count() > 0

    def see(self, selector: str, text: str | re.Pattern[str] = "") -> Locator:
        """The first that is shown of a selector, with a text in it."""
        found = self._shown(selector, text)
        found.wait_for()
        return found

    def choose(self, asked: str, offered: str = "") -> None:
        """Ask at the top of the window for a file, a `>command` or a `:line:column`, and take what is offered.

        Whatever else is open, and would take the keys, is closed first.
        """

        def chosen() -> bool:
            with self._patience(SOON), suppress(TimeoutError):
                self.press("Escape", "Control+p")
                box = self.see(_BOX)
                box.fill(asked)
                self.see(_OFFERED, offered)
                box.press("Enter")
                box.wait_for(state="hidden")
                return True
            return False

        until(chosen, lambda: f"not to be chosen: {asked}")

    def command(self, title: str, selector: str, text: str | re.Pattern[str] = "", soon: float = SOON) -> None:
        """Call a command of the palette, by its whole title, until its effect is shown."""
        self.insist(lambda: self.choose(f">{title}", title), lambda: self.shows(selector, text), soon)

    def open(self, name: str) -> None:
        """A file of the folder, in an editor that has the cursor."""
        self.insist(
            lambda: self.choose(name, name),
            lambda: self.shows(".tab.active", name) and self.shows(f"{_EDITOR} .view-line"),
        )

    def go(self, file: str, words: str, into: int = 0) -> tuple[int, int]:
        """Put the cursor into some words of a file as it is on disk; gives line and column from 1, in UTF-16."""
        self.open(Path(file).name)
        text = (self.folder / file).read_text(encoding="utf-8")
        before = text[: text.index(words) + into]
        line, left = before.count("\n") + 1, before.rpartition("\n")[2]
        column = len(left.encode("utf-16-le")) // 2 + 1
        place = re.compile(rf"Ln {line}, Col {len(left) + 1}(?!\d)")
        self.insist(
            lambda: self.choose(f":{line}:{column}", f"line {line}"),
            lambda: self.shows(".statusbar", place) and self.shows(_EDITOR),
        )
        return line, column

    def offer(self, typed: str, first: str) -> None:
        """Type until the list that opens has something in front; where it does not open, the last letter again."""
        self.write(typed)
        if not self.comes(lambda: self.shows(_SUGGESTED, first)):
            self.insist(
                lambda: (self.press("Escape", "Backspace"), self.write(typed[-1])),
                lambda: self.shows(_SUGGESTED, first),
            )

    def saved(self, file: str, holds: str) -> str:
        """Save, and again where the server's formatting came after it; gives the file once it has a text on disk."""
        place = self.folder / file

        def settled() -> bool:
            self.press("Escape", "Control+s")
            self.page.wait_for_timeout(700)
            return self.shows(".tab.active:not(.dirty)") and holds in place.read_text(encoding="utf-8")

        until(settled, lambda: place.read_text(encoding="utf-8"))
        return place.read_text(encoding="utf-8")

    def underlines(self, word: Locator) -> bool:
        """Whether a word, and no more and no less, is underlined as an error."""
        mark, box = (place.bounding_box() for place in (self.see(".squiggly-error"), word))
        return bool(mark and box and abs(mark["x"] - box["x"]) < 2 and abs(mark["width"] - box["width"]) < 3)

    def point_at(self, word: Locator) -> None:
        """Rest the mouse on a word."""
        self.page.mouse.move(2, 2)
        word.hover()

    def click(self, place: Locator) -> None:
        """Click on something that listens only once the mouse has moved over it."""
        box = place.bounding_box()
        assert box
        self.page.mouse.move(box["x"] + 20, box["y"] + 5)
        self.page.mouse.move(box["x"] + 30, box["y"] + box["height"] / 2, steps=5)
        self.page.mouse.down()
        self.page.mouse.up()

    def logged(self) -> str:
        """What the extension has written into its log."""
        logs = (self.folder.parent / "code" / "logs").rglob("roomspec.log")
        return "".join(file.read_text(encoding="utf-8") for file in logs)

    def picture(self, name: str) -> None:
        """Keep what is seen."""
        if SHOTS:
            self.page.screenshot(path=Path(SHOTS, f"{name}.png"))
