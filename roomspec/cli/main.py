"""The command `roomspec`: its list of commands, and the one place where trouble becomes an exit code."""

import importlib
import io
import os
import sys

import click

from roomspec import __version__
from roomspec.cli.trouble import INTERRUPTED, PIPE_CLOSED, TROUBLE, ReaderGoneError, one_line, own_fault

COMMANDS = {
    "check": "roomspec.cli.check:check",
    "estimate": "roomspec.cli.estimate:estimate",
    "hand-over": "roomspec.cli.hand_over:hand_over",
    "compare": "roomspec.cli.compare:compare",
    "draw": "roomspec.cli.draw:draw",
    "format": "roomspec.cli.format:format_files",
    "explain": "roomspec.cli.explain:explain",
    "new": "roomspec.cli.new:new",
    "preview": "roomspec.cli.preview:preview",
    "serve": "roomspec.cli.serve:serve",
}
"""In the order of the work. Each is imported when it is asked for."""


class Commands(click.Group):
    """A group that imports a command only when it is asked for, so that `--version` costs nothing."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002 - click calls it so
        """The commands in the order of the work."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: ARG002
        """The command of that name, imported now; None where there is none."""
        if cmd_name not in COMMANDS:
            return None
        module, attribute = COMMANDS[cmd_name].split(":")
        command = getattr(importlib.import_module(module), attribute)
        assert isinstance(command, click.Command)
        return command

    def invoke(self, ctx: click.Context) -> object:
        """Run the command; click would end the process itself where the reader is gone."""
        try:
            return super().invoke(ctx)
        except BrokenPipeError as gone:
            raise ReaderGoneError from gone


def show_version(ctx: click.Context, _parameter: click.Parameter, wanted: bool) -> None:
    """Print the version and end."""
    if wanted:
        click.echo(f"roomspec {__version__}")
        ctx.exit()


@click.group(
    cls=Commands,
    invoke_without_command=True,
    context_settings={"help_option_names": ["-h", "--help"]},
    epilog="PATH is a job file, or a folder that holds one.",
)
@click.option(
    "--version",
    is_flag=True,
    is_eager=True,
    expose_value=False,
    callback=show_version,
    help="Print the version and end.",
)
@click.pass_context
def roomspec(ctx: click.Context) -> None:
    """Check, set out, cut, order and price wall linings from plain-text room files."""
    if ctx.invoked_subcommand is None:
        click.echo(ctx.get_help())


def main(arguments: list[str] | None = None) -> int:
    """Run a command; gives 0 clean, 1 findings, 2 could not run (130 stopped by hand, 141 reader gone)."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(encoding="utf-8", errors="backslashreplace", newline="\n")
    try:
        code = roomspec.main(arguments, prog_name="roomspec", standalone_mode=False)
        sys.stdout.flush()
    except click.ClickException as trouble:
        click.echo(f"roomspec: {one_line(trouble)}", err=True)
        return TROUBLE
    except (click.Abort, KeyboardInterrupt):
        click.echo("roomspec: stopped.", err=True)
        return INTERRUPTED
    except (BrokenPipeError, ReaderGoneError):
        # What is still buffered must not be written again while Python shuts down.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return PIPE_CLOSED
    except Exception as fault:
        click.echo(f"roomspec: {own_fault(fault)}", err=True)
        return TROUBLE
    return code if isinstance(code, int) else 0
