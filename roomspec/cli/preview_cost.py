"""A process of its own that estimates the job of a preview, so that cutting holds up nothing and can be dropped.

Files of an editor in at standard input, the estimate out at standard output, both pickled by this very program.
"""

import pickle
import sys
from pathlib import Path
from typing import Any


def main() -> None:
    """`python -m roomspec.cli.preview_cost ROOT PATH`."""
    from roomspec.analysis.session import Session
    from roomspec.analysis.world import World
    from roomspec.files.disk import DiskWorld
    from roomspec.files.kept_world import LaidOver
    from roomspec.reports.comparison.side import side_of

    root, path = sys.argv[1:]
    given: Any = pickle.load(sys.stdin.buffer)
    disk: World = DiskWorld(Path(root))
    snapshot = Session(LaidOver(disk, given) if given else disk).snapshot(path)
    side = side_of(snapshot, "now") if snapshot is not None and snapshot.job is not None else None
    pickle.dump(side, sys.stdout.buffer)


if __name__ == "__main__":
    main()
