"""`roomspec check --watch`: again on every change, until stopped."""

import signal
import subprocess
import sys
import threading
from pathlib import Path
from queue import Queue

import click
import pytest

from roomspec.cli.check_watch import signature_of, watch


class Stopped(Exception):  # noqa: N818 - not an error: the user has had enough
    """Ctrl-C of the test."""


def test_it_checks_at_first_and_after_each_change():
    """Looks that see the same wait; trouble does not end it."""
    looks = iter([1, 1, 1, 2, 2, 3, 3])
    waits, checks = [], []

    def look() -> int:
        try:
            return next(looks)
        except StopIteration:
            raise Stopped from None

    def check() -> int:
        checks.append(1)
        if len(checks) == 1:
            raise click.ClickException("the folder is gone")
        return 0

    with pytest.raises(Stopped):
        watch(check, look, lambda: waits.append(1))
    assert (len(checks), len(waits)) == (3, 2)


def test_a_change_anywhere_in_the_repository_is_seen(tmp_path: Path):
    """Files that change, come and go, and the settings; other files do not count."""
    (tmp_path / ".git").mkdir()
    (tmp_path / "a").mkdir()
    seen = [signature_of(str(tmp_path / "a"))]
    for name, text in (("a/job.room", "job a\n"), ("b.room", "x"), ("b.room", "xy"), ("roomspec.toml", "[checks]\n")):
        (tmp_path / name).write_text(text)
        seen.append(signature_of(str(tmp_path / "a")))
    assert len(set(seen)) == len(seen)
    (tmp_path / "notes.txt").write_text("x")
    assert signature_of(str(tmp_path / "a")) == seen[-1]
    (tmp_path / "b.room").unlink()
    assert signature_of(str(tmp_path / "a")) not in seen
    assert signature_of("nowhere/at/all\0") == signature_of("nowhere/at/all\0")


def test_the_command_prints_again_on_a_change(small: Path):
    """A real process: a slip saved into the file is told, and Ctrl-C ends it."""
    command = [sys.executable, "-u", "-m", "roomspec", "check", str(small), "--watch"]
    lines: Queue[str] = Queue()
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True) as process:

        def read() -> None:
            for line in process.stdout or ():
                lines.put(line)

        def wait_for(words: str) -> None:
            while words not in lines.get(timeout=30):
                continue

        reader = threading.Thread(target=read)
        reader.start()
        try:
            wait_for("Waiting for a change")
            job = small / "job.room"
            job.write_text(job.read_text().replace("finish board", "finish bord"))
            wait_for("no panel is called bord")
            wait_for("Waiting for a change")
            process.send_signal(signal.SIGINT)
            assert process.wait(timeout=30) == 130
        finally:
            process.kill()
            reader.join(timeout=30)
