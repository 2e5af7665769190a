"""From a path on disk to the jobs it means: a job file, or a folder that holds some."""

import re
from pathlib import Path

from msgspec import Struct

from roomspec.analysis.world import World
from roomspec.files.disk import DiskWorld, root_of

_JOB_LINE = re.compile(rb"^(?:\xef\xbb\xbf)?[ \t]*job[ \t]+\S", re.MULTILINE)
_LISTED = 5


class Jobs(Struct, frozen=True):
    """The jobs that a path means, relative to the root of their repository; at least one."""

    world: World
    paths: tuple[str, ...]


class NoJob(Struct, frozen=True):
    """Why a path means no job: one line that says what, where, and how to mend it."""

    reason: str


def jobs_at(path: str) -> Jobs | NoJob:
    """The job file, or the jobs that stand directly in the folder, sorted."""
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
    try:
        return _JOB_LINE.search(file.read_bytes()) is not None
    except OSError:
        return False


def plain_reason(trouble: OSError) -> str:
    """What the machine says against a file, in its words without its numbers."""
    reason = trouble.strerror or str(trouble) or type(trouble).__name__
    return reason[0].lower() + reason[1:]


def _room_files(folder: Path) -> list[Path]:
    return sorted(file for file in folder.iterdir() if file.suffix == ".room" and file.is_file())


def _jobs(place: Path, files: tuple[Path, ...]) -> Jobs | NoJob:
    world = DiskWorld(root_of(place))
    paths = [world.path_of(file) for file in files]
    inside = tuple(path for path in paths if path is not None)
    if len(inside) < len(paths):
        outside = files[paths.index(None)]
        return NoJob(f"{outside} is a link that leads out of the repository; only files inside it are read.")
    return Jobs(world, inside)


def _none_in(place: Path) -> str:
    below = [file.parent.as_posix() for file in sorted(place.glob("*/*.room")) if holds_job(file)]
    if below:
        names = ", ".join(list(dict.fromkeys(below))[:_LISTED])
        return f"{place} holds no job itself; name one of the folders in it: {names}."
    if _room_files(place):
        return f"{place} holds room files but no job; a job file has a line such as `job kestrel-house`."
    return f"{place} holds no job; `roomspec new {place}` writes a small one."
