"""How fast the language server is, beside others in the same run.

Run: python tests/bench/bench_server.py [--rounds 30] [--alone] [ROW ...]. Without rows, all; `--alone` leaves the other
servers out. Ours is measured on two jobs of 500 rooms, one with a finding in 25 lines and one with one in 3; each other
server on a document of its own kind that is as long (peers.py). All goes over pipes to a process; ratios are to ours.
Behind the time stands the server's processor time, of each edit or of all, where the machine tells it.

small      from an edit to its findings, in a job of one file of 1,000 lines
job        the same in a file of 1,000 lines of a job of 500 rooms
long       the same in its file of 10,000 lines
held       a key held down in that file, 40 times at 30 ms: from the last to the last findings
start      from the start of the process to the answer to `initialize`, beside a server of pygls that offers nothing
first      10,000 rooms in a workspace: from the opening of a file to its findings, while nothing has been read yet
crowd      hover and completion while these rooms are checked; memory afterwards
catalogue  a line of the catalogue that all of these rooms are made from: the findings of the open file, then of all
           that use it, and hover and completion meanwhile
"""

import argparse
import sys
import tempfile
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager, suppress
from functools import cache
from pathlib import Path
from statistics import median
from typing import NamedTuple

import generate
import generate_distinct
import many_rooms
from many_rooms import OURS, written
from peers import Document, Peer, peers
from wire import Message, NothingSaid, Wire

BARE = (
    sys.executable,
    "-c",
    'from pygls.lsp.server import LanguageServer; LanguageServer("bare", "0").start_io()',
)
HELD, APART = 40, 0.030
"""How often a key repeats, and seconds between."""


class Taken(NamedTuple):
    """Seconds of the clock and, of the server, of the processor."""

    clock: float
    processor: float


Measure = Callable[[Iterable[str], Path, Document, int], Taken]


