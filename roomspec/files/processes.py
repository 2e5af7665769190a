"""Jobs checked in several processes; imported only where that pays, since multiprocessing is slow to import."""

import gc
import signal
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import BrokenExecutor, Future, ProcessPoolExecutor
from functools import lru_cache
from multiprocessing import get_context
from pathlib import Path

import msgspec

from roomspec.analysis.checked import Checked
from roomspec.files.cache import Cache, cache_of
from roomspec.files.check_one import check_one
from roomspec.files.disk import DiskWorld
from roomspec.files.kept_world import KeptWorld

SHARE = 60_000
"""Bytes of text that a process is given at a time."""


def check_shared_out(
    root: Path, sized: Iterable[tuple[str, int]], keep: bool, processes: int, here: Callable[[str], Checked]
) -> Iterator[Checked]:
    """What checking the jobs (with the sizes of their texts) gives, in any order; `keep` in the cache.

    The other processes start while the sizes of most jobs are still looked up.
    This process works too, by `here`, from the other end. Where a process dies or cannot be started, less comes back.
    `spawn`, since a fork of a process with threads may never end.
    """
    pool = ProcessPoolExecutor(processes - 1, get_context("spawn"), _begin)
    try:
        waiting = [(pool.submit(_check_share, str(root), share, keep), share) for share in _shares(sized)]
        while waiting:
            future, share = waiting.pop()
            yield from map(here, share) if future.cancel() else _result(future)
    except (OSError, BrokenExecutor):
        return
    finally:
        pool.shutdown(wait=False, cancel_futures=True)


def _shares(sized: Iterable[tuple[str, int]]) -> Iterator[list[str]]:
    share: list[str] = []
    total = 0
    for job, size in sized:
        share.append(job)
        total += size
        if total >= SHARE:
            yield share
            share, total = [], 0
    if share:
        yield share


def _result(future: "Future[bytes]") -> list[Checked]:
    return msgspec.msgpack.decode(future.result(), type=list[Checked])


def _begin() -> None:
    """Ctrl-C is for the process that started this one; what a check makes is kept, so nothing looks for garbage."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    gc.disable()


def _check_share(root: str, jobs: list[str], keep: bool) -> bytes:
    world, cache = _desk(root)
    return msgspec.msgpack.encode([check_one(world, job, cache if keep else None) for job in jobs])


@lru_cache(1)
def _desk(root: str) -> tuple[KeptWorld, Cache | None]:
    """What a process keeps between its shares: files read once, such as catalogues that jobs have in common."""
    return KeptWorld(DiskWorld(Path(root))), cache_of(Path(root))
