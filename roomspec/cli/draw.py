"""`roomspec draw`: elevations, plans and cutting drawings as SVG files in a folder."""

import click

from roomspec.cli.jobs import expected
from roomspec.cli.output_folder import overwrite_option, refuse, write
from roomspec.cli.trouble import CLEAN, FINDINGS
from roomspec.files.jobs import no_job_in, one_job_at
from roomspec.reports.wording import number_of


@click.command(short_help="Draw walls, plans and cutting patterns to scale, as SVG.")
@click.argument("path", metavar="PATH")
@click.option("-o", "--output", metavar="DIR", required=True, help="The folder to write; a new, empty or earlier one.")
@overwrite_option
def draw(path: str, output: str, overwrite: bool) -> int:
    """Draw the job PATH into the folder DIR: a job file, or a folder that holds one.

    An elevation of every finished wall, a plan of every room, a cutting drawing for every panel, for A4 and A3. DIR is
    written whole or not at all, and holds nothing else; nothing is written where a drawing in it was changed since.
    Exits 1 where the job has errors: every sheet says so.
    """
    from roomspec.analysis.session import Session
    from roomspec.reports.drawing.file_names import FORMAT, drawings_contents, file_names
    from roomspec.reports.drawing.job_drawings import draw_job

    jobs = expected(one_job_at(path))
    refuse(output, FORMAT, overwrite)
    snapshot = Session(jobs.world).snapshot(jobs.paths[0])
    if snapshot is None or snapshot.job is None:
        raise click.ClickException(no_job_in(path).reason)
    errors = sum(finding.severity == "error" for finding in snapshot.findings)
    drawings = draw_job(snapshot.estimate(), errors)
    if not drawings:
        raise click.ClickException(f"{path}: nothing to draw; no wall of a room could be read.")
    names = file_names([drawing.name for drawing in drawings])
    files = {name: drawing.svg.encode() for name, drawing in zip(names, drawings, strict=True)}
    write(output, files, drawings_contents(snapshot.job, drawings, names, errors))
    told = f"; not for issue: {number_of(errors, 'error')}, `roomspec check` shows them" if errors else ""
    click.echo(f"Wrote {number_of(len(drawings), 'drawing')} and contents.json to {output}{told}.")
    return FINDINGS if errors else CLEAN
