"""One run of `roomspec check`: from the jobs to what is told, and its reports."""

from collections.abc import Callable, Sequence
from pathlib import Path

import click
from msgspec import Struct

from roomspec import __version__
from roomspec.analysis.baseline import NoBaseline, SetAside, baseline_of, baseline_text, read_baseline, set_aside
from roomspec.analysis.checked import Checked, together
from roomspec.analysis.fingerprint import fingerprints
from roomspec.analysis.found import Found
from roomspec.analysis.gather import decode
from roomspec.analysis.settings import FILE, as_chosen, settings_of
from roomspec.analysis.stray import file_in_no_job
from roomspec.analysis.world import World
from roomspec.cli import screen
from roomspec.cli.check_forms import Output
from roomspec.cli.jobs import from_here
from roomspec.cli.progress import progress
from roomspec.cli.trouble import CLEAN, TROUBLE
from roomspec.cli.uncollected import uncollected
from roomspec.files.cache import cache_of
from roomspec.files.check_jobs import check_jobs
from roomspec.files.disk import DiskWorld, write_whole
from roomspec.files.jobs import Below, no_job_in, plain_reason
from roomspec.files.kept_world import KeptWorld, LaidOver
from roomspec.reports.wording import number_of


class Wanted(Struct, frozen=True):
    """What is to be checked. `given` are files in place of the disk's; `baseline` a file, "" for the settings' own,
    None for none."""

    below: Below
    given: dict[str, bytes] | None
    cache: bool
    baseline: str | None


class Outcome(Struct, frozen=True):
    """What a run gave: what is told with its fingerprints, from which root, the files read, what could not be read."""

    findings: tuple[Found, ...]
    fingerprints: tuple[str, ...]
    root: Path
    files: tuple[str, ...]
    line_of: Callable[[str, int], str]
    aside: str
    trouble: tuple[str, ...]


def world_of(wanted: Wanted) -> KeptWorld:
    """The files as they are now."""
    disk: World = DiskWorld(wanted.below.root)
    return KeptWorld(LaidOver(disk, wanted.given) if wanted.given else disk)


def jobs_of(wanted: Wanted, world: KeptWorld) -> list[Checked]:
    """Every job checked; a job that none is ends the command where it was named itself."""
    below = wanted.below
    cache = cache_of(below.root) if wanted.cache and not wanted.given else None
    with progress() as tell, uncollected():
        checked = check_jobs(world, below.root, below.jobs, cache, tell)
    if len(checked) == 1 and checked[0].files and not checked[0].holds_job and not checked[0].findings:
        raise click.ClickException(no_job_in(below.jobs[0]).reason)
    return checked


def run(wanted: Wanted) -> Outcome:
    """Check, leave out what is set aside, and say what could not be read."""
    world = world_of(wanted)
    checked = jobs_of(wanted, world)
    files = {path for job in checked for path in job.files}
    settings = settings_of(world)
    strays = [file_in_no_job(path) for path in wanted.below.files if path not in files] if wanted.below.whole else []
    findings = together(checked, [*as_chosen(strays, settings), *settings.problems])
    line_of = lines_of(world)
    gone = [f"{job.job}: cannot be read any more; was it removed?" for job in checked if not job.files]
    told = _without_baseline(findings, line_of, wanted, world, files)
    return Outcome(
        told.findings,
        told.fingerprints,
        wanted.below.root,
        tuple(sorted(files)),
        line_of,
        _said_of(told),
        (*wanted.below.unread, *gone),
    )


def report(outcome: Outcome, outputs: Sequence[Output], failing: Sequence[str]) -> None:
    """Print and write the findings in the forms asked for, and say what was set aside or could not be read.

    `failing` are the severities that fail the check.
    """
    for output in outputs:
        if output.file is None:
            screen.show(_report(outcome, output.form, failing, screen.paint_for()))
        else:
            _write(Path(output.file), _report(outcome, output.form, failing))
    for said in (*outcome.trouble, *filter(None, [outcome.aside])):
        click.echo(f"roomspec: {said}", err=True)


