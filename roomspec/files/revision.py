"""One commit of a repository as a World: read with git, nothing checked out."""

import os
import posixpath
import subprocess
from datetime import date
from pathlib import Path

from roomspec.analysis.world import matches

LINKS = 10
"""Links from link to link that are followed."""
_ENVIRONMENT = {"LC_ALL": "C", "GIT_TERMINAL_PROMPT": "0", "GIT_OPTIONAL_LOCKS": "0", "GIT_NO_LAZY_FETCH": "1"}
"""git asks nobody, changes nothing, and fetches nothing."""


class NoGitError(Exception):
    """git is not installed, or could not do what it was asked; the message is one line."""


class RevisionWorld:
    """The files of one commit. Links that lead out of it, and repositories within it, are not read."""

    def __init__(self, root: Path, commit: str, today: date | None = None) -> None:
        """Read the list of the commit's files; `root` is the repository's."""
        self.root = root
        self.commit = commit
        self._today = today
        self._files: dict[str, tuple[str, str]] = {}
        for line in run_git(root, "ls-tree", "-r", "-z", "--full-tree", commit).split(b"\0"):
            if line:
                told, _, path = line.partition(b"\t")
                mode, kind, name = told.decode().split()
                if kind == "blob":
                    self._files[os.fsdecode(path)] = mode, name

    def read(self, path: str) -> bytes | None:
        """The bytes of the file in that commit, or None."""
        place = posixpath.normpath(path)
        for _ in range(LINKS):
            mode, name = self._files.get(place, ("", ""))
            if not name:
                return None
            data = run_git(self.root, "cat-file", "blob", name)
            if mode != "120000":  # a symbolic link, as git writes it
                return data
            place = posixpath.normpath(posixpath.join(posixpath.dirname(place), os.fsdecode(data)))
        return None

    def find(self, pattern: str) -> tuple[str, ...]:
        """The files that match, sorted."""
        return tuple(sorted(path for path in self._files if matches(path, pattern)))

    def today(self) -> date:
        """The machine's date, unless one was given."""
        return self._today or date.today()

    def rooms_in(self, folder: str) -> tuple[str, ...]:
        """The room files that stand directly in a folder, sorted."""
        return tuple(
            sorted(path for path in self._files if path.endswith(".room") and posixpath.dirname(path) == folder)
        )

    def holds(self, path: str) -> bool:
        """True where the commit has a file of that path."""
        return path in self._files


def commit_of(root: Path, revision: str) -> str | None:
    """The full name of the commit that a branch, tag, date or abbreviation means; None where it means none."""
    if not revision or revision.startswith("-") or "\0" in revision:
        return None
    found = _git(root, "rev-parse", "--verify", "--quiet", f"{revision}^{{commit}}")
    return None if found.returncode else found.stdout.decode().strip()


def run_git(root: Path, *arguments: str) -> bytes:
    """What git prints; NoGitError where it fails."""
    done = _git(root, *arguments)
    if done.returncode:
        said = done.stderr.decode(errors="replace").strip().split("\n")[0]
        raise NoGitError(said or f"git {arguments[0]} failed")
    return done.stdout


def _git(root: Path, *arguments: str) -> subprocess.CompletedProcess[bytes]:
    command = ["git", "-C", str(root), *arguments]
    try:
        return subprocess.run(command, capture_output=True, env=os.environ | _ENVIRONMENT, check=False)
    except OSError as trouble:
        raise NoGitError("git is not installed") from trouble
