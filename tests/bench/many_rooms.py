"""A firm's workspace of 10,000 rooms, as bench_server.py measures it: 340 jobs that share one catalogue."""

import re
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from statistics import median, quantiles

import generate
from wire import Message, NothingSaid, Wire

OURS = (sys.executable, "-m", "roomspec", "serve")
CATALOGUE = "catalogue/panels.room"


def first(folder: Path, times: int) -> None:
    """From the opening of a file in a server that has read nothing to what is found in it."""
    files, path = _workspace()
    taken, worked = [], []
    with written(folder / "crowd", files) as root:
        for _ in range(times):
            wire = Wire(OURS, root)
            wire.start()
            before = wire.processor()
            opened = wire.open(path, "room", _mistyped(files[path]))
            taken.append(wire.diagnosed(path, 1)[0] - opened)
            worked.append(wire.processor() - before)
            wire.end()
    _told(files)
    print(
        f"first findings of the open file: median {median(taken) * 1000:.0f} ms,"
        f" {median(worked) * 1000:.0f} ms of the processor, of {times}",
        flush=True,
    )


def crowd(folder: Path) -> None:
    """Requests while all is checked for the first time, and what the process holds afterwards."""
    files, path = _workspace()
    with written(folder / "crowd", files) as root:
        wire = Wire(OURS, root)
        wire.start()
        wire.open(path, "room", _mistyped(files[path]))
        wire.diagnosed(path, 1)
        taken = _asked(wire, path, files[path], _first_check_ends)
        wire.quiet(1.0)
        _told(files)
        _meanwhile("while all is checked", taken)
        print(f"memory afterwards: {wire.memory():.0f} MB", flush=True)
        wire.end()


def catalogue(folder: Path, times: int) -> None:
    """A panel of the catalogue gets other widths; it is open, and a room file that uses it."""
    files, path = _workspace()
    text = files[CATALOGUE]
    here = {path: files[path]}
    panel = max(re.findall(r"^panel (\S+)", text, re.MULTILINE), key=lambda name: _rooms_with(here, name))
    line, width = _width_of(text, panel)
    with written(folder / "crowd", files) as root:
        wire = Wire(OURS, root)
        wire.start()
        wire.open(path, "room", files[path])
        wire.open(CATALOGUE, "room", text)
        wire.quiet(5.0)
        column = text.split("\n")[line].index(str(width))
        soon, late, worked = [], [], []
        meanwhile: dict[str, list[float]] = {}
        for number in range(times):
            before = wire.processor()
            wider = str(width + 20 + number % 2 * 20 + number)
            sent = wire.change(CATALOGUE, number + 2, line, column, column + 3, wider)
            said: dict[str, float] = {}

            def heard(at: float, message: Message, said: dict[str, float] = said) -> None:
                if message.get("method") == "textDocument/publishDiagnostics":
                    said[message["params"]["uri"]] = at

            began = sent

            def quiet(now: float, said: dict[str, float] = said, began: float = began) -> bool:
                return now > max([began + 8.0, *(at + 3.0 for at in said.values())])

            for name, taken in _asked(wire, path, files[path], None, heard, quiet).items():
                meanwhile.setdefault(name, []).extend(taken)
            soon.append(said.get(wire.uri(path), sent) - sent)
            late.append(max(said.values(), default=sent) - sent)
            worked.append(wire.processor() - before)
        _told(files)
        blocks = _rooms_with(files, panel)
        print(f"a line of the catalogue: {blocks} blocks of rooms use the panel; {len(said)} files told")
        print(
            f"findings of the open file: median {median(soon) * 1000:.0f} ms; of all: {median(late) * 1000:.0f} ms,"
            f" {median(worked) * 1000:.0f} ms of the processor with the requests"
        )
        _meanwhile("meanwhile", meanwhile)
        wire.end()


@contextmanager
def written(folder: Path, files: dict[str, str]) -> Iterator[Path]:
    """The files on disk, in a repository of their own."""
    (folder / ".git").mkdir(parents=True, exist_ok=True)
    for path, text in files.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_text(text, encoding="utf-8")
    yield folder


def _workspace() -> tuple[dict[str, str], str]:
    """All files, and the one that is open."""
    files = generate.repository(5_000)
    return files, sorted(path for path in files if path.endswith("ground.room"))[-1]


def _mistyped(text: str) -> str:
    return text.replace("by glued", "by gleud", 1)


def _rooms_with(files: dict[str, str], panel: str) -> int:
    blocks = (block for text in files.values() for block in re.split(r"^(?=room |pattern )", text, flags=re.MULTILINE))
    return sum(f"finish {panel} " in block for block in blocks)


def _width_of(text: str, panel: str) -> tuple[int, int]:
    """The line of the panel's width, from 0, and the width."""
    lines = text.split("\n")
    begins = next(at for at, line in enumerate(lines) if line.startswith(f"panel {panel}"))
    return next(
        (at, int(line.split()[1])) for at, line in enumerate(lines) if at > begins and line.startswith("  cover ")
    )


def _asked(
    wire: Wire,
    path: str,
    text: str,
    ends: Callable[[Message], bool] | None,
    heard: Callable[[float, Message], None] = lambda _at, _message: None,
    quiet: Callable[[float], bool] = lambda _now: False,
) -> dict[str, list[float]]:
    """Hover and completion one after the other until something `ends` it or it is `quiet`; seconds of each."""
    line = next(number for number, one in enumerate(text.split("\n")) if one.startswith("  finish"))
    position = {"textDocument": {"uri": wire.uri(path)}, "position": {"line": line, "character": 11}}
    taken: dict[str, list[float]] = {"hover": [], "completion": []}
    ended = False
    while not ended:
        for name, times in taken.items():
            number = wire.begin(f"textDocument/{name}", position)
            asked = wire.sent
            while True:
                at, message = wire.wait(lambda _message: True)
                heard(at, message)
                ended = ended or (ends is not None and ends(message)) or quiet(at)
                if message.get("id") == number and "method" not in message:
                    break
            if "error" in message:
                raise NothingSaid(f"{name}: {message['error']}")
            times.append(at - asked)
    return taken


def _first_check_ends(message: Message) -> bool:
    value = message.get("params", {}).get("value") if message.get("method") == "$/progress" else None
    return value is not None and value.get("kind") == "end"


def _told(files: dict[str, str]) -> None:
    print(f"\na workspace of {len(files)} files, {generate.lines_of(files)} lines, 10,000 rooms")


def _meanwhile(when: str, taken: dict[str, list[float]]) -> None:
    for name, times in taken.items():
        late = quantiles(times, n=20)[-1] * 1000
        print(f"{name} {when}: p95 {late:.1f} ms of {len(times)}, most {max(times) * 1000:.0f} ms", flush=True)
