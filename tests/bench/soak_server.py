"""Random editing for a long time.

Run: python tests/bench/soak_server.py [--minutes 60 | --edits 320000] [--every 500] [--seed 1].

One server and one editor over a job of some 60 rooms with hundreds of findings: keys, whole lines, whole texts, files
opened, closed, saved, renamed, deleted and written by something else, the catalogue and `roomspec.toml` among them, and
requests between. After every so many edits what the server has said of each file is held against a server started
afresh. Prints edits, seconds an edit and the server's memory; ends with 1 where an answer differs, or where memory in
the last quarter is over that of the third by more than a fiftieth and 2 MB: what is kept has a bound, which a long run
reaches in its first half.
"""

import argparse
import random
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from statistics import median

sys.path.insert(0, str(Path(__file__).parents[1] / "lsp"))

from editing import Editor, Findings
from generate_distinct import CATALOGUE, repository

JOB = """\
job x "X"
  use "catalogue.room"
  use "rooms/*.room"
  date 2026-11-25
  labour two-fitters
"""
SETTINGS = (
    "",
    '[checks]\nnarrow-strip = "error"\n',
    '[checks]\nno-gap = "off"\n',
    'baseline = "known.json"\n',
    "[checks\n",
    '[checks]\nnarow-strip = "off"\n',
)
LINES = (
    *("  wall b 1000", "    socket at 40 up 300", "room 7", "room 8 as x mirrored", "pattern x", "  height 2400"),
    *("  finish stone-long by glued vertical", '  allow narrow-strip because "seen"', "units in", "", "# é🚪", '"'),
)
KEYS = (*'0123456789 abx.\n"#', "é", "🚪", "\t", "  ", "wall", "\r\n")
ASKED = ("hover", "completion", "documentSymbol", "semanticTokens/full", "foldingRange", "formatting", "definition")


class Soak:
    """The texts that it began with, and the dice."""

    def __init__(self, folder: Path, seed: int) -> None:
        """Write the job to the folder and start."""
        self.dice = random.Random(seed)
        rooms = repository(1, 60, seed)["job-0001/rooms.room"].split("\nroom ")
        blocks = [rooms[0], *(f"room {text}" for text in rooms[1:])]
        self.texts = {f"rooms/{name}.room": "\n".join(blocks[at::4]) for at, name in enumerate("abcd")}
        self.texts["catalogue.room"] = CATALOGUE
        self.texts["job.room"] = JOB
        (folder / ".git").mkdir()
        (folder / "rooms").mkdir()
        for path, text in self.texts.items():
            (folder / path).write_text(text)
        self.editor = Editor(folder)
        self.acts: tuple[tuple[int, Callable[[str], None]], ...] = (
            (60, self.key),
            (15, self.line),
            (3, self.whole),
            (3, self.close),
            (4, self.save),
            (2, self.outside),
            (1, self.settings),
            (1, self.rename),
            (1, self.delete),
            (10, self.ask),
        )

    def once(self) -> None:
        """Do something."""
        paths = sorted({*self.texts, *self.editor.buffers, "roomspec.toml"})
        (act,) = self.dice.choices([act for _, act in self.acts], [weight for weight, _ in self.acts])
        act(self.dice.choice(paths))

    def key(self, path: str) -> None:
        """Press a key, or take a few letters out."""
        start = self._place(path)
        length = len(self.editor.buffers[path])
        end = min(length, start + (self.dice.randint(1, 6) if self.dice.random() < 0.4 else 0))
        self.editor.edit(path, start, end, "" if start < end else self.dice.choice(KEYS))

    def line(self, path: str) -> None:
        """Write a line, or take one out."""
        at = self._place(path)
        text = self.editor.buffers[path]
        start = text.rfind("\n", 0, at) + 1
        if self.dice.random() < 0.5:
            self.editor.edit(path, start, start, self.dice.choice(LINES) + "\n")
        else:
            end = text.find("\n", at)
            self.editor.edit(path, start, end + 1 if end >= 0 else len(text), "")

    def whole(self, path: str) -> None:
        """Undo all: the text as it was in the beginning, or nothing."""
        self._place(path)
        self.editor.become(path, self.texts.get(path, "") if self.dice.random() < 0.9 else "")

    def close(self, path: str) -> None:
        """Close it."""
        if path in self.editor.buffers:
            self.editor.close(path)

    def save(self, path: str) -> None:
        """Save it."""
        if path in self.editor.buffers:
            self.editor.save(path)

    def outside(self, path: str) -> None:
        """Something else writes it."""
        self.editor.write(path, self.texts.get(path, "room 9\n"))

    def settings(self, _path: str) -> None:
        """The settings are changed, or the findings known are."""
        text = self.dice.choice(SETTINGS)
        if "roomspec.toml" in self.editor.buffers:
            self.editor.become("roomspec.toml", text)
        else:
            self.editor.write("roomspec.toml", text)
        if self.dice.random() < 0.3:
            self._set_aside()

    def _set_aside(self) -> None:
        """As things are on disk; an unusable baseline now and then."""
        command = [sys.executable, "-m", "roomspec", "check", ".", "--write-baseline", "known.json"]
        subprocess.run(command, cwd=self.editor.folder, capture_output=True, check=False)
        known = self.editor.folder / "known.json"
        if self.dice.random() < 0.2:
            known.write_text("{")
        self.editor.write("known.json", known.read_text() if known.exists() else "")

    def rename(self, path: str) -> None:
        """It is called otherwise, and back."""
        old, new = (path, "rooms/e.room")
        if (self.editor.folder / new).exists() or new in self.editor.buffers:
            old, new = new, "rooms/a.room"
        if not (self.editor.folder / new).exists() and new not in self.editor.buffers:
            self.editor.rename(old, new)

    def delete(self, path: str) -> None:
        """It is deleted."""
        self.editor.delete(path)

    def ask(self, path: str) -> None:
        """Ask something in between."""
        method = self.dice.choice(ASKED)
        position = {"line": self.dice.randint(0, 300), "character": self.dice.randint(0, 30)}
        options = {"tabSize": 2, "insertSpaces": True}
        self.editor.ask(f"textDocument/{method}", path, position=position, options=options)

    def _place(self, path: str) -> int:
        """Somewhere in the file, which is opened where it is not."""
        if path not in self.editor.buffers:
            self.editor.open(path)
        return self.dice.randint(0, len(self.editor.buffers[path]))


