"""`roomspec hand-over`: the quotation, the order, the fitters' sheets, the survey sheet, written into a folder."""

from importlib.util import find_spec
from pathlib import Path
from typing import TYPE_CHECKING

import click

from roomspec.cli.one_job import snapshot_at
from roomspec.cli.trouble import CLEAN, FINDINGS
from roomspec.files.folder import write_folder
from roomspec.files.jobs import plain_reason

if TYPE_CHECKING:
    from roomspec.reports.hand_over.given import HandOver
    from roomspec.reports.paper.sheet import Sheet

FORMS = ("html", "csv", "xlsx", "pdf")
EXTRAS = {"xlsx": "xlsxwriter", "pdf": "typst"}
"""What a form needs that not everybody has installed."""


@click.command(name="hand-over", short_help="Write quotation, order, fitters' sheets and survey sheet.")
@click.argument("path", metavar="PATH")
@click.option("-o", "--output", "folder", required=True, metavar="DIR", help="The folder to write into.")
@click.option("--as", "forms", multiple=True, type=click.Choice(FORMS), help="Only these; may be given several times.")
def hand_over(path: str, folder: str, forms: tuple[str, ...]) -> int:
    """Write the documents of the job PATH into DIR: as pages, lists (CSV), a workbook and PDF.

    Files of an earlier hand-over are replaced, others in DIR stay. Exits 1 where the job has errors: every document
    then says that it is not for issue.
    """
    wanted = forms or tuple(form for form in FORMS if _installed(form))
    for form in wanted:
        if not _installed(form):
            raise click.ClickException(f"{form} needs a package more: pip install 'roomspec[{form}]'.")
    from roomspec.reports.hand_over.given import hand_over_of

    given = hand_over_of(snapshot_at(path))
    files = documents(given, wanted)
    _write(folder, files)
    click.echo(f"Wrote {', '.join(files)} to {folder}.")
    locale = given.made.job.terms.locale
    if locale and not given.numerals.locale:
        click.echo(f"Locale {locale} is not known: figures and dates are as in the job's files.", err=True)
    for form in FORMS:
        if not forms and form not in wanted:
            click.echo(f"No {form}: it needs pip install 'roomspec[{form}]'.", err=True)
    if given.errors:
        click.echo("The job has errors: the documents are not for issue. `roomspec check` shows them.", err=True)
    return FINDINGS if given.errors else CLEAN


def documents(given: "HandOver", forms: tuple[str, ...]) -> dict[str, bytes]:
    """File name -> what it holds."""
    sheets = _sheets(given) if {"html", "pdf"} & set(forms) else {}
    files: dict[str, bytes] = {}
    if "html" in forms:
        from roomspec.reports.paper.page import sheet_page

        files |= {f"{name}.html": sheet_page(sheet).encode() for name, sheet in sheets.items()}
    if "csv" in forms:
        from roomspec.reports.hand_over.lists_csv import cut_list_csv, order_csv

        files |= {"order.csv": order_csv(given).encode(), "cut-list.csv": cut_list_csv(given).encode()}
    if "xlsx" in forms:
        from roomspec.reports.hand_over.ledger import workbook

        files["estimate.xlsx"] = workbook(given)
    if "pdf" in forms:
        from roomspec.reports.paper.pdf import sheet_pdf

        files |= {f"{name}.pdf": sheet_pdf(sheet) for name, sheet in sheets.items()}
    return files


def _sheets(given: "HandOver") -> "dict[str, Sheet]":
    from roomspec.reports.hand_over.fitters import fitters
    from roomspec.reports.hand_over.order import order
    from roomspec.reports.hand_over.quotation import quotation
    from roomspec.reports.hand_over.survey import survey

    return {
        "quotation": quotation(given),
        "order": order(given),
        "fitters": fitters(given, {}),
        "survey": survey(given),
    }


def _installed(form: str) -> bool:
    return form not in EXTRAS or find_spec(EXTRAS[form]) is not None


def _write(folder: str, files: dict[str, bytes]) -> None:
    try:
        write_folder(Path(folder), files)
    except (OSError, ValueError) as trouble:
        reason = plain_reason(trouble) if isinstance(trouble, OSError) else "it is not a path"
        raise click.ClickException(f"{folder}: cannot be written: {reason}.") from trouble
