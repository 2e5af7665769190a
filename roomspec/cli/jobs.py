"""From the PATH of a command to the jobs it means."""

import re
from pathlib import Path

import click
from msgspec import Struct

from roomspec.cli.trouble import reading
from roomspec.files.disk import DiskWorld, root_of

_JOB_LINE = re.compile(rb"^(?:\xef\xbb\xbf)?[ \t]*job[ \t]+\S", re.MULTILINE)
_LISTED = 5


class Jobs(Struct, frozen=True):
    """The jobs that a PATH means, relative to the root of their repository; at least one."""

    world: DiskWorld
    paths: tuple[str, ...]


def jobs_at(path: str) -> Jobs:
    """The job file, or the jobs of the folder; trouble where there is none."""
    place = Path(path)
    try:
        if place.is_dir():
            files = tuple(file for file in sorted(place.glob("*.room")) if file.is_file() and holds_job(file))
            if not files:
                raise click.ClickException(_none_in(place))
        else:
            with place.open("rb"):
                files = (place,)
        world = DiskWorld(root_of(place))
    except OSError as trouble:
        raise reading(path, trouble) from trouble
    except ValueError as trouble:
        raise click.ClickException(f"{path!r} is not a path.") from trouble
    return Jobs(world, tuple(_inside(world, file) for file in files))


def one_job_at(path: str) -> tuple[DiskWorld, str]:
    """The only job of the path; trouble that lists them where there are several."""
    jobs = jobs_at(path)
    if len(jobs.paths) > 1:
        names = ", ".join(Path(job).name for job in jobs.paths[:_LISTED])
        more = ", ..." if len(jobs.paths) > _LISTED else ""
        raise click.ClickException(f"{path} holds {len(jobs.paths)} jobs; name one of them: {names}{more}.")
    return jobs.world, jobs.paths[0]


def holds_job(file: Path) -> bool:
    """True where a line of the file opens a job."""
    return _JOB_LINE.search(file.read_bytes()) is not None


def no_job_in(path: str) -> click.ClickException:
    """The trouble of a file in which no job stands."""
    return click.ClickException(f"{path} holds no job; a job file has a line such as `job kestrel-house`.")


def _none_in(place: Path) -> str:
    below = [file.parent.as_posix() for file in sorted(place.glob("*/*.room")) if file.is_file() and holds_job(file)]
    if below:
        names = ", ".join(list(dict.fromkeys(below))[:_LISTED])
        return f"{place} holds no job itself; name one of the folders in it: {names}."
    if any(place.glob("*.room")):
        return f"{place} holds room files but no job; a job file has a line such as `job kestrel-house`."
    return f"{place} holds no job; `roomspec new {place}` writes a small one."


def _inside(world: DiskWorld, file: Path) -> str:
    path = world.path_of(file)
    if path is None:
        raise click.ClickException(f"{file} is a link that leads out of the repository; only files inside it are read.")
    return path
