"""A folder of outputs: refused before any work, or written whole."""

import json
from collections.abc import Callable, Collection, Mapping
from pathlib import Path
from typing import TypeVar

import click

from roomspec.files.folder import CONTENTS, Earlier, digest, earlier_beside, why_not_ours, write_folder
from roomspec.files.jobs import plain_reason

Result = TypeVar("Result")
NOTHING = Earlier()

overwrite_option = click.option(
    "--overwrite", is_flag=True, help="Write over files of an earlier run that somebody has changed since."
)


def refuse(folder: str, form: str, overwrite: bool, names: Collection[str] | None = None) -> None:
    """End the command where outputs of that format may not be written, or a changed file would be lost.

    `names` are those that would be written; None where all that is there would be replaced.
    """
    lost = () if overwrite else names
    reason = _tried(folder, lambda: why_not_ours(Path(folder), form, lost))
    if reason:
        raise click.ClickException(f"{folder}: cannot be written: {reason}.")


def beside(folder: str, form: str, names: Collection[str]) -> Earlier:
    """What an earlier run wrote there and stays beside the files of those names."""
    return _tried(folder, lambda: earlier_beside(Path(folder), form, names))


def write(folder: str, files: Mapping[str, bytes], contents: str, kept: Earlier = NOTHING) -> None:
    """Write all of the files, and the list of them with the digest of each, or none; `kept` stay as they are."""
    digests = {name: digest(data) for name, data in files.items()}
    told = json.loads(contents) | {"sha256": digests | kept.sha256}
    whole = {**files, CONTENTS: (json.dumps(told, indent=2, ensure_ascii=False) + "\n").encode()}
    _tried(folder, lambda: write_folder(Path(folder), whole, kept.files))


def _tried(folder: str, work: Callable[[], Result]) -> Result:
    try:
        return work()
    except (OSError, ValueError) as trouble:
        reason = plain_reason(trouble) if isinstance(trouble, OSError) else "it is not a path"
        raise click.ClickException(f"{folder}: cannot be written: {reason}.") from trouble
