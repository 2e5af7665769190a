"""`roomspec hand-over`: the quotation, the order, the fitters' sheets, the survey sheet, written into a folder."""

from importlib.util import find_spec
from typing import TYPE_CHECKING

import click

from roomspec.cli.one_job import snapshot_at
from roomspec.cli.output_folder import refuse, write
from roomspec.cli.trouble import CLEAN, FINDINGS

if TYPE_CHECKING:
    from roomspec.reports.hand_over.given import HandOver
    from roomspec.reports.paper.sheet import Drawing, Sheet

FORMS = ("html", "csv", "xlsx", "pdf")
EXTRAS = {"xlsx": "xlsxwriter", "pdf": "typst"}
"""What a form needs that not everybody has installed."""


@click.command(name="hand-over", short_help="Write quotation, order, fitters' sheets and survey sheet.")
@click.argument("path", metavar="PATH")
@click.option("-o", "--output", "folder", required=True, metavar="DIR", help="The folder to write into.")
@click.option("--as", "forms", multiple=True, type=click.Choice(FORMS), help="Only these; may be given several times.")
def hand_over(path: str, folder: str, forms: tuple[str, ...]) -> int:
    """Write the documents of the job PATH into DIR: as pages, lists (CSV), a workbook and PDF.

    DIR is new, empty, or of an earlier hand-over, which is replaced. Exits 1 where the job has errors: every document
    then says that it is not for issue.
    """
    from roomspec.reports.hand_over.contents import FORMAT, contents_json
    from roomspec.reports.hand_over.given import hand_over_of

    refuse(folder, FORMAT)
    wanted = forms or tuple(form for form in FORMS if _installed(form))
    for form in wanted:
        if not _installed(form):
            raise click.ClickException(f"{form} needs a package more: pip install 'roomspec[{form}]'.")
    given = hand_over_of(snapshot_at(path))
    files = documents(given, wanted)
    write(folder, files | {"contents.json": contents_json(given, tuple(files)).encode()})
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
        "fitters": fitters(given, _drawings(given)),
        "survey": survey(given),
    }


def _drawings(given: "HandOver") -> "dict[str, tuple[Drawing, ...]]":
    """By the first of the rooms that a drawing holds for; under "" what is drawn of the cutting."""
    from roomspec.reports.drawing.job_drawings import draw_job
    from roomspec.reports.paper.sheet import Drawing

    drawn = draw_job(given.made, len(given.errors))
    sheets = {drawing.name: Drawing(drawing.svg, drawing.title, drawing.paper) for drawing in drawn}
    first = [same.names[0] for same in given.rooms]
    found = {name: tuple(sheets[drawing.name] for drawing in drawn if name in drawing.rooms) for name in first}
    return found | {"": tuple(sheets[drawing.name] for drawing in drawn if not drawing.rooms)}


def _installed(form: str) -> bool:
    return form not in EXTRAS or find_spec(EXTRAS[form]) is not None
