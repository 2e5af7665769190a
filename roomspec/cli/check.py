"""`roomspec check`: every finding of a job, or of all jobs of a repository, each at its place."""

from pathlib import Path

import click

from roomspec.cli.check_forms import FORMS, Output, outputs_of
from roomspec.cli.jobs import expected, input_below
from roomspec.cli.trouble import CLEAN, FINDINGS, TROUBLE
from roomspec.diagnostics.diagnostic import SEVERITIES
from roomspec.files.jobs import jobs_below


@click.command(short_help="Find mistakes: each at its place, with why and the mend.")
@click.argument("path", metavar="PATH")
@click.option(
    "--as",
    "outputs",
    callback=outputs_of,
    multiple=True,
    metavar="FORM[:FILE]",
    help=f"How to print the findings ({', '.join(FORMS)}); with a FILE, write them there (`-`: print"
    " them). May be given several times.",
)
@click.option(
    "--fail-on",
    type=click.Choice(SEVERITIES),
    default="error",
    metavar="LEVEL",
    help="Exit 1 from error (so it is), warning or hint on.",
)
@click.option("--fix", is_flag=True, help="Mend in the files what is safe to mend.")
@click.option("--unsafe-fixes", is_flag=True, help="With --fix or --diff: mend also where a choice is made for you.")
@click.option("--diff", is_flag=True, help="Show what --fix would change.")
@click.option("--baseline", metavar="FILE", help="Leave out the findings set aside in FILE.")
@click.option("--no-baseline", is_flag=True, help="Tell also what the settings' baseline sets aside.")
@click.option("--write-baseline", metavar="FILE", help="Set all findings of now aside in FILE.")
@click.option("--watch", is_flag=True, help="Check again whenever a file changes; Ctrl-C ends.")
@click.option("--no-cache", is_flag=True, help="Neither use nor keep what was found before.")
@click.option("--name", default="standard-input.room", help="What to call the job read from `-`.")
def check(
    path: str,
    outputs: tuple[Output, ...],
    fail_on: str,
    fix: bool,
    unsafe_fixes: bool,
    diff: bool,
    baseline: str | None,
    no_baseline: bool,
    write_baseline: str | None,
    watch: bool,
    no_cache: bool,
    name: str,
) -> int:
    """Check PATH: a job file, or a folder with all jobs below it. `-` reads a job from standard input.

    Exits 0 where nothing is as bad as --fail-on, 1 where something is, 2 where something could not be read.
    """
    from roomspec.cli import check_run

    _refuse(path, fix, unsafe_fixes, diff, watch, write_baseline)

    def wanted() -> check_run.Wanted:
        below, given = input_below(name) if path == "-" else (expected(jobs_below(path)), None)
        return check_run.Wanted(below, given, not no_cache, None if no_baseline or write_baseline else baseline or "")

    def once() -> int:
        outcome = check_run.run(wanted())
        failing = SEVERITIES[: SEVERITIES.index(fail_on) + 1]
        check_run.report(outcome, outputs, failing)
        fails = any(finding.severity in failing for finding in outcome.findings)
        return TROUBLE if outcome.trouble else FINDINGS if fails else CLEAN

    if watch:
        from roomspec.cli import check_watch

        return check_watch.watch(once, lambda: check_watch.signature_of(path))
    if diff:
        from roomspec.cli import check_fix

        return check_fix.show_difference(wanted(), unsafe_fixes)
    if write_baseline:
        return check_run.write_baseline(check_run.run(wanted()), Path(write_baseline))
    if fix:
        from roomspec.cli import check_fix

        unwritten = check_fix.fix_files(wanted(), unsafe_fixes)
        return max(once(), TROUBLE if unwritten else CLEAN)
    return once()


def _refuse(
    path: str,
    fix: bool,
    unsafe_fixes: bool,
    diff: bool,
    watch: bool,
    write_baseline: str | None,
) -> None:
    """Options that cannot go together, each with what can."""
    if write_baseline == "-":
        raise click.UsageError("A baseline is a file; name one, such as --write-baseline baseline.json.")
    if unsafe_fixes and not (fix or diff):
        raise click.UsageError("--unsafe-fixes goes with --fix or --diff.")
    if path == "-" and (fix or watch):
        raise click.UsageError("Standard input can be neither mended in its place nor watched; --diff shows the mends.")
    if watch and (fix or diff or write_baseline):
        raise click.UsageError("--watch only looks; it goes without --fix, --diff and --write-baseline.")
    if write_baseline and (fix or diff):
        raise click.UsageError("--write-baseline sets aside what there is; mend first, with --fix alone.")
