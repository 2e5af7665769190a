"""`roomspec compare`: what changed between two revisions of a job, and what it costs."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from roomspec.cli import screen
from roomspec.cli.jobs import expected
from roomspec.cli.one_job import snapshot_in
from roomspec.cli.trouble import CLEAN, FINDINGS
from roomspec.files.jobs import one_job_at, plain_reason
from roomspec.files.revision import NoGitError
from roomspec.files.revision_jobs import job_at_revision, names_revision

if TYPE_CHECKING:
    from roomspec.reports.comparison.comparison_json import Comparison
    from roomspec.reports.comparison.side import Side


@click.command(short_help="Show what changed between two revisions of a job: the variation claim.")
@click.argument("old", metavar="OLD")
@click.argument("new", metavar="NEW")
@click.option("--as", "form", type=click.Choice(["text", "json", "html"]), default="text", help="How to print it.")
@click.option("-o", "--output", metavar="FILE", help="Write it to FILE instead of printing it.")
def compare(old: str, new: str, form: str, output: str | None) -> int:
    """Compare the jobs OLD and NEW: rooms, quantities, order and price.

    Each is a job file, a folder that holds one, or REV:PATH, a path in a git revision of this repository:
    `roomspec compare HEAD~1:samples/kestrel-house samples/kestrel-house`. Exits 1 where either has errors.
    """
    from roomspec.reports.comparison.compare import compare as compared

    try:
        before, after = _side(old), _side(new)
    except NoGitError as trouble:
        raise click.ClickException(f"git: {trouble}.") from trouble
    out = compared(before, after)
    text = _text(out, after, form)
    if output is None:
        screen.show(text)
    else:
        _write(Path(output), text)
    return FINDINGS if before.out.findings.error or after.out.findings.error else CLEAN


def _side(path: str) -> "Side":
    from roomspec.reports.comparison.side import side_of

    if names_revision(path):
        found = expected(job_at_revision(path, Path()))
        return side_of(snapshot_in(found.jobs, path), found.called)
    jobs = expected(one_job_at(path))
    return side_of(snapshot_in(jobs, path), jobs.paths[0])


def _text(out: "Comparison", new: "Side", form: str) -> str:
    if form == "json":
        from roomspec.reports.comparison.comparison_json import comparison_json

        return comparison_json(out)
    from roomspec.reports.comparison.variation import variation
    from roomspec.reports.paper.numerals import numerals_of
    from roomspec.reports.paper.page import sheet_page
    from roomspec.reports.paper.sheet_text import sheet_text

    sheet = variation(out, numerals_of(out.units, out.currency, new.job.terms.locale))
    return sheet_page(sheet) if form == "html" else sheet_text(sheet)


def _write(file: Path, text: str) -> None:
    from roomspec.files.disk import write_whole

    try:
        write_whole(file, text.encode())
    except (OSError, ValueError) as trouble:
        reason = plain_reason(trouble) if isinstance(trouble, OSError) else "it is not a path"
        raise click.ClickException(f"{file}: cannot be written: {reason}.") from trouble
