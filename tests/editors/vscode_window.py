"""VS Code as a person has it: served by code-server, shown by chromium, with the packed extension."""

import json
import os
import re
import shutil
import signal
import subprocess
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from urllib.parse import quote

from corpus_texts import EDITORS
from playwright.sync_api import Browser, Locator, Page
from real_editor import WAIT, until

CODE = Path(os.environ.get("ROOMSPEC_CODE_SERVER", ""))
"""The folder that .ci/install_code_server filled: `bin` there holds node, npm and code-server."""
SHOTS = os.environ.get("ROOMSPEC_SHOTS", "")
"""A folder for pictures of the window, for whoever wants to look."""
BROWSER = (
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync",
)  # fmt: skip
SETTINGS = {
    "files.autoSave": "off",
    "git.enabled": False,
    "telemetry.telemetryLevel": "off",
    "security.workspace.trust.startupPrompt": "never",
    "workbench.startupEditor": "none",
}
_EDITOR = ".editor-instance .monaco-editor.focused"


def packed(folder: Path) -> Path:
    """The extension built and packed in a folder of its own; gives the .vsix."""
    place = folder / "editors" / "vscode"
    shutil.copytree(EDITORS / "vscode", place, ignore=shutil.ignore_patterns("node_modules", "out", "*.vsix"))
    shutil.copy(EDITORS / "roomspec.tmLanguage.json", folder / "editors")
    started = os.environ | {"PATH": f"{CODE / 'bin'}{os.pathsep}{os.environ['PATH']}"}
    for command in (["npm", "ci", "--ignore-scripts", "--no-audit", "--no-fund"], ["npm", "run", "package"]):
        run = subprocess.run(command, cwd=place, env=started, capture_output=True, text=True, timeout=600, check=False)
        assert run.returncode == 0, run.stdout + run.stderr
    return place / "roomspec.vsix"


class Window:
    """A window of VS Code on a folder."""

    def __init__(self, page: Page, folder: Path) -> None:
        """Wait for it to be there."""
        self.page, self.folder = page, folder
        page.wait_for_selector(".monaco-workbench .statusbar")

    def press(self, *keys: str) -> None:
        """Press keys one after another."""
        for key in keys:
            self.page.keyboard.press(key)

    def write(self, text: str) -> None:
        """Type letter by letter, as a person does."""
        self.page.keyboard.type(text, delay=20)

    def see(self, selector: str, text: str | re.Pattern[str] = "") -> Locator:
        """The first that is shown of a selector, with a text in it."""
        found = self.page.locator(selector, has_text=text or None).locator("visible=true").first
        found.wait_for()
        return found

    def choose(self, asked: str, offered: str = "") -> None:
        """Ask at the top of the window for a file, a `>command` or a `:line:column`, and take what is offered."""
        self.press("Control+p")
        box = self.see(".quick-input-widget input[type=text]")
        box.fill(asked)
        self.see(".quick-input-list .monaco-list-row.focused", offered)
        self.press("Enter")
        box.wait_for(state="hidden")

    def command(self, title: str) -> None:
        """A command of the palette, by its whole title."""
        self.choose(f">{title}", title)

    def open(self, name: str) -> None:
        """A file of the folder, in an editor that has the cursor."""
        self.choose(name, name)
        self.see(".tab.active", name)
        self.see(f"{_EDITOR} .view-line")

    def go(self, file: str, words: str, into: int = 0) -> tuple[int, int]:
        """Put the cursor into some words of a file as it is on disk; gives line and column from 1, in UTF-16."""
        self.open(Path(file).name)
        text = (self.folder / file).read_text(encoding="utf-8")
        before = text[: text.index(words) + into]
        line, left = before.count("\n") + 1, before.rpartition("\n")[2]
        column = len(left.encode("utf-16-le")) // 2 + 1
        self.choose(f":{line}:{column}", f"line {line}")
        self.see(".statusbar", f"Ln {line}, Col {len(left) + 1}")
        return line, column

    def saved(self, file: str, holds: str) -> str:
        """Save, and again where the server's formatting came after it; gives the file once it has a line on disk."""
        place = self.folder / file
        clean = self.page.locator(".tab.active:not(.dirty)")

        def settled() -> bool:
            self.press("Control+s")
            self.page.wait_for_timeout(700)
            return clean.count() > 0 and holds in place.read_text(encoding="utf-8")

        until(settled, lambda: place.read_text(encoding="utf-8"))
        return place.read_text(encoding="utf-8")

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

    def picture(self, name: str) -> None:
        """Keep what is seen."""
        if SHOTS:
            self.page.screenshot(path=Path(SHOTS, f"{name}.png"))


@contextmanager
def window(
    browser: Browser, folder: Path, job: Path, extension: Path, environment: Mapping[str, str], *options: str
) -> Iterator[Window]:
    """A window on a job, in surroundings and with options of code-server's; nothing is left when it closes."""
    data = folder / "code"
    (data / "User").mkdir(parents=True)
    (data / "User" / "settings.json").write_text(json.dumps(SETTINGS), encoding="utf-8")
    # As from a terminal: otherwise a login shell is asked for the PATH.
    started = {**environment, "PATH": f"{CODE / 'bin'}{os.pathsep}{environment['PATH']}", "VSCODE_CLI": "1"}
    program = shutil.which("code-server", path=started["PATH"])
    assert program, "code-server is not installed: .ci/install_code_server FOLDER, and ROOMSPEC_CODE_SERVER=FOLDER"
    command = [program, f"--user-data-dir={data}", f"--extensions-dir={folder / 'extensions'}"]
    subprocess.run([*command, "--install-extension", extension], env=started, check=True, timeout=WAIT)
    command += ["--auth=none", "--bind-addr=127.0.0.1:0", "--disable-telemetry", "--disable-update-check", *options]
    log = folder / "code-server.txt"
    with log.open("wb") as out:
        serving = subprocess.Popen(command, env=started, stdout=out, stderr=out, start_new_session=True)
    try:
        address = until(lambda: re.search(r"listening on (http://\S+)", log.read_text()), log.read_text)[1]
        page = browser.new_page(viewport={"width": 1400, "height": 900})
        page.set_default_timeout(WAIT * 1000)
        page.goto(f"{address}?folder={quote(str(job))}")
        yield Window(page, job)
        page.close()
    finally:
        os.killpg(serving.pid, signal.SIGKILL)
        serving.wait(WAIT)
