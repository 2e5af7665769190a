"""Checking a repository's jobs: what the cache holds is taken from it, the rest is made, in processes where it pays."""

import os
from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import chain
from pathlib import Path

from roomspec.analysis.checked import Checked
from roomspec.files.cache import Cache
from roomspec.files.check_one import check_one
from roomspec.files.kept_world import KeptWorld

Tell = Callable[[int, int], None]
"""Is told how many jobs of how many are done."""

PAYS = 400_000
"""Bytes of text to check from which a second process is worth its start (0.3 s, measured on two cores)."""


def check_jobs(
    world: KeptWorld, root: Path, jobs: Sequence[str], cache: Cache | None, tell: Tell, processes: int = 0
) -> list[Checked]:
    """What checking each of the jobs below `root` gives, in their order. `processes` 0: as many as there are cores."""
    done = {job: checked for job in jobs if cache and (checked := cache.get(world, job)) is not None}
    tell(len(done), len(jobs))
    missing = [job for job in jobs if job not in done]
    processes = processes or os.cpu_count() or 1
    sized = ((job, _size(world, job)) for job in missing if processes > 1 and len(missing) > 1)
    first = list(_so_many(sized, PAYS))
    if first and sum(size for _, size in first) >= PAYS:
        from roomspec.files.processes import check_shared_out

        def here(job: str) -> Checked:
            return check_one(world, job, cache)

        for checked in check_shared_out(root, chain(first, sized), cache is not None, processes, here):
            done[checked.job] = checked
            tell(len(done), len(jobs))
    for job in missing:
        if job not in done:
            done[job] = check_one(world, job, cache)
            tell(len(done), len(jobs))
    return [done[job] for job in jobs]


def _so_many(sized: Iterable[tuple[str, int]], enough: int) -> Iterator[tuple[str, int]]:
    """The first of the jobs, until they have enough text together."""
    total = 0
    for job, size in sized:
        yield job, size
        total += size
        if total >= enough:
            return


def _size(world: KeptWorld, job: str) -> int:
    """About how much text the job has: that of the files in its folder and one below, which is where rooms stand."""
    folder = job.rpartition("/")[0]
    paths = (*world.find(f"{folder}/*.room".lstrip("/")), *world.find(f"{folder}/*/*.room".lstrip("/")))
    return sum(len(world.read(path) or b"") for path in paths)
