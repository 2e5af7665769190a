"""`roomspec estimate`: the order with its proof, the price, and what they rest on."""

import shutil
from pathlib import Path
from typing import TYPE_CHECKING

import click

from roomspec.cli import screen
from roomspec.cli.one_job import snapshot_at
from roomspec.cli.trouble import CLEAN, FINDINGS
from roomspec.files.jobs import plain_reason

if TYPE_CHECKING:
    from roomspec.reports.estimate_json import EstimateOut


@click.command(short_help="Set out, cut, order and price a job; the panels to order are proven.")
@click.argument("path", metavar="PATH")
@click.option("--as", "form", type=click.Choice(["text", "json"]), default="text", help="How to print it.")
@click.option("-o", "--output", metavar="FILE", help="Write it to FILE instead of printing it.")
def estimate(path: str, form: str, output: str | None) -> int:
    """Estimate the job PATH: a job file, or a folder that holds one.

    Whatever could be understood is estimated. Exits 1 where the job has errors; the top of the estimate says how many,
    and what they leave out.
    """
    from roomspec.reports.estimate_out import estimate_of

    out = estimate_of(snapshot_at(path))
    if output is None:
        screen.show(_shown(out, form))
    else:
        _write(Path(output), _plain(out, form))
    return FINDINGS if out.findings.error else CLEAN


def _plain(out: "EstimateOut", form: str) -> str:
    if form == "json":
        from roomspec.reports.estimate_json import estimate_json

        return estimate_json(out)
    from roomspec.reports.estimate_text import estimate_text

    return estimate_text(out)


def _shown(out: "EstimateOut", form: str) -> str:
    if form == "json" or not screen.is_terminal():
        return _plain(out, form)
    from roomspec.reports.estimate_text import estimate_screen

    return estimate_screen(out, shutil.get_terminal_size().columns, screen.wants_colour())


def _write(file: Path, text: str) -> None:
    from roomspec.files.disk import write_whole

    try:
        write_whole(file, text.encode())
    except (OSError, ValueError) as trouble:
        reason = plain_reason(trouble) if isinstance(trouble, OSError) else "it is not a path"
        raise click.ClickException(f"{file}: cannot be written: {reason}.") from trouble
