"""How fast `roomspec check .` is on a firm's repository. Run: python tests/bench/bench_repository.py [ROOMS].

Writes about 300 jobs with 10,000 rooms, 150,000 lines (generate.py; ROOMS is how many of them are written out and not
made from patterns), into a folder that goes afterwards, and runs the command as a shell does: cold, warm, with one file
changed, and without the cache; wall time and the most memory of any of its processes. As a reference in the same run: a
plain read of the same files split into words.
"""

import os
import resource
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from generate import lines_of, repository


def main(written: int) -> None:
    """Print all figures."""
    files = repository(written)
    with tempfile.TemporaryDirectory() as name:
        root = Path(name)
        (root / ".git").mkdir()
        for path, text in files.items():
            (root / path).parent.mkdir(parents=True, exist_ok=True)
            (root / path).write_text(text, encoding="utf-8")
        lines, jobs = lines_of(files), sum(path.endswith("/job.room") for path in files)
        print(f"{jobs} jobs, {written} rooms written out, {lines:,} lines, {os.cpu_count()} cores")
        start = time.perf_counter()
        words = sum(len((root / path).read_text(encoding="utf-8").split()) for path in files)
        print(f"  reference: {words:,} words read in {time.perf_counter() - start:.2f} s")
        cold = check(root, "cold")
        print(f"  cold: {lines / cold:,.0f} lines/s")
        warm = check(root, "warm")
        print(f"  warm: {lines / warm:,.0f} lines/s")
        changed = root / "job-0001" / "rooms" / "ground.room"
        text = changed.read_text(encoding="utf-8")
        changed.write_text(text.replace("  wall a ", "  wall a about ", 1), encoding="utf-8")
        check(root, "one file changed")
        check(root, "no cache", "--no-cache")
        check(root, "warm, as text", form="text")


def check(root: Path, label: str, *options: str, form: str = "json") -> float:
    """Seconds that the command takes; its findings go to a file."""
    with (root / ".out").open("wb") as out:
        command = [sys.executable, "-m", "roomspec", "check", ".", "--as", form, *options]
        start = time.perf_counter()
        subprocess.run(command, cwd=root, stdout=out, check=False)
        taken = time.perf_counter() - start
    peak = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024
    size = (root / ".out").stat().st_size / 1e6
    print(f"{label}: {taken:.2f} s, at most {peak:.0f} MB so far, {size:.1f} MB of findings")
    return taken


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 5_000)
