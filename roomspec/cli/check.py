"""`roomspec check`: every finding of a job, at its place."""

from collections.abc import Callable

import click

from roomspec.cli import screen
from roomspec.cli.jobs import expected, jobs_of_input
from roomspec.cli.trouble import CLEAN, FINDINGS
from roomspec.diagnostics.diagnostic import SEVERITIES
from roomspec.files.jobs import Jobs, jobs_at, no_job_in


@click.command(short_help="Find mistakes in a job: each at its place, with why and the mend.")
@click.argument("path", metavar="PATH")
@click.option("--as", "form", type=click.Choice(["text", "json"]), default="text", help="How to print the findings.")
@click.option(
    "--fail-on",
    type=click.Choice(SEVERITIES),
    default="error",
    help="Exit 1 where a finding is at least this bad (error).",
)
@click.option("--name", default="standard-input.room", help="What to call the job read from `-`.")
def check(path: str, form: str, fail_on: str, name: str) -> int:
    """Check the job PATH: a job file, or a folder that holds one. `-` reads the job from standard input.

    Exits 0 where nothing is as bad as --fail-on, 1 where something is, 2 where the job could not be read.
    """
    from roomspec.analysis.found import Found, in_order
    from roomspec.analysis.session import Session

    jobs = jobs_of_input(name) if path == "-" else expected(jobs_at(path))
    session = Session(jobs.world)
    found: list[Found] = []
    for job in jobs.paths:
        snapshot = session.snapshot(job)
        if snapshot is None or (snapshot.job is None and not snapshot.findings):
            raise click.ClickException(no_job_in(job).reason)
        found.extend(snapshot.findings)
    findings = in_order(found)
    if form == "json":
        from roomspec.reports.findings_json import findings_json

        screen.show(findings_json(findings))
    else:
        from roomspec.reports.findings_text import findings_text

        screen.show(findings_text(findings, lines_of(jobs), screen.paint_for()))
    worst = min((SEVERITIES.index(finding.severity) for finding in findings), default=len(SEVERITIES))
    return FINDINGS if worst <= SEVERITIES.index(fail_on) else CLEAN


def lines_of(jobs: Jobs) -> Callable[[str, int], str]:
    """A function that gives a line of a file of the repository, each file read once."""
    from roomspec.analysis.gather import decode

    kept: dict[str, list[str]] = {}

    def line_of(path: str, line: int) -> str:
        if path not in kept:
            kept[path] = decode(jobs.world.read(path) or b"")[0].split("\n")
        lines = kept[path]
        return lines[line - 1].rstrip("\r") if line <= len(lines) else ""

    return line_of
