"""What the tests in real editors share: a job of their own, surroundings of their own, and the processes in them."""

import os
import shutil
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

SAMPLE = Path(__file__).parents[2] / "samples" / "kestrel-house"
WAIT = 120.0
"""Seconds after which what has not happened will not happen: a loaded machine is slow, a hanging editor is for ever."""
MARK = "ROOMSPEC_EDITOR_TEST"
"""A variable of the surroundings, by which the processes of a test are known."""
LONG_LINE = '    socket  "Küche 🛁🛁 𠮷" at 1080 up 450'
"""A good line that every encoding counts otherwise."""
FINISH = "    finish  ash-tall by glued-dry vertical start joint at 1900  # the bed stands on this joint"
"""The one line that uses the panel ash-tall."""

T = TypeVar("T")


def copied_job(folder: Path) -> Path:
    """Kestrel House as a repository of its own."""
    job = folder / "Kestrel Haus 🛁"
    shutil.copytree(SAMPLE, job, ignore=shutil.ignore_patterns("expected"))
    room = job / "rooms" / "1-first.room"
    room.write_text(room.read_text().replace("    socket  at 1080 up 450", LONG_LINE))
    assert LONG_LINE in room.read_text()
    subprocess.run(["git", "init", "-q", job], check=True, timeout=WAIT)
    return job


def surroundings(folder: Path) -> dict[str, str]:
    """The environment of a user who has nothing but roomspec installed."""
    home = folder / "home"
    home.mkdir()
    named = {"CONFIG": ".config", "DATA": "data", "STATE": "state", "CACHE": "cache", "RUNTIME": "run"}
    places = {f"XDG_{name}_{'DIR' if name == 'RUNTIME' else 'HOME'}": str(home / at) for name, at in named.items()}
    path = f"{Path(sys.executable).parent}{os.pathsep}{os.environ['PATH']}"
    return {"HOME": str(home), "PATH": path, "LANG": "C.UTF-8", "TERM": "dumb", MARK: str(folder), **places}


def processes(folder: Path) -> dict[int, str]:
    """The commands of the processes that were started in those surroundings, by number."""
    wanted = f"{MARK}={folder}".encode()
    found = {}
    for place in Path("/proc").glob("[0-9]*"):
        try:
            if wanted in (place / "environ").read_bytes().split(b"\0"):
                found[int(place.name)] = (place / "cmdline").read_bytes().replace(b"\0", b" ").decode()
        except OSError:
            continue
    return found


def until(look: Callable[[], T], said: Callable[[], str]) -> T:
    """What `look` gives once that is true; where it never is, what the editor and the server have said."""
    end = time.monotonic() + WAIT
    while True:
        found = look()
        if found:
            return found
        assert time.monotonic() < end, f"not within {WAIT:g} s; last seen: {found!r}\n{said()}"
        time.sleep(0.05)


def end(process: "subprocess.Popen[bytes]") -> None:
    """End an editor that has not ended by itself."""
    if process.poll() is None:
        process.kill()
    process.wait(WAIT)


def findings(folder: Path) -> str:
    """What the command finds in the saved files."""
    command = [sys.executable, "-m", "roomspec", "check", str(folder), "--fail-on", "error"]
    run = subprocess.run(command, capture_output=True, text=True, timeout=WAIT, check=False)
    return run.stdout + run.stderr


def replaced(folder: Path, old: str, new: str) -> dict[str, str]:
    """Each file of the job that holds a word, with the word replaced."""
    files = {file.relative_to(folder).as_posix(): file.read_text() for file in sorted(folder.rglob("*.room"))}
    return {name: text.replace(old, new) for name, text in files.items() if old in text}
