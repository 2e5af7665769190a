"""From a save to the new drawing on a live page: `python tests/bench/bench_preview.py [JOB FILE OLD NEW]`.

The preview runs as it does for a reader; the page is asked for as a browser's script does. Beside it stands the time of
`roomspec estimate` on the same job, as a whole process.
"""

import json
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
import urllib.request
from pathlib import Path

SAMPLES = Path(__file__).parents[2] / "samples"
ROUNDS = 15
JOBS = (
    ("kestrel-house", "rooms/1-first.room", "wall a 2004", "wall a 25{}4"),
    ("harbour-hotel", "rooms/patterns.room", "wall a 2150", "wall a 21{}1"),
)


def measure(job: str, file: str, old: str, new: str) -> None:
    """Save `ROUNDS` times, and print the median and the slowest."""
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place, job)
        shutil.copytree(SAMPLES / job, folder)
        begun = time.perf_counter()
        subprocess.run([sys.executable, "-m", "roomspec", "estimate", str(folder)], capture_output=True, check=False)
        estimate = time.perf_counter() - begun
        text = (folder / file).read_text(encoding="utf-8")
        assert old in text, f"{file} of {job} does not hold {old}"
        command = [sys.executable, "-m", "roomspec", "preview", str(folder)]
        with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as process:
            assert process.stdout is not None
            address = process.stdout.readline().strip()
            with urllib.request.urlopen(f"{address}events") as events:
                took = []
                version = _rooms(events, address, None)[0]
                time.sleep(3)
                for number in range(ROUNDS):
                    begun = time.perf_counter()
                    (folder / file).write_text(text.replace(old, new.format(number % 10)), encoding="utf-8")
                    version, _ = _rooms(events, address, version)
                    took.append((time.perf_counter() - begun) * 1000)
                    time.sleep(0.2)
            process.terminate()
    print(
        f"{job}: save to page {statistics.median(took):.0f} ms, slowest of {ROUNDS} {max(took):.0f} ms;"
        f" its estimate as a process {estimate * 1000:.0f} ms"
    )


def _rooms(events: object, address: str, before: str | None) -> tuple[str, bytes]:
    """Wait for the next event after which the drawings are others than before; what they are."""
    while True:
        line: bytes = events.readline()  # type: ignore[attr-defined]
        if line.startswith(b"event: changed"):
            with urllib.request.urlopen(f"{address}pieces") as answer:
                body = answer.read()
            rooms = json.dumps(json.loads(body)["rooms"])
            if rooms != before:
                return rooms, body


if __name__ == "__main__":
    for one in [sys.argv[1:5]] if len(sys.argv) > 4 else JOBS:
        measure(*one)