def main(wanted: Sequence[str], rounds: int, alone: bool) -> None:
    """Print the rows."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name).resolve()
        compared = {"small", "long", "held", "start"} & set(wanted)
        others = peers(folder) if compared and not alone else []
        for row in wanted:
            ROWS[row](folder, others, rounds)


def small(folder: Path, others: Sequence[Peer], rounds: int) -> None:
    """A job of one short file."""
    ours = _edits("an edit in 1,000 lines", _edited, "job/short.room", True, folder, rounds)
    _of_others(_edited, 1_000, folder, others, rounds, ours)


def job(folder: Path, _others: Sequence[Peer], rounds: int) -> None:
    """A short file of a large job."""
    _edits("an edit in 1,000 lines of 500 rooms", _edited, "job/short.room", False, folder, rounds)


def long(folder: Path, others: Sequence[Peer], rounds: int) -> None:
    """A long file of a large job."""
    ours = _edits("an edit in 10,000 lines of 500 rooms", _edited, "job/long.room", False, folder, rounds)
    _of_others(_edited, 10_000, folder, others, rounds, ours)


def held(folder: Path, others: Sequence[Peer], rounds: int) -> None:
    """A key held down."""
    ours = _edits(f"the last of {HELD} keys held in 10,000 lines", _held, "job/long.room", False, folder, rounds)
    _of_others(_held, 10_000, folder, others, rounds, ours)


def start(folder: Path, others: Sequence[Peer], rounds: int) -> None:
    """The servers take turns."""
    commands = {"roomspec": OURS, "pygls alone": BARE} | {
        peer.name: peer.command for peer in others if not peer.missing
    }
    times: dict[str, list[Taken]] = {name: [] for name in commands}
    (folder / "empty").mkdir()
    for _ in range(max(3, rounds // 3)):
        for name, command in commands.items():
            wire = Wire(command, folder / "empty")
            try:
                times[name].append(Taken(wire.start(), wire.processor()))
            except NothingSaid as trouble:
                print(f"{name}: {trouble}")
            wire.end()
    _head("process started to `initialize` answered")
    for name, taken in times.items():
        if taken:
            _line(name, Taken(*map(median, zip(*taken, strict=True))), median(one.clock for one in times["roomspec"]))


ROWS: dict[str, Callable[[Path, Sequence[Peer], int], None]] = {
    "small": small,
    "job": job,
    "long": long,
    "held": held,
    "start": start,
    "first": lambda folder, _others, rounds: many_rooms.first(folder, max(3, rounds // 6)),
    "crowd": lambda folder, _others, _rounds: many_rooms.crowd(folder),
    "catalogue": lambda folder, _others, rounds: many_rooms.catalogue(folder, max(3, rounds // 6)),
}


def _edits(title: str, measure: Measure, path: str, short: bool, folder: Path, rounds: int) -> float:
    """A row for each of our jobs; gives the seconds that the rows of others are held against."""
    _head(f"{title}, median of {rounds}" if measure is _edited else title)
    ours = 0.0
    for number, (label, alone, all_) in enumerate(_jobs()):
        files = alone if short else all_
        with written(folder / f"{'small' if short else 'job'}-{number}", files) as root:
            taken = measure(OURS, root, _of(files, path), rounds)
        ours = taken.clock if number == 0 else ours
        _line(f"roomspec, {label}", taken, ours)
    return ours


def _of_others(measure: Measure, lines: int, folder: Path, others: Sequence[Peer], rounds: int, ours: float) -> None:
    for peer in others:
        try:
            document = peer.document(lines)
            with written(folder / peer.name, {document.path: document.text}) as root:
                _line(peer.name, measure(peer.command, root, document, min(rounds, 15)), ours)
        except (NothingSaid, OSError) as trouble:
            print(f"{peer.name:34} {peer.missing or trouble}")


def _edited(command: Iterable[str], root: Path, document: Document, rounds: int) -> Taken:
    """Seconds from an edit to what is published for it, the median; every other edit makes a mistake."""
    with _opened(command, root, document) as wire:
        taken = []
        before = wire.processor()
        said: dict[bool, set[str]] = {}
        for version in range(2, 2 * rounds + 2):
            wrong = version % 2 == 0
            end, text = (document.column, document.wrong) if wrong else (document.column + len(document.wrong), "")
            sent = wire.change(document.path, version, document.line, document.column, end, text)
            at, found = wire.diagnosed(document.path, version)
            taken.append(at - sent)
            if said.setdefault(wrong, _near(found, document)) != _near(found, document):
                raise NothingSaid("it says now this, now that, of the same text")
            wire.quiet(0.02)
        if said[True] == said[False]:
            raise NothingSaid("it does not find the mistake")
        return Taken(median(taken), (wire.processor() - before) / len(taken))


def _held(command: Iterable[str], root: Path, document: Document, _rounds: int) -> Taken:
    """Seconds from the last of many keys to the last findings, which are of the last text."""
    with _opened(command, root, document) as wire:
        sent, before = 0.0, wire.processor()
        for version in range(2, HELD + 2):
            wire.quiet_until(sent + APART)
            at = document.column + (version - 2) * len(document.wrong)
            sent = wire.change(document.path, version, document.line, at, at, document.wrong)
        at, found = wire.diagnosed(document.path, HELD + 1)
        with suppress(NothingSaid):
            while True:
                at, found = wire.diagnosed(document.path, HELD + 1, 2.0)
        if not _near(found, document):
            raise NothingSaid("it does not find the mistake")
        return Taken(at - sent, (wire.processor() - before) / HELD)


@contextmanager
def _opened(command: Iterable[str], root: Path, document: Document) -> Iterator[Wire]:
    wire = Wire(tuple(command), root)
    try:
        wire.start()
        wire.open(document.path, document.language, document.text)
        wire.quiet(3.0)
        yield wire
    finally:
        wire.end()


def _near(found: Iterable[Message], document: Document) -> set[str]:
    """What is said of the line, or where it breaks the next one."""
    lines = (document.line, document.line + 1)
    return {one["message"] for one in found if one["range"]["start"]["line"] in lines}


@cache
def _jobs() -> tuple[tuple[str, dict[str, str], dict[str, str]], ...]:
    """Two jobs of 500 rooms in a file of 1,000 lines, one of 10,000, and the rest; with a job of the first alone."""
    nearly_clean = generate.one_job(500)
    rooms = nearly_clean.pop("job/rooms/ground.room")
    files = nearly_clean | _shared(rooms, nearly_clean["job/job.room"])
    clean = "a finding in 25 lines", _short_alone(files), files
    hard = generate_distinct.repository(1, 680)
    job = hard["job-0001/job.room"].replace('"rooms.room"', '"*.room"')
    files = {"job/catalogue.room": hard["job-0001/catalogue.room"]} | _shared(hard["job-0001/rooms.room"], job)
    return clean, ("a finding in 3 lines", _short_alone(files), files)


def _short_alone(files: dict[str, str]) -> dict[str, str]:
    return {path: text for path, text in files.items() if path not in ("job/long.room", "job/rest.room")}


def _shared(rooms: str, job: str) -> dict[str, str]:
    short, long, rest = "", "", []
    for number, block in enumerate(f"room {one.removeprefix('room ')}" for one in rooms.split("\nroom ")):
        if short.count("\n") < 1_000 and number % 3 == 0:
            short += f"{block}\n"
        elif long.count("\n") < 10_000:
            long += f"{block}\n"
        else:
            rest.append(block)
    job = job.replace('"rooms/*.room"', '"*.room"')
    return {"job/job.room": job, "job/short.room": short, "job/long.room": long, "job/rest.room": "\n".join(rest)}


def _of(files: dict[str, str], path: str) -> Document:
    """The file with a name mistyped near its beginning: of many mistakes an editor is shown the first hundred."""
    lines = files[path].split("\n")
    line = next(at for at, text in enumerate(lines) if at > 20 and text.startswith("  finish"))
    return Document(path, "room", files[path], line, lines[line].index(" by"), "x")


def _head(title: str) -> None:
    print(f"\n{title}\n{'':34} {'ms':>9} {'ratio':>8} {'processor':>10}")


def _line(name: str, taken: Taken, ours: float) -> None:
    print(f"{name:34} {taken.clock * 1000:9.1f} {taken.clock / ours:8.2f} {taken.processor * 1000:10.1f}", flush=True)


if __name__ == "__main__":
    options = argparse.ArgumentParser()
    options.add_argument("rows", nargs="*", metavar="ROW", choices=[*ROWS, []], help=", ".join(ROWS))
    options.add_argument("--rounds", type=int, default=30)
    options.add_argument("--alone", action="store_true", help="leave the other servers out")
    given = options.parse_args()
    main(given.rows or list(ROWS), given.rounds, given.alone)
