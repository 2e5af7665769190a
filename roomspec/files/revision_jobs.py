"""From `REV:path` to the job that it means in that commit."""

import posixpath
from pathlib import Path

from msgspec import Struct

from roomspec.files.disk import root_of
from roomspec.files.jobs import Jobs, NoJob, opens_job
from roomspec.files.revision import NoGitError, RevisionWorld, commit_of

SHOWN = 12
"""Letters of a commit's name that are printed."""


class AtRevision(Struct, frozen=True):
    """The job of a commit; `called` names both, without the machine: `1a2b3c4d5e6f:jobs/kestrel-house`."""

    jobs: Jobs
    called: str


def names_revision(text: str) -> bool:
    """True where it is `REV:path` and nothing on the disk is called so."""
    try:
        return ":" in text and not Path(text).exists()
    except (OSError, ValueError):
        return False


def job_at_revision(text: str, here: Path) -> AtRevision | NoJob:
    """The one job of `REV:path`; the path runs from the repository's root, or from `here` where it begins with `.`"""
    revision, _, path = text.partition(":")
    root = root_of(here)
    if not (root / ".git").exists():
        return NoJob(f"{text}: {here} is in no git repository, so no revision of it can be read.")
    try:
        commit = commit_of(root, revision)
        if commit is None:
            return NoJob(f"{text}: this repository has no revision {revision!r}.")
        return _job_in(RevisionWorld(root, commit), _from_root(path, root, here), text)
    except NoGitError as trouble:
        return NoJob(f"{text}: git: {trouble}.")


def _from_root(path: str, root: Path, here: Path) -> str:
    inner = here.resolve().relative_to(root).as_posix() if path.split("/")[0] in (".", "..") else ""
    normal = posixpath.normpath(posixpath.join(inner, path))
    return "" if normal == "." else normal


def _job_in(world: RevisionWorld, path: str, text: str) -> AtRevision | NoJob:
    called = f"{world.commit[:SHOWN]}:{path}"
    if world.holds(path):
        return AtRevision(Jobs(world, (path,)), called)
    rooms = world.rooms_in(path)
    jobs = tuple(file for file in rooms if opens_job(world.read(file) or b""))
    if len(jobs) == 1:
        return AtRevision(Jobs(world, jobs), called)
    if jobs:
        return NoJob(f"{text} holds {len(jobs)} jobs; name one of them: {', '.join(map(posixpath.basename, jobs))}.")
    if rooms:
        return NoJob(f"{text} holds room files but no job.")
    return NoJob(f"{text}: that revision has no such file or folder with room files.")
