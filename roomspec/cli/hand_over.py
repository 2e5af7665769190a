"""`roomspec hand-over`: the quotation, the order, the fitters' sheets, the survey sheet, written into a folder."""

from importlib.util import find_spec
from typing import TYPE_CHECKING

import click

from roomspec import __version__
from roomspec.cli.one_job import snapshot_at
from roomspec.cli.output_folder import beside, overwrite_option, refuse, write
from roomspec.cli.trouble import CLEAN, FINDINGS
from roomspec.files.folder import digest
from roomspec.text.listing import listed

if TYPE_CHECKING:
    from roomspec.analysis.session import Snapshot

FORMS = ("html", "csv", "xlsx", "pdf")
EXTRAS = {"xlsx": "xlsxwriter", "pdf": "typst"}
"""What a form needs that not everybody has installed."""


@click.command(name="hand-over", short_help="Write quotation, order, fitters' sheets and survey sheet.")
@click.argument("path", metavar="PATH")
@click.option("-o", "--output", "folder", required=True, metavar="DIR", help="The folder to write into.")
@click.option("--as", "forms", multiple=True, type=click.Choice(FORMS), help="Only these; may be given several times.")
@overwrite_option
def hand_over(path: str, folder: str, forms: tuple[str, ...], overwrite: bool) -> int:
    """Write the documents of the job PATH into DIR: as pages, lists (CSV), a workbook and PDF.

    DIR is new, empty, or of an earlier hand-over, whose documents are replaced; with --as the others stay. A document
    that was changed since, such as a workbook in which somebody went on, is not lost: nothing is written then. Exits 1
    where the job has errors: every document then says that it is not for issue.
    """
    from roomspec.cli.hand_over_documents import FILES, documents
    from roomspec.reports.hand_over.contents import FORMAT, contents_json
    from roomspec.reports.hand_over.given import hand_over_of

    wanted = forms or tuple(form for form in FORMS if _installed(form))
    names = [name for form in FORMS if form in wanted for name in FILES[form]]
    refuse(folder, FORMAT, overwrite, names)
    for form in wanted:
        if not _installed(form):
            raise click.ClickException(f"{form} needs a package more: pip install 'roomspec[{form}]'.")
    snapshot = snapshot_at(path)
    given = hand_over_of(snapshot)
    text = _made_of(snapshot)
    made = documents(given, wanted)
    refuse(folder, FORMAT, overwrite, names)  # somebody may have saved the workbook meanwhile
    stay = beside(folder, FORMAT, names)
    write(folder, made.files, contents_json(given, dict.fromkeys(names, text) | stay.text), stay)
    click.echo(f"Wrote {', '.join(names)} to {folder}.")
    old = [name for name in stay.files if stay.text[name] != text]
    if old:
        click.echo(f"Left as they were, of another text of the job: {listed(old)}.", err=True)
    for said in made.said:
        click.echo(said, err=True)
    locale = given.made.job.terms.locale
    if locale and not given.numerals.locale:
        click.echo(f"Locale {locale} is not known: figures and dates are as in the job's files.", err=True)
    for form in FORMS:
        if not forms and form not in wanted:
            click.echo(f"No {form}: it needs pip install 'roomspec[{form}]'.", err=True)
    if given.errors:
        click.echo("The job has errors: the documents are not for issue. `roomspec check` shows them.", err=True)
    return FINDINGS if given.errors else CLEAN


def _made_of(snapshot: "Snapshot") -> str:
    """The digest of what documents are made of: the program's version, the job's text, and the errors found in it."""
    errors = (finding.message for finding in snapshot.findings if finding.severity == "error")
    texts = (__version__, *(file.text for file in snapshot.files), *errors)
    return digest("\0".join(texts).encode("utf-8", "surrogatepass"))


def _installed(form: str) -> bool:
    return form not in EXTRAS or find_spec(EXTRAS[form]) is not None
