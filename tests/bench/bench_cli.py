"""How long a command takes from nothing, beside the imports that it cannot do without, in the same run.

Run: python tests/bench/bench_cli.py [ROUNDS]. The commands take turns in each round; least and median are printed.
"""

import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOM = """\
job one "One room"
  date 2026-11-25
  currency EUR
room 1 "Store"
  height 2400
  on plasterboard
  surface sound
  finish board by glued vertical
  wall a 3000
panel board "Board"
  length 2600
  cover 250
  thick 10
  weighs 5.5 kg/m2
  price 31.50 each
adhesive grab
  tube 290 ml
  price 6.20 each
method glued
  glue grab bead 8 every 300
"""


def main(rounds: int) -> None:
    """Print the times and their ratios to the reference."""
    with tempfile.TemporaryDirectory() as folder:
        job = Path(folder, "job.room")
        job.write_text(ROOM, encoding="utf-8")
        roomspec = [sys.executable, "-m", "roomspec"]
        commands = {
            "python -c 'import lark, click, msgspec'": [sys.executable, "-c", "import lark, click, msgspec"],
            "roomspec --version": [*roomspec, "--version"],
            "roomspec check (one room)": [*roomspec, "check", str(job)],
            "roomspec estimate (one room)": [*roomspec, "estimate", str(job)],
        }
        # Compiled modules are kept, as an installed package keeps them, but not beside the sources.
        kept = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
        times = measured(commands, rounds, kept | {"PYTHONPYCACHEPREFIX": str(Path(folder, "compiled"))})
    reference = next(iter(times.values()))
    print(f"{'':42} {'least':>8} {'median':>8} {'ratio':>6}   {rounds} rounds, milliseconds; ratio of medians")
    for name, taken in times.items():
        ratio = statistics.median(taken) / statistics.median(reference)
        print(f"{name:42} {min(taken) * 1000:8.1f} {statistics.median(taken) * 1000:8.1f} {ratio:6.2f}")


def measured(commands: dict[str, list[str]], rounds: int, environment: dict[str, str]) -> dict[str, list[float]]:
    """Seconds of each command in each round; a first round compiles and warms the disk and is not counted."""
    times: dict[str, list[float]] = {name: [] for name in commands}
    for number in range(rounds + 1):
        for name, command in commands.items():
            start = time.perf_counter()
            subprocess.run(command, check=True, capture_output=True, env=environment)
            if number:
                times[name].append(time.perf_counter() - start)
    return times


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 20)
