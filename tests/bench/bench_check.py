"""How fast checking and estimating are in the library. Run: python tests/bench/bench_check.py [ROOMS].

Figures: cold lines a second over a firm's made-up repository (generate.py) and over one in which nothing repeats
(generate_distinct.py), each in a process of its own, beside the standard library's shlex splitting the same text; one
edited line of a job of 1,000 lines, and of one of 10,000 lines in 500 rooms, checked again; the Harbour Hotel
estimated, with the process's peak memory. Seconds are processor time; on a machine that does other things too they
still vary by a third, and the ratio to shlex by a tenth.
"""

import datetime
import gc
import resource
import shlex
import statistics
import sys
import time
from multiprocessing import get_context
from pathlib import Path

import generate
import generate_distinct

from roomspec.analysis.session import Session
from roomspec.analysis.world import MemoryWorld
from roomspec.files.disk import DiskWorld, root_of

TODAY = datetime.date(2026, 11, 25)
ROOT = Path(__file__).parents[2]


def main(rooms: int) -> None:
    """Print all figures. The collector is off while checking, as it is in the command."""
    for title, files in (
        ("a firm's repository", generate.repository(rooms)),
        ("nothing repeats", generate_distinct.repository(max(1, rooms // 34), rooms)),
    ):
        with get_context("spawn").Pool(1) as pool:
            print(pool.apply(cold, (title, files)), flush=True)
    gc.disable()
    for count in (47, 475):
        edited("nearly clean", generate.one_job(count), "job/job.room", "job/rooms/ground.room")
    for count in (59, 585):
        files = generate_distinct.repository(1, count)
        edited("a finding in three lines", files, "job-0001/job.room", "job-0001/rooms.room")
    gc.enable()
    hotel()


def cold(title: str, files: dict[str, str]) -> str:
    """The line to print of a repository that this process has not seen."""
    gc.disable()
    start = time.process_time()
    words = sum(len(shlex.split(text, comments=True)) for text in files.values())
    beside = time.process_time() - start
    world = MemoryWorld(files, TODAY)
    session = Session(world)
    start = time.process_time()
    snapshots = [session.snapshot(job) for job in world.find("*/job.room")]
    findings = sum(len(snapshot.findings) for snapshot in snapshots if snapshot is not None)
    taken = time.process_time() - start
    count = generate.lines_of(files)
    return (
        f"cold check, {title}: {count} lines, {findings} findings in {taken:.2f} s: {count / taken:,.0f} lines/s\n"
        f"  shlex splits the text into {words} words in {beside:.2f} s; the check takes {taken / beside:.2f} times that"
    )


def edited(title: str, files: dict[str, str], job: str, path: str) -> None:
    """One number of one wall changes in the middle of a file."""
    text = files[path]
    spot = text.index("  wall a ", len(text) // 2) + len("  wall a ")
    end = text.index("\n", spot)
    session = Session(MemoryWorld(files, TODAY))
    first = session.snapshot(job)
    assert first is not None
    assert first.findings
    times = []
    for step in range(50):
        changed = f"{text[:spot]}{2000 + step}{text[end:]}"
        session.world = MemoryWorld(files | {path: changed}, TODAY)
        start = time.process_time()
        snapshot = session.snapshot(job)
        assert snapshot is not None
        assert snapshot.findings is not None
        times.append(time.process_time() - start)
    print(
        f"one edited line of {text.count(chr(10))}, {title}: median {statistics.median(times) * 1000:.2f} ms,"
        f" least {min(times) * 1000:.2f} ms, most {max(times) * 1000:.2f} ms"
    )


def hotel() -> None:
    """The largest sample, estimated."""
    folder = ROOT / "samples" / "harbour-hotel"
    world = DiskWorld(root_of(folder))
    start = time.perf_counter()
    snapshot = Session(world).snapshot("samples/harbour-hotel/harbour-hotel.room")
    assert snapshot is not None
    estimate = snapshot.estimate().priced
    taken = time.perf_counter() - start
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(f"harbour-hotel estimated in {taken:.2f} s; peak memory of this process {peak:.0f} MB")
    assert estimate is not None


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 1_500)
