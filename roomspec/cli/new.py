"""`roomspec new`: a small job to start from."""

import re
import shlex
from datetime import date
from pathlib import Path

import click

from roomspec.cli.new_job import job_files
from roomspec.files.jobs import plain_reason


@click.command(short_help="Write a small job that checks clean.")
@click.argument("folder", metavar="FOLDER")
@click.option("--title", default="", help="The job's title, as the quotation prints it.")
def new(folder: str, title: str) -> int:
    """Write a small job into FOLDER: a job file, one room, and a catalogue. Nothing that is there is overwritten."""
    if not folder:
        raise click.UsageError("The folder's name is empty; name one, such as kestrel-house.")
    place = Path(folder)
    try:
        name = name_of(place.resolve().name)
        said = " ".join(title.split()).replace('"', "”")
        files = job_files(name, said or name.replace("-", " ").capitalize(), date.today())
        taken = [path for path in files if (place / path).exists()] if place.is_dir() else []
        if taken or place.is_file():
            there = place / taken[0] if taken else place
            raise click.ClickException(f"{there} exists already and stays as it is; name another folder.")
        for path, text in files.items():
            (place / path).parent.mkdir(parents=True, exist_ok=True)
            with (place / path).open("x", encoding="utf-8", newline="\n") as file:
                file.write(text)
    except (OSError, ValueError) as trouble:
        reason = plain_reason(trouble) if isinstance(trouble, OSError) else "it is not a path"
        raise click.ClickException(f"{folder}: cannot be written: {reason}.") from trouble
    click.echo(f"Wrote {', '.join((place / path).as_posix() for path in files)}.")
    typed = shlex.quote(f"./{folder}" if folder.startswith("-") else folder)
    click.echo(f"Next: roomspec check {typed}, then roomspec estimate {typed}")
    return 0


def name_of(folder: str) -> str:
    """A name as the language has them: letters, digits, `.`, `-`, `_`, a letter or digit first."""
    return re.sub(r"[^\w.-]+", "-", folder).strip("-._").lower() or "job"
