"""`roomspec format`: indent, align and spell room files one way."""

import difflib
import sys
from collections.abc import Iterator
from pathlib import Path

import click
from msgspec import Struct

from roomspec.cli import screen
from roomspec.cli.trouble import CLEAN, FINDINGS, TROUBLE
from roomspec.files.jobs import plain_reason


class Formatted(Struct, frozen=True):
    """A file before and after."""

    name: str
    before: str
    after: str


@click.command("format", short_help="Indent, align and spell room files one way.")
@click.argument("paths", metavar="PATH...", nargs=-1, required=True)
@click.option("--check", is_flag=True, help="Change nothing; exit 1 where a file would change.")
@click.option("--diff", is_flag=True, help="Change nothing; show what would change, and exit 1 where a file would.")
@click.option("--name", default="standard-input.room", help="What to call the file read from `-`.")
def format_files(paths: tuple[str, ...], check: bool, diff: bool, name: str) -> int:
    """Rewrite the room files named, or all those in the folders named, in the one format.

    Every comment and every blank line stays; no meaning changes. `-` reads standard input and writes the result.
    """
    if "-" in paths:
        if len(paths) > 1:
            raise click.UsageError("`-` stands alone: name either files or standard input.")
        return _format_input(name, check, diff)
    trouble = False
    dry = check or diff
    results: list[Formatted] = []
    for file in files_of(paths):
        try:
            results.append(format_file(file, write=not dry))
        except (OSError, UnicodeDecodeError, ValueError) as cause:
            click.echo(f"roomspec: {_reason(file, cause)}", err=True)
            trouble = True
    changed = [result for result in results if result.before != result.after]
    for result in changed:
        if diff:
            screen.show(difference(result))
        else:
            click.echo(f"{'would format' if check else 'formatted'} {result.name}")
    if results or not trouble:
        click.echo(_summary(len(changed), len(results), dry), err=True)
    return TROUBLE if trouble else FINDINGS if changed and dry else CLEAN


def files_of(paths: tuple[str, ...]) -> Iterator[Path]:
    """The files named and the room files below the folders named, hidden folders and links out left out, each once."""
    seen: set[Path] = set()
    for path in paths:
        place = Path(path)
        below = _below(place) if _is_folder(place) else [place]
        for file in below:
            hidden = any(part.startswith(".") for part in file.relative_to(place).parts)
            if file not in seen and not hidden:
                seen.add(file)
                yield file


def _below(folder: Path) -> list[Path]:
    """The room files of a folder; what a link leads to outside of its repository is somebody else's."""
    from roomspec.files.disk import DiskWorld, root_of

    world = DiskWorld(root_of(folder))
    return [file for file in sorted(folder.rglob("*.room")) if world.holds(file)]


def format_file(file: Path, write: bool) -> Formatted:
    """The file before and after, written back where wanted and changed; OSError or ValueError where it cannot be."""
    from roomspec.files.disk import write_whole

    result = formatted(file.as_posix(), file.read_bytes())
    if write and result.before != result.after:
        try:
            write_whole(file, result.after.encode())
        except OSError as cause:
            raise ValueError(f"cannot be written: {plain_reason(cause)}") from cause
    return result


def formatted(name: str, data: bytes) -> Formatted:
    """The text before and after; ValueError where it is no UTF-8 text."""
    from roomspec.analysis.gather import decode
    from roomspec.syntax.format import format_text

    text, trouble = decode(data)
    if trouble:
        raise ValueError(trouble)
    return Formatted(name, text, format_text(text))


def difference(result: Formatted) -> str:
    """A unified diff, as `git diff` and `patch` read it."""
    before, after = lines_of(result.before), lines_of(result.after)
    lines = difflib.unified_diff(before, after, f"a/{result.name}", f"b/{result.name}")
    return "".join(line if line.endswith("\n") else f"{line}\n\\ No newline at end of file\n" for line in lines)


def lines_of(text: str) -> list[str]:
    """The lines with their ends; only a line feed ends one."""
    *whole, last = text.split("\n")
    return [line + "\n" for line in whole] + ([last] if last else [])


def _format_input(name: str, check: bool, diff: bool) -> int:
    try:
        result = formatted(name, sys.stdin.buffer.read())
    except ValueError as cause:
        raise click.ClickException(f"{name}: {cause}.") from cause
    if diff:
        screen.show(difference(result))
    elif not check:
        sys.stdout.buffer.write(result.after.encode())
        sys.stdout.buffer.flush()
    return FINDINGS if result.before != result.after and (check or diff) else CLEAN


def _is_folder(place: Path) -> bool:
    try:
        return place.is_dir()
    except (OSError, ValueError):
        return False


def _reason(file: Path, cause: Exception) -> str:
    return f"{file}: cannot be read: {plain_reason(cause)}." if isinstance(cause, OSError) else f"{file}: {cause}."


def _summary(changed: int, files: int, dry: bool) -> str:
    same = files - changed
    done, rest = "would change" if dry else "changed", "is as it" if same == 1 else "are as they"
    return f"{changed} {done}, {same} {rest} should be."
