"""A process of its own that estimates the job of a preview, so that cutting holds up nothing and can be dropped.

Files of an editor in at standard input, the estimate out at standard output, both pickled by this very program.
"""

import asyncio
import contextlib
import pickle
import sys
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from roomspec.reports.comparison.side import Side


async def cost_of(root: Path, path: str, given: Mapping[str, bytes]) -> "Side | None":
    """The estimate of the job `path` below `root`; None where it cannot be made. To cancel it ends its process."""
    process = await asyncio.create_subprocess_exec(
        *(sys.executable, "-m", "roomspec.cli.preview_cost", str(root), path),
        stdin=asyncio.subprocess.PIPE,
        stdout=asyncio.subprocess.PIPE,
        stderr=asyncio.subprocess.DEVNULL,
    )
    try:
        said, _ = await process.communicate(pickle.dumps(dict(given)))
    finally:
        if process.returncode is None:
            with contextlib.suppress(ProcessLookupError):
                process.kill()
    side: Side | None = pickle.loads(said) if process.returncode == 0 else None
    return side


def main() -> None:
    """`python -m roomspec.cli.preview_cost ROOT PATH`."""
    from roomspec.analysis.session import Session
    from roomspec.analysis.world import World
    from roomspec.files.disk import DiskWorld
    from roomspec.files.kept_world import LaidOver
    from roomspec.reports.comparison.side import side_of

    root, path = sys.argv[1:]
    given: Mapping[str, bytes] = pickle.load(sys.stdin.buffer)
    disk: World = DiskWorld(Path(root))
    snapshot = Session(LaidOver(disk, given) if given else disk).snapshot(path)
    side = side_of(snapshot, "now") if snapshot is not None and snapshot.job is not None else None
    pickle.dump(side, sys.stdout.buffer)


if __name__ == "__main__":
    main()
