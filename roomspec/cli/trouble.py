"""What ends a command before it has a result: one line that says what, where, and how to mend it."""

from pathlib import Path

import click

CLEAN, FINDINGS, TROUBLE, INTERRUPTED, PIPE_CLOSED = 0, 1, 2, 130, 141
"""Exit codes. The last two are what a shell gives for a command ended by a signal."""


class ReaderGoneError(Exception):
    """Whoever read the output has closed it."""


def one_line(trouble: click.ClickException) -> str:
    """The message on one line; a mistake in the command itself names the help that mends it."""
    message = " ".join(trouble.format_message().split())
    if isinstance(trouble, click.UsageError) and trouble.ctx is not None:
        return f"{message} See `{trouble.ctx.command_path} --help`."
    return message


def own_fault(fault: Exception) -> str:
    """One line on a mistake of the program itself: what and where in it, for whoever mends it."""
    frame = fault.__traceback__
    while frame is not None and frame.tb_next is not None:
        frame = frame.tb_next
    where = f" at {Path(frame.tb_frame.f_code.co_filename).name}, line {frame.tb_lineno}" if frame is not None else ""
    said = " ".join(str(fault).split())[:200]
    return f"a fault of roomspec itself, not of your files: {type(fault).__name__}{where}: {said}. Please report it."
