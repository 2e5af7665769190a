"""How fast the language server is, beside others in the same run. Run: python tests/bench/bench_server.py [ROUNDS].

From an edit to its findings, in 1,000 and in 10,000 lines: ours in a job of some 50 rooms, in a file of that length of
a job of 500, and in its largest file (a second job has a finding in three lines); each other server on a document of
its own kind that is as long (peers.py). From the process's start to the answer to `initialize`, beside a server of
pygls that offers nothing. Hover and completion while 10,000 rooms are checked, the first findings of the open file
meanwhile, and the memory afterwards. A key held down. All goes over pipes to a process; ratios are to ours.
"""

import sys
import tempfile
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager, suppress
from pathlib import Path
from statistics import median, quantiles

import generate
import generate_distinct
from peers import Document, Peer, peers
from wire import Message, NothingSaid, Wire

OURS = (sys.executable, "-m", "roomspec", "serve")
BARE = (
    sys.executable,
    "-c",
    'from pygls.lsp.server import LanguageServer; LanguageServer("bare", "0").start_io()',
)
HELD, APART = 40, 0.030
"""How often a key repeats, and seconds between."""


def main(rounds: int) -> None:
    """Print all figures."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name).resolve()
        others = peers(folder)
        edits(folder, others, rounds)
        beginnings(folder, others, rounds)
        crowd(folder)


def edits(folder: Path, others: Sequence[Peer], rounds: int) -> None:
    """From an edit to what is found, and after a key held down."""
    print(f"\nEdit to findings, milliseconds, median of {rounds} (ratio); the last of {HELD} keys held")
    heads = ("1,000 lines", "1,000 of 500 rooms", "10,000 lines", "key held, 10,000")
    print(f"{'':34} {' '.join(f'{head:>18}' for head in heads)}")
    ours: list[float] = []
    for label, small, files in _jobs():
        taken = []
        with _written(folder / "small", small) as root:
            taken.append(_edited(OURS, root, _of(small, "job/short.room"), rounds))
        with _written(folder / "job", files) as root:
            taken += [_edited(OURS, root, _of(files, path), rounds) for path in ("job/short.room", "job/long.room")]
            taken.append(_held(OURS, root, _of(files, "job/long.room")))
        ours = ours or taken
        _row(f"roomspec, {label}", taken, ours)
    for peer in others:
        taken = []
        try:
            for lines in (1_000, 10_000):
                document = peer.document(lines)
                with _written(folder / peer.name, {document.path: document.text}) as root:
                    taken.append(_edited(peer.command, root, document, min(rounds, 15)))
            with _written(folder / peer.name, {document.path: document.text}) as root:
                taken.append(_held(peer.command, root, document))
            _row(peer.name, [taken[0], None, *taken[1:]], ours)
        except (NothingSaid, OSError) as trouble:
            print(f"{peer.name:34} {peer.missing or trouble}")


def beginnings(folder: Path, others: Sequence[Peer], rounds: int) -> None:
    """From the start of the process to the answer to `initialize`, the servers taking turns."""
    commands = {"roomspec": OURS, "pygls alone": BARE} | {
        peer.name: peer.command for peer in others if not peer.missing
    }
    times: dict[str, list[float]] = {name: [] for name in commands}
    (folder / "empty").mkdir()
    for _ in range(max(3, rounds // 3)):
        for name, command in commands.items():
            wire = Wire(command, folder / "empty")
            try:
                times[name].append(wire.start())
            except NothingSaid as trouble:
                print(f"{name}: {trouble}")
            wire.end()
    print("\nProcess started to `initialize` answered, milliseconds, median (ratio)")
    for name, taken in times.items():
        if taken:
            _row(name, [median(taken)], [median(times["roomspec"])])


def crowd(folder: Path) -> None:
    """A workspace of 10,000 rooms: the open file's findings, requests meanwhile, memory."""
    files = generate.repository(5_000)
    path = sorted(path for path in files if path.endswith("ground.room"))[-1]
    with _written(folder / "crowd", files) as root:
        wire = Wire(OURS, root)
        wire.start()
        text = files[path].replace("by glued", "by gleud", 1)
        opened = wire.open(path, "room", text)
        first = wire.diagnosed(path, 1)[0] - opened
        line = next(number for number, one in enumerate(text.split("\n")) if one.startswith("  finish"))
        position = {"textDocument": {"uri": wire.uri(path)}, "position": {"line": line, "character": 11}}
        hovers: list[float] = []
        completions: list[float] = []
        ended = False

        def ends(message: Message) -> bool:
            value = message.get("params", {}).get("value") if message.get("method") == "$/progress" else None
            return value is not None and value.get("kind") == "end"

        while not ended:
            for method, taken in (("hover", hovers), ("completion", completions)):
                number = wire.begin(f"textDocument/{method}", position)
                asked = wire.sent
                while True:
                    at, message = wire.wait(lambda _message: True)
                    ended = ended or ends(message)
                    if message.get("id") == number and "method" not in message:
                        break
                taken.append(at - asked)
        wire.quiet(1.0)
        print(f"\nA workspace of {len(files)} files, {generate.lines_of(files)} lines, 10,000 rooms")
        print(f"findings of the open file: {first * 1000:.0f} ms after it was opened")
        for name, taken in (("hover", hovers), ("completion", completions)):
            print(f"{name} while all is checked: p95 {quantiles(taken, n=20)[-1] * 1000:.1f} ms of {len(taken)}")
        print(f"memory afterwards: {wire.memory():.0f} MB")
        wire.end()


def _edited(command: Iterable[str], root: Path, document: Document, rounds: int) -> float:
    """Median seconds from an edit to what is published for it; every other edit makes a mistake."""
    with _opened(command, root, document) as wire:
        taken = []
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
        return median(taken)


def _held(command: Iterable[str], root: Path, document: Document) -> float:
    """Seconds from the last of many keys to the last findings, which are of the last text."""
    with _opened(command, root, document) as wire:
        sent = 0.0
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
        return at - sent


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


def _jobs() -> Iterator[tuple[str, dict[str, str], dict[str, str]]]:
    """Two jobs of 500 rooms in a file of 1,000 lines, one of 10,000, and the rest; with a job of the first alone."""
    nearly_clean = generate.one_job(500)
    rooms = nearly_clean.pop("job/rooms/ground.room")
    files = nearly_clean | _shared(rooms, nearly_clean["job/job.room"])
    yield "a finding in 25 lines", _short_alone(files), files
    hard = generate_distinct.repository(1, 680)
    job = hard["job-0001/job.room"].replace('"rooms.room"', '"*.room"')
    files = {"job/catalogue.room": hard["job-0001/catalogue.room"]} | _shared(hard["job-0001/rooms.room"], job)
    yield "a finding in 3 lines", _short_alone(files), files


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


@contextmanager
def _written(folder: Path, files: dict[str, str]) -> Iterator[Path]:
    (folder / ".git").mkdir(parents=True, exist_ok=True)
    for path, text in files.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_text(text, encoding="utf-8")
    yield folder


def _row(name: str, taken: Sequence[float | None], ours: Sequence[float]) -> None:
    pairs = zip(taken, ours, strict=True)
    cells = [f"{one * 1000:9.1f} ({one / own:6.2f})" if one is not None else "" for one, own in pairs]
    print(f"{name:34} {' '.join(f'{cell:>18}' for cell in cells)}", flush=True)


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 30)
