"""`roomspec check --fix` and `--diff`: mends put into the files, or shown."""

from pathlib import Path

import click
from msgspec import Struct

from roomspec.analysis.checked import together
from roomspec.analysis.gather import decode
from roomspec.analysis.mend import ROUNDS, mended
from roomspec.cli import screen
from roomspec.cli.check_run import Wanted, jobs_of, world_of
from roomspec.cli.format import Formatted, difference
from roomspec.cli.trouble import CLEAN, FINDINGS
from roomspec.files.check_one import check_one
from roomspec.files.disk import write_whole
from roomspec.files.jobs import plain_reason
from roomspec.files.kept_world import KeptWorld, LaidOver
from roomspec.reports.wording import number_of

_MARK = b"\xef\xbb\xbf"


class Mended(Struct, frozen=True):
    """Files before and after, by path from the root, and how many findings were mended."""

    before: dict[str, bytes]
    after: dict[str, bytes]
    count: int


def mend_all(wanted: Wanted, unsafe: bool) -> Mended:
    """Mend in rounds until nothing changes: what one mend uncovers the next round sees."""
    disk = world_of(wanted)
    jobs = {checked.job: checked for checked in jobs_of(wanted, disk)}
    after: dict[str, bytes] = {}
    world, count = disk, 0
    for _ in range(ROUNDS):
        texts = _texts(world, {path for checked in jobs.values() for path in checked.files})
        changed, more = mended(texts, together(list(jobs.values())), unsafe)
        if not changed:
            break
        count += more
        for path, text in changed.items():
            after[path] = (_MARK if (world.read(path) or b"").startswith(_MARK) else b"") + text.encode()
        world = KeptWorld(LaidOver(disk, after))
        stale = [job for job, checked in jobs.items() if not changed.keys().isdisjoint(checked.files)]
        jobs |= {job: check_one(world, job, None) for job in stale}
    before = {path: disk.read(path) or b"" for path in after}
    return Mended(before, {path: data for path, data in sorted(after.items()) if data != before[path]}, count)


def fix_files(wanted: Wanted, unsafe: bool) -> bool:
    """Write the mends into the files, each whole or not at all; True where one could not be written."""
    result = mend_all(wanted, unsafe)
    written, trouble = 0, False
    for path, data in result.after.items():
        why = _written(wanted.below.root / path, result.before[path], data)
        if why:
            click.echo(f"roomspec: {path}: cannot be mended: {why}.", err=True)
            trouble = True
        else:
            written += 1
    if not trouble and written:
        click.echo(f"Mended {number_of(result.count, 'finding')} in {number_of(written, 'file')}.", err=True)
    return trouble


def show_difference(wanted: Wanted, unsafe: bool) -> int:
    """Print what would change, as `git diff` and `patch` read it."""
    result = mend_all(wanted, unsafe)
    for path, data in result.after.items():
        before = result.before[path].removeprefix(_MARK).decode()
        screen.show(difference(Formatted(path, before, data.removeprefix(_MARK).decode())))
    told = f"{number_of(result.count, 'finding')} would be mended in {number_of(len(result.after), 'file')}."
    click.echo(told, err=True)
    return FINDINGS if result.after else CLEAN


def _written(place: Path, before: bytes, data: bytes) -> str:
    """Write the file if it is still as it was read; why not, or ""."""
    try:
        if place.read_bytes() != before:
            return "it changed in the meantime; check again"
        write_whole(place, data)
    except OSError as trouble:
        return plain_reason(trouble)
    return ""


def _texts(world: KeptWorld, paths: set[str]) -> dict[str, str]:
    """The files that are plain text; the others are the user's to save anew."""
    read = {path: decode(world.read(path) or b"") for path in sorted(paths)}
    return {path: text for path, (text, trouble) in read.items() if not trouble}
