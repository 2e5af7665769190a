"""Messages to the client, as pygls writes them; a client that reads no more ends the server."""

from collections.abc import Callable
from typing import BinaryIO


class Outbox:
    """Writes to a stream."""

    def __init__(self, stream: BinaryIO, gone: Callable[[], None]) -> None:
        """`gone` is called when the other end of `stream` is closed."""
        self._stream, self._gone = stream, gone

    def write(self, data: bytes) -> None:
        """Send at once."""
        try:
            self._stream.write(data)
            self._stream.flush()
        except (OSError, ValueError):
            self._gone()

    def close(self) -> None:
        """Close the stream."""
        self._stream.close()