def write_baseline(outcome: Outcome, file: Path) -> int:
    """Set the findings aside in a file; problems of reading are not, and are counted."""
    baseline = baseline_of(outcome.findings, outcome.fingerprints)
    _write(file, baseline_text(baseline))
    count = len(baseline.findings)
    click.echo(f"Set {number_of(count, 'finding')} aside in {file}.")
    if left := len(outcome.findings) - count:
        told = f"{number_of(left, 'problem')} of reading {'is' if left == 1 else 'are'} told all the same"
        click.echo(f"roomspec: {told}: what cannot be read is missing from the figures.", err=True)
    for said in outcome.trouble:
        click.echo(f"roomspec: {said}", err=True)
    return TROUBLE if outcome.trouble else CLEAN


def lines_of(world: World) -> Callable[[str, int], str]:
    """A function that gives a line of a file, each file taken apart once."""
    kept: dict[str, list[str]] = {}

    def line_of(path: str, line: int) -> str:
        if path not in kept:
            kept[path] = decode(world.read(path) or b"")[0].split("\n")
        lines = kept[path]
        return lines[line - 1].rstrip("\r") if line <= len(lines) else ""

    return line_of


def _without_baseline(
    findings: tuple[Found, ...], line_of: Callable[[str, int], str], wanted: Wanted, world: World, files: set[str]
) -> SetAside:
    prints = fingerprints(findings, line_of)
    named = wanted.baseline
    if named is None or not (named or settings_of(world).baseline):
        return SetAside(findings, prints)
    if named:
        try:
            data: bytes | None = Path(named).read_bytes()
        except (OSError, ValueError) as trouble:
            reason = plain_reason(trouble) if isinstance(trouble, OSError) else "it is not a path"
            raise click.ClickException(f"{named}: cannot be read: {reason}.") from trouble
    else:
        named = settings_of(world).baseline
        data = world.read(named)
    if data is None:
        raise click.ClickException(f"{FILE} names the baseline {named}, which cannot be read; --no-baseline goes on.")
    baseline = read_baseline(data)
    if isinstance(baseline, NoBaseline):
        mend = f"write it again with --write-baseline {named}"
        raise click.ClickException(f"{named} {baseline.reason}; {mend}, or go on with --no-baseline.")
    removed = {entry.file for entry in baseline.findings if entry.file not in files and world.read(entry.file) is None}
    return set_aside(findings, prints, baseline, files | removed)


def _said_of(told: SetAside) -> str:
    parts = [f"{number_of(told.aside, 'finding')} set aside by the baseline"] if told.aside else []
    if told.gone:
        occurs = "occurs" if told.gone == 1 else "occur"
        parts.append(f"{told.gone} of the baseline {occurs} no longer: write it again with --write-baseline")
    return "; ".join(parts) + "." if parts else ""


def _report(outcome: Outcome, form: str, failing: Sequence[str], paint: Callable[[str, str], str] | None = None) -> str:
    findings, prints = outcome.findings, outcome.fingerprints
    if form == "json":
        from roomspec.reports.findings_json import findings_json

        return findings_json(findings)
    if form == "sarif":
        from roomspec.checks.registry import every_record
        from roomspec.reports.findings_sarif import findings_sarif

        return findings_sarif(findings, prints, every_record(), __version__)
    if form == "github":
        from roomspec.reports.findings_github import findings_github

        return findings_github(findings)
    if form == "gitlab":
        from roomspec.reports.findings_gitlab import findings_gitlab

        return findings_gitlab(findings, prints)
    if form == "junit":
        from roomspec.reports.findings_junit import findings_junit

        return findings_junit(findings, outcome.files, failing)
    if form == "checkstyle":
        from roomspec.reports.findings_checkstyle import findings_checkstyle

        return findings_checkstyle(findings)
    from roomspec.reports.findings_text import findings_text
    from roomspec.reports.paint import plain

    return findings_text(findings, outcome.line_of, paint or plain, from_here(outcome.root))


def _write(file: Path, text: str) -> None:
    try:
        write_whole(file, text.encode("utf-8", "backslashreplace"))
    except (OSError, ValueError) as trouble:
        reason = plain_reason(trouble) if isinstance(trouble, OSError) else "it is not a path"
        raise click.ClickException(f"{file}: cannot be written: {reason}.") from trouble
