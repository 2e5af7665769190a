"""From a path on disk to the jobs it means: a job file, or a folder that holds some."""

import os
import re
import shlex
from collections.abc import Iterator
from pathlib import Path

from msgspec import Struct

from roomspec.analysis.world import World
from roomspec.files.below import SKIPPED
from roomspec.files.disk import DiskWorld, can_be_written, goes_round, root_of

_JOB_LINE = re.compile(rb"^(?:\xef\xbb\xbf)?[ \t]*job[ \t]+\S", re.MULTILINE)
_LISTED = 5
_NOTHING = "The path is empty; name a job file or a folder, such as `.`."


class Jobs(Struct, frozen=True):
    """The jobs that a path means, relative to the root of their repository; at least one."""

    world: World
    paths: tuple[str, ...]


class NoJob(Struct, frozen=True):
    """Why a path means no job: one line that says what, where, and how to mend it."""

    reason: str


def jobs_at(path: str) -> Jobs | NoJob:
    """The job file, or the jobs that stand directly in the folder, sorted."""
    if not path:
        return NoJob(_NOTHING)
    place = Path(path)
    try:
        if not place.is_dir():
            with place.open("rb"):
                return _jobs(place, (place,))
        files = tuple(file for file in _room_files(place) if holds_job(file))
        return _jobs(place, files) if files else NoJob(_none_in(place))
    except OSError as trouble:
        return NoJob(f"{path}: cannot be read: {plain_reason(trouble)}.")
    except ValueError:
        return NoJob(f"{path!r} is not a path.")


class Below(Struct, frozen=True):
    """What stands below a folder, relative to the root of its repository: all room files, and those that hold a job.

    `whole` where the folder is the repository's own root, so that no job stands elsewhere. `unread` says, a sentence
    each, what was found and not looked into.
    """

    root: Path
    files: tuple[str, ...]
    jobs: tuple[str, ...]
    whole: bool = False
    unread: tuple[str, ...] = ()


def jobs_below(path: str) -> Below | NoJob:
    """The job file, or every job below the folder, sorted; hidden folders and links out of the repository left out."""
    if not path:
        return NoJob(_NOTHING)
    place = Path(path)
    try:
        if not place.is_dir():
            named = jobs_at(path)
            return named if isinstance(named, NoJob) else Below(root_of(place), named.paths, named.paths)
        root, unread = root_of(place), list[str]()
        world = DiskWorld(root)
        files: dict[str, Path] = {}
        for file in room_files_below(place, unread):
            name = world.path_of(file)
            if name is None:
                unread.append(_leads_out(file))
            elif not can_be_written(name):
                unread.append(f"{name.encode(errors='replace').decode()}: its name is not in UTF-8; rename it.")
            elif file.is_file():
                files[name] = file
        jobs = tuple(sorted(name for name, file in files.items() if _opens_job(file, unread)))
        if not jobs:
            return NoJob(unread[0] if unread else _none_in(place))
        return Below(root, tuple(sorted(files)), jobs, place.resolve() == root, tuple(unread))
    except OSError as trouble:
        return NoJob(f"{path}: cannot be read: {plain_reason(trouble)}.")
    except ValueError:
        return NoJob(f"{path!r} is not a path.")


def one_job_at(path: str) -> Jobs | NoJob:
    """The only job of the path; a reason that lists them where there are several."""
    jobs = jobs_at(path)
    if isinstance(jobs, NoJob) or len(jobs.paths) == 1:
        return jobs
    names = ", ".join(Path(job).name for job in jobs.paths[:_LISTED])
    more = ", ..." if len(jobs.paths) > _LISTED else ""
    return NoJob(f"{path} holds {len(jobs.paths)} jobs; name one of them: {names}{more}.")


def no_job_in(path: str) -> NoJob:
    """The reason where a file was read and no job stands in it."""
    return NoJob(f"{path} holds no job; a job file has a line such as `job kestrel-house`.")


def holds_job(file: Path) -> bool:
    """True where a line of the file opens a job; False also where the file cannot be read."""
    return _opens_job(file, [])


def opens_job(data: bytes) -> bool:
    """True where a line of the file's bytes opens a job."""
    return _JOB_LINE.search(data) is not None


def _opens_job(file: Path, unread: list[str]) -> bool:
    try:
        return opens_job(file.read_bytes())
    except OSError as trouble:
        unread.append(f"{file}: cannot be read: {plain_reason(trouble)}.")
        return False


def plain_reason(trouble: OSError) -> str:
    """What the machine says against a file, in its words without its numbers."""
    reason = trouble.strerror or str(trouble) or type(trouble).__name__
    return reason[0].lower() + reason[1:]


def _room_files(folder: Path) -> list[Path]:
    return sorted(file for file in folder.iterdir() if file.suffix == ".room" and file.is_file())


def room_files_below(folder: Path, unread: list[str]) -> Iterator[Path]:
    """The room files below a folder, hidden ones and hidden folders left out; what cannot be read goes to `unread`."""

    def note(trouble: OSError) -> None:
        unread.append(f"{trouble.filename}: cannot be read: {plain_reason(trouble)}.")

    for where, inner, names in os.walk(folder, onerror=note):
        inner[:] = sorted(name for name in inner if not name.startswith(".") and name not in SKIPPED)
        yield from (Path(where, name) for name in sorted(names) if name.endswith(".room") and name[0] != ".")


def _leads_out(file: Path) -> str:
    if goes_round(file):
        return f"{file} is a link that leads back to itself; let it name a file, or remove it."
    return f"{file} is a link that leads out of the repository; only files inside it are read."


def _jobs(place: Path, files: tuple[Path, ...]) -> Jobs | NoJob:
    world = DiskWorld(root_of(place))
    paths = [world.path_of(file) for file in files]
    inside = tuple(path for path in paths if path is not None)
    if len(inside) < len(paths):
        return NoJob(_leads_out(files[paths.index(None)]))
    return Jobs(world, inside)


def _none_in(place: Path) -> str:
    below = [file.parent.as_posix() for file in sorted(place.glob("*/*.room")) if holds_job(file)]
    if below:
        names = ", ".join(list(dict.fromkeys(below))[:_LISTED])
        return f"{place} holds no job itself; name one of the folders in it: {names}."
    if _room_files(place):
        return f"{place} holds room files but no job; a job file has a line such as `job kestrel-house`."
    if any(part.startswith(".") for part in place.resolve().relative_to(root_of(place)).parts):
        return f"{place} holds no job; name a job's own folder, or one above it."
    return f"{place} holds no job; `roomspec new {shlex.quote(str(place))}` writes a small one."
