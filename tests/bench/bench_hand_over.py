"""How long drawings and documents take beyond the estimate that they are made of, for each sample, in the same run.

Run: python tests/bench/bench_hand_over.py [ROUNDS]. The commands take turns in each round. What is written must be the
same bytes in every round.
"""

import os
import statistics
import sys
import tempfile
from hashlib import sha256
from pathlib import Path

from bench_cli import measured

SAMPLES = Path(__file__).parents[2] / "samples"


def main(rounds: int) -> None:
    """Print the times, and by how much each is more than the estimate's."""
    print(f"{'':34} {'least':>7} {'median':>7} {'beyond':>7}   {rounds} rounds, seconds")
    with tempfile.TemporaryDirectory() as place:
        kept = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
        environment = kept | {"PYTHONPYCACHEPREFIX": str(Path(place, "compiled"))}
        for sample in ("kestrel-house", "harbour-hotel", "loft-inches"):
            command = [sys.executable, "-m", "roomspec"]
            job = str(SAMPLES / sample)
            drawn, handed = Path(place, sample, "drawn"), Path(place, sample, "handed")
            commands = {
                "estimate": [*command, "estimate", job],
                "draw": [*command, "draw", job, "-o", str(drawn)],
                "hand-over": [*command, "hand-over", job, "-o", str(handed)],
            }
            first: str | None = None
            times: dict[str, list[float]] = {name: [] for name in commands}
            for _ in range(rounds):
                for name, taken in measured(commands, 1, environment).items():
                    times[name] += taken
                found = digest(drawn, handed)
                assert first in (None, found), "other bytes in another round"
                first = found
            told(sample, times)


def digest(*folders: Path) -> str:
    """One for all that is written in the folders."""
    files = sorted(file for folder in folders for file in folder.rglob("*") if file.is_file())
    return sha256(b"".join(file.name.encode() + file.read_bytes() for file in files)).hexdigest()


def told(sample: str, times: dict[str, list[float]]) -> None:
    """Print a line a command."""
    estimate = statistics.median(times["estimate"])
    for name, taken in times.items():
        median = statistics.median(taken)
        print(f"{sample:22} {name:11} {min(taken):7.2f} {median:7.2f} {median - estimate:7.2f}")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 5)
