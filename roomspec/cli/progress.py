"""How far a long check is, told on a terminal only, and gone when it is done."""

import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager

AFTER = 0.7
"""Seconds after which somebody wants to know."""
EVERY = 0.1


@contextmanager
def progress() -> Iterator[Callable[[int, int], None]]:
    """A function to be told how many jobs of how many are done."""
    stream, start = sys.stderr, time.monotonic()
    wanted, shown = stream.isatty(), 0.0

    def tell(done: int, total: int) -> None:
        nonlocal shown
        now = time.monotonic()
        if wanted and total > 1 and now - start > AFTER and now - shown > EVERY:
            shown = now
            stream.write(f"\rchecked {done} of {total} jobs ")
            stream.flush()

    try:
        yield tell
    finally:
        if shown:
            stream.write("\r" + " " * 40 + "\r")
            stream.flush()
