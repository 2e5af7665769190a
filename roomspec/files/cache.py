"""What checking gave, kept on disk from one run to the next, in `.roomspec-cache` at the repository's root.

One entry a job. It holds all that the result was made from: the program, and the digest of every file that was read or
looked for, the settings among them. It counts only while all of that is as it was. So the folder may be deleted, copied
between machines or damaged at any time: what does not fit is made anew. Each entry is written whole, and of two runs
at once the later one's stays.
"""

import os
import sys
from functools import lru_cache
from hashlib import sha256
from pathlib import Path

import msgspec
from msgspec import Struct

import roomspec_grammar
from roomspec.analysis.checked import Checked
from roomspec.files.kept_world import KeptWorld, Recorder

FOLDER = ".roomspec-cache"
_NOTE = "# What `roomspec check` has found before; safe to delete.\n*\n"


class Entry(Struct, frozen=True):
    """A result, and all that it depends on."""

    program: str
    reads: dict[str, str]
    finds: dict[str, tuple[str, ...]]
    date: str
    checked: Checked


class Cache:
    """The entries of one repository; one that cannot be read or written is as if it were not there."""

    def __init__(self, root: Path) -> None:
        """Keep entries below `root`."""
        self._folder = root / FOLDER
        self._writes = True

    def get(self, world: KeptWorld, job: str) -> Checked | None:
        """What checking the job gave, where nothing that it was made from has changed."""
        try:
            data = self._place(job).read_bytes()
        except OSError:
            return None
        entry = _decoded(data)
        if entry is None or entry.checked.job != job or entry.program != program():
            return None
        same = (
            all(world.digest(path) == digest for path, digest in entry.reads.items())
            and all(world.find(pattern) == paths for pattern, paths in entry.finds.items())
            and entry.date in ("", world.today().isoformat())
        )
        return entry.checked if same else None

    def put(self, asked: Recorder, checked: Checked) -> None:
        """Keep a result; where the folder cannot be written, no later one is tried."""
        if not self._writes:
            return
        body = msgspec.msgpack.encode(Entry(program(), asked.reads, asked.finds, asked.date, checked))
        place = self._place(checked.job)
        temporary = place.with_name(f"{place.name}.{os.getpid()}.{os.urandom(4).hex()}")
        try:
            self._open()
            temporary.write_bytes(sha256(body).digest() + body)
            temporary.replace(place)
        except OSError:
            self._writes = False
            _drop(temporary)

    def _open(self) -> None:
        if self._folder.is_symlink():
            raise OSError
        if not self._folder.is_dir():
            self._folder.mkdir()
            (self._folder / ".gitignore").write_text(_NOTE, encoding="utf-8")

    def _place(self, job: str) -> Path:
        return self._folder / sha256(job.encode("utf-8", "surrogateescape")).hexdigest()[:32]


def cache_of(root: Path) -> Cache | None:
    """The cache of a repository; a folder that is none gets no file that its owner has not asked for."""
    return Cache(root) if (root / ".git").exists() else None


@lru_cache(1)
def program() -> str:
    """What the program is, to the letter: a change in any module makes every entry stale. About 10 ms."""
    digest = sha256(repr(sys.version_info[:2]).encode())
    for package in (Path(__file__).parents[1], Path(str(roomspec_grammar.__file__)).parent):
        for file in sorted(package.rglob("*.py")):
            digest.update(file.read_bytes())
    return digest.hexdigest()


def _decoded(data: bytes) -> Entry | None:
    if sha256(data[32:]).digest() != data[:32]:
        return None
    try:
        return msgspec.msgpack.decode(data[32:], type=Entry)
    except (msgspec.DecodeError, UnicodeDecodeError):
        return None


def _drop(temporary: Path) -> None:
    try:
        temporary.unlink(missing_ok=True)
    except OSError:
        return
