"""VS Code for a browser as a test has it: the extension packed, code-server serving, chromium showing a window."""

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
from playwright.sync_api import Browser
from real_editor import WAIT, until
from vscode_window import Window

CODE = Path(os.environ.get("ROOMSPEC_CODE_SERVER", ""))
"""The folder that .ci/install_code_server filled: `bin` there holds node, npm and code-server."""
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
