"""The files of one job: its own, and those that its `use` lines find, read into trees."""

import posixpath
from collections.abc import Callable

from msgspec import Struct

from roomspec.analysis.world import World
from roomspec.diagnostics.diagnostic import Diagnostic, Origin
from roomspec.syntax.tree import Block, FileTree, Node, Word

LARGEST = 16 * 1024 * 1024
"""Bytes; a larger file is not a room file that somebody wrote."""


class Gathered(Struct, frozen=True):
    """The trees in the order read (the job's own file first) and what could not be gathered."""

    trees: tuple[FileTree, ...]
    problems: tuple[Diagnostic, ...]


ReadTree = Callable[[str, str, dict[str, int]], FileTree]
"""Parses the text of the file at a path, given the keys of blocks that the files before it have."""


def gather(world: World, job_path: str, read_tree: ReadTree) -> Gathered | None:
    """Read a job's files; None where the job's own file cannot be read."""
    data = world.read(job_path)
    if data is None:
        return None
    problems: list[Diagnostic] = []
    seen: dict[str, int] = {}

    def tree_of(path: str, text: str) -> FileTree:
        return read_tree(path, text, seen)

    trees = {job_path: _tree(job_path, data, tree_of, problems)}
    for block in (placed.block for placed in trees[job_path].blocks if placed.block.kind == "job"):
        for path, at in _used(world, job_path, block, problems):
            if path in trees:
                continue
            if (data := world.read(path)) is not None:
                trees[path] = _tree(path, data, tree_of, problems)
            else:
                message = f"{path} cannot be read; what stands in it is left out"
                help_ = "look whether it is still there and may be read"
                problems.append(Diagnostic("use-finds-nothing", "error", message, at, help_))
    return Gathered(tuple(trees.values()), tuple(problems))


def decode(data: bytes) -> tuple[str, str]:
    """The text of a file and, where it is not plain UTF-8, one sentence that says so ("" where it is)."""
    if len(data) > LARGEST:
        return "", f"this file has {len(data) // 1_048_576} MB; a room file is text of at most 16 MB"
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        return data.decode("utf-16", "replace"), "this file is saved as UTF-16; save it as UTF-8"
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        if b"\0" in data:
            return "", "this is not a text file"
        return data.decode("utf-8", "replace"), "this file is not saved as UTF-8; save it as UTF-8"
    return ("", "this is not a text file") if "\0" in text else (text, "")


def _tree(path: str, data: bytes, read_tree: Callable[[str, str], FileTree], problems: list[Diagnostic]) -> FileTree:
    text, trouble = decode(data)
    if trouble:
        problems.append(Diagnostic("unreadable-line", "error", trouble, Origin(f"file {path}", 0, 0, 0)))
    return read_tree(path, text)


def _used(world: World, job_path: str, block: Block, problems: list[Diagnostic]) -> list[tuple[str, Origin]]:
    """Each file that the block's `use` lines find, with the words that name it."""
    found: list[tuple[str, Origin]] = []
    for statement in block.lines:
        if statement.node.kind != "use":
            continue
        word = _string_of(statement.node)
        at = Origin(block.key, statement.line, word.start, word.end)
        pattern = resolved(job_path, word.text[1:-1])
        if pattern is None:
            message = f"{word.text} leads outside the repository; only files inside it are read"
            problems.append(Diagnostic("use-outside-repository", "error", message, at))
        elif not (paths := world.find(pattern)):
            message = f"{word.text} finds no file; looked for {pattern} in the repository"
            help_ = 'name a file or a pattern such as "rooms/*.room"'
            problems.append(Diagnostic("use-finds-nothing", "warning", message, at, help_))
        else:
            found.extend((path, at) for path in paths)
    return found


def resolved(job_path: str, use: str) -> str | None:
    """The `use` text as a path relative to the repository's root; None where it leads out of it."""
    use = use.strip().replace("\\", "/")
    if not use or use.startswith("/") or "\0" in use or (len(use) > 1 and use[1] == ":"):
        return None
    path = posixpath.normpath(posixpath.join(posixpath.dirname(job_path), use))
    return None if path == ".." or path.startswith("../") else path


def _string_of(node: Node) -> Word:
    return next(part for part in node.parts if isinstance(part, Word) and part.type == "STRING")
