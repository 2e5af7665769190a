"""What ends a command before it has a result: one line that says what, where, and how to mend it."""

import click

CLEAN, FINDINGS, TROUBLE, INTERRUPTED, PIPE_CLOSED = 0, 1, 2, 130, 141
"""Exit codes. The last two are what a shell gives for a command ended by a signal."""


def one_line(trouble: click.ClickException) -> str:
    """The message on one line; a mistake in the command itself names the help that mends it."""
    message = " ".join(trouble.format_message().split())
    if isinstance(trouble, click.UsageError) and trouble.ctx is not None:
        return f"{message} See `{trouble.ctx.command_path} --help`."
    return message