def main(minutes: float, most: int, every: int, seed: int) -> int:
    """Edit, compare, print; gives the exit code. It ends after the minutes or, where they are given, `most` edits."""
    with tempfile.TemporaryDirectory() as name:
        soak = Soak(Path(name).resolve(), seed)
        began = time.monotonic()
        sizes: list[float] = []
        edits = 0
        while edits < most if most else time.monotonic() - began < minutes * 60:
            before = time.monotonic()
            for _ in range(every):
                soak.once()
            told = soak.editor.told()
            taken = time.monotonic() - before
            edits += every
            sizes.append(_memory(soak.editor.client.process.pid))
            count = sum(map(len, told.values()))
            each = taken / every * 1000
            print(f"{edits} edits, {each:.1f} ms each, {sizes[-1]:.0f} MB, {count} findings shown", flush=True)
            if told != (fresh := soak.editor.fresh()):
                _differ(told, fresh)
                return 1
        soak.editor.client.kill()
    quarter = max(1, len(sizes) // 4)
    third, last = median(sizes[-2 * quarter : -quarter] or sizes), median(sizes[-quarter:])
    taken = (time.monotonic() - began) / 60
    print(f"{edits} edits in {taken:.0f} minutes; {third:.1f} MB in the third quarter, {last:.1f} MB in the last")
    return 1 if last > third * 1.02 + 2 else 0


def _differ(told: Findings, fresh: Findings) -> None:
    """Print what only one of the servers says."""
    for uri in sorted(uri for uri in {*told, *fresh} if told.get(uri) != fresh.get(uri)):
        print(f"a fresh server says otherwise of {uri}")
        for said, one, other in (("the old", told, fresh), ("the fresh", fresh, told)):
            for found in one.get(uri, ()):
                if found not in other.get(uri, ()):
                    print(f"  {said} alone: {found['range']} {found['message']}")


def _memory(process: int) -> float:
    """MB that a process holds."""
    said = subprocess.run(["ps", "-o", "rss=", "-p", str(process)], capture_output=True, text=True, check=True)
    return int(said.stdout) / 1024


if __name__ == "__main__":
    options = argparse.ArgumentParser(description=__doc__.split("\n")[0] if __doc__ else None)
    options.add_argument("--minutes", type=float, default=60)
    options.add_argument("--edits", type=int, default=0)
    options.add_argument("--every", type=int, default=500)
    options.add_argument("--seed", type=int, default=1)
    given = options.parse_args()
    sys.exit(main(given.minutes, given.edits, given.every, given.seed))
