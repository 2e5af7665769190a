"""A folder of outputs: refused before any work, or written whole."""

from collections.abc import Mapping
from pathlib import Path

import click

from roomspec.files.folder import why_not_ours, write_folder
from roomspec.files.jobs import plain_reason


def refuse(folder: str, form: str) -> None:
    """End the command where the folder may not be replaced by outputs of that format."""
    try:
        reason = why_not_ours(Path(folder), form)
    except (OSError, ValueError) as trouble:
        raise _unwritable(folder, trouble) from trouble
    if reason:
        raise click.ClickException(f"{folder}: cannot be written: {reason}.")


def write(folder: str, files: Mapping[str, bytes]) -> None:
    """Write all of the files, or none."""
    try:
        write_folder(Path(folder), files)
    except (OSError, ValueError) as trouble:
        raise _unwritable(folder, trouble) from trouble


def _unwritable(folder: str, trouble: OSError | ValueError) -> click.ClickException:
    reason = plain_reason(trouble) if isinstance(trouble, OSError) else "it is not a path"
    return click.ClickException(f"{folder}: cannot be written: {reason}.")
