"""Findings placed in their files, as the settings choose, in order; kept a stretch of rooms and a file at a time."""

from collections.abc import Iterable, Iterator, Mapping, Sequence

from msgspec import Struct

from roomspec.analysis.found import Blocks, Found, in_order, joined, placed
from roomspec.analysis.memo import Memo
from roomspec.analysis.saying import Said, SaidRooms
from roomspec.analysis.settings import Settings, as_chosen
from roomspec.compile.kept import Same
from roomspec.diagnostics.diagnostic import Diagnostic
from roomspec.syntax.tree import FileTree

InFiles = Mapping[str, tuple[Found, ...]]
"""Findings by file, in order in each."""


class Standing(Struct, frozen=True):
    """Where the blocks of a file stand, and the problems in them; it is `broken` where one is an error."""

    blocks: Blocks
    found: InFiles
    broken: bool


def standing(tree: FileTree, settings: Settings, memo: Memo) -> Standing:
    """What a tree says by itself."""

    def make() -> Standing:
        blocks = {one.block.key: (tree.path, one.line) for one in tree.blocks}
        problems = [problem for one in tree.blocks for problem in one.block.problems]
        found = _by_file(as_chosen([placed(problem, blocks, tree.path) for problem in problems], settings))
        return Standing(blocks, found, any(problem.severity == "error" for problem in problems))

    return memo.latest("stand", "", tree.path, (Same(tree), settings.choices), make)


class Placing(Struct, frozen=True):
    """What findings of a job are placed by."""

    blocks: Blocks
    job_path: str
    settings: Settings
    memo: Memo

    def each(self, diagnostics: Iterable[Diagnostic]) -> Iterator[Found]:
        """The diagnostics placed, kept by nothing."""
        return iter(as_chosen([placed(one, self.blocks, self.job_path) for one in diagnostics], self.settings))

    def said(self, said: Said) -> InFiles:
        """What is said of a block."""
        stand = self._stand(said.touches)
        key = Same(said), stand, self.job_path, self.settings.choices
        return self.memo.get("place", said.touches[0], key, lambda: _by_file(self.each(said.diagnostics)))

    def rooms(self, rooms: SaidRooms, shared: Mapping[str, Said]) -> InFiles:
        """What is said of rooms, but of the blocks `shared` with others."""
        left_out = tuple([block for block in rooms.blocks if block in shared]) if shared else ()
        stand = self._stand(rooms.touches)
        key = Same(rooms), stand, left_out, self.job_path, self.settings.choices

        def make() -> InFiles:
            apart = [self.said(said) for block, said in rooms.blocks.items() if block not in left_out]
            return {path: joined(runs) for path, runs in _gathered(apart).items()}

        return self.memo.get("place rooms", rooms.touches[0] if rooms.touches else "", key, make)

    def _stand(self, touches: Iterable[str]) -> tuple[tuple[str, int] | None, ...]:
        return tuple(map(self.blocks.get, touches))


def in_files(
    job_path: str, parts: Sequence[InFiles], loose: Iterable[Found], memo: Memo
) -> dict[str, tuple[Found, ...]]:
    """All findings, the files in order too; `loose` are of any file, each for itself."""
    runs = _gathered(parts)
    for one in loose:
        runs.setdefault(one.place.path, []).append((one,))
    return {path: _joined(job_path, path, runs[path], memo) for path in sorted(runs)}


def _joined(job_path: str, path: str, runs: list[tuple[Found, ...]], memo: Memo) -> tuple[Found, ...]:
    loose = tuple([run for run in runs if len(run) == 1])
    key = tuple([Same(run) for run in runs if len(run) > 1]), loose
    return memo.latest("join", job_path, path, key, lambda: joined(runs))


def _gathered(parts: Iterable[InFiles]) -> dict[str, list[tuple[Found, ...]]]:
    runs: dict[str, list[tuple[Found, ...]]] = {}
    for part in parts:
        for path, run in part.items():
            runs.setdefault(path, []).append(run)
    return runs


def _by_file(found: Iterable[Found]) -> dict[str, tuple[Found, ...]]:
    files: dict[str, list[Found]] = {}
    for one in found:
        files.setdefault(one.place.path, []).append(one)
    return {path: in_order(several) for path, several in files.items()}
