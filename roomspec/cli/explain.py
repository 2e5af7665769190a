"""`roomspec explain`: what a check says, why, and from which source."""

import difflib

import click

from roomspec.cli import screen


@click.command(short_help="Explain a check: why, from which source, and how to mend it.")
@click.argument("name", required=False)
@click.option("--all", "everything", is_flag=True, help="All checks.")
@click.option("--as", "form", type=click.Choice(["text", "json"]), default="text", help="How to print it.")
def explain(name: str | None, everything: bool, form: str) -> int:
    """Explain the check NAME, or list them all with --all."""
    from roomspec.checks.registry import every_record

    if everything == bool(name):
        raise click.UsageError("Give the name of one check, or --all.")
    known = {check.name: check for check in every_record()}
    if name and name not in known:
        nearest = difflib.get_close_matches(name, known, n=3, cutoff=0.5)
        hint = f"did you mean {' or '.join(nearest)}?" if nearest else "`roomspec explain --all` lists them."
        raise click.ClickException(f"No check is called {name}; {hint}")
    chosen = [known[name]] if name else list(known.values())
    if form == "json":
        from roomspec.reports.checks_json import checks_json

        screen.show(checks_json(chosen))
    else:
        from roomspec.reports.checks_text import check_text, checks_text

        paint = screen.paint_for()
        screen.show(check_text(chosen[0], paint) if name else checks_text(chosen, paint))
    return 0
