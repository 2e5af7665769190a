"""How fast checking and estimating are in the library. Run: python tests/bench/bench_check.py [LINES].

Four figures: cold lines a second over a made-up repository (generate.py) in one process; the same per second of a plain
read of the same bytes into lines, as a reference; one edited line of a 1,000-line job checked again; the Harbour Hotel
estimated, with the process's peak memory.
"""

import datetime
import resource
import statistics
import sys
import time
from pathlib import Path

from generate import lines_of, repository

from roomspec.analysis.session import Session
from roomspec.analysis.world import MemoryWorld
from roomspec.files.disk import DiskWorld, root_of

TODAY = datetime.date(2026, 11, 25)
ROOT = Path(__file__).parents[2]


def main(lines: int) -> None:
    """Print all figures."""
    cold(lines)
    edited()
    hotel()


def cold(lines: int) -> None:
    """A repository that this process has not seen."""
    rooms = lines // 17
    files = repository(max(1, rooms // 34), rooms)
    start = time.perf_counter()
    letters = sum(len(line.split()) for text in files.values() for line in text.split("\n"))
    plain = time.perf_counter() - start
    world = MemoryWorld(files, TODAY)
    session = Session(world)
    start = time.perf_counter()
    findings = 0
    for job in world.find("*/job.room"):
        snapshot = session.snapshot(job)
        findings += len(snapshot.findings) if snapshot else 0
    taken = time.perf_counter() - start
    count = lines_of(files)
    print(
        f"cold check: {count} lines, {rooms} rooms, {findings} findings in {taken:.2f} s: {count / taken:,.0f} lines/s"
    )
    print(f"  the same text split into {letters} words: {plain:.3f} s; the check takes {taken / plain:.0f} times that")


def edited() -> None:
    """One number of one wall changes in a job of 1,000 lines."""
    files = repository(1, 59)
    text = files["job-0001/rooms.room"]
    spot = text.index("  wall a ", len(text) // 2) + len("  wall a ")
    end = text.index("\n", spot)
    session = Session(MemoryWorld(files, TODAY))
    session.snapshot("job-0001/job.room")
    times = []
    for step in range(50):
        changed = f"{text[:spot]}{2000 + step}{text[end:]}"
        world = MemoryWorld(files | {"job-0001/rooms.room": changed}, TODAY)
        start = time.perf_counter()
        session.world = world
        snapshot = session.snapshot("job-0001/job.room")
        assert snapshot is not None
        assert snapshot.findings is not None
        times.append(time.perf_counter() - start)
    print(
        f"one edited line of {lines_of(files)}: median {statistics.median(times) * 1000:.2f} ms,"
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
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 50_000)
