"""Room files that no job uses."""

from collections.abc import Iterable
from typing import TYPE_CHECKING

from roomspec.analysis.found import Found, Place
from roomspec.analysis.world import World

if TYPE_CHECKING:
    from roomspec.analysis.session import Snapshot


def files_in_no_job(world: World, snapshots: Iterable["Snapshot"]) -> tuple[Found, ...]:
    """A hint at each `.room` file of the World that none of the snapshots read; give those of all its jobs."""
    used = {tree.path for snapshot in snapshots for tree in snapshot.files}
    return tuple(file_in_no_job(path) for path in world.find("**/*.room") if path not in used)


def file_in_no_job(path: str) -> Found:
    """The hint at one such file."""
    return Found(
        "file-in-no-job",
        "hint",
        "no job uses this file: what stands in it is in no estimate",
        Place(path, 1, 1, 1, 1),
        "name it in a `use` line of its job, or remove it",
    )
