"""The forms that findings are printed in, and `--as FORM[:FILE]`."""

from collections.abc import Sequence

import click
from msgspec import Struct

FORMS = ("text", "json", "sarif", "github", "gitlab", "junit", "checkstyle")


class Output(Struct, frozen=True):
    """One `--as`: the form, and the file it goes to; None for what is printed, which the file `-` is too."""

    form: str
    file: str | None


def outputs_of(_ctx: click.Context, _parameter: click.Parameter, values: Sequence[str]) -> tuple[Output, ...]:
    """Each `FORM` or `FORM:FILE`; text to be printed where none is given."""
    outputs = tuple(_output(value) for value in values) or (Output("text", None),)
    if sum(output.file is None for output in outputs) > 1:
        raise click.BadParameter("only one form can be printed; give the others a file, as in --as sarif:FILE.")
    files = [output.file for output in outputs if output.file is not None]
    if len(set(files)) < len(files):
        raise click.BadParameter("two forms go to one file; give each its own.")
    return outputs


def _output(value: str) -> Output:
    form, colon, file = value.partition(":")
    if form not in FORMS:
        raise click.BadParameter(f"{form!r} is not one of {', '.join(FORMS)}.")
    if colon and not file:
        raise click.BadParameter(f"{value!r} names no file after the colon.")
    return Output(form, None if file in ("", "-") else file)
