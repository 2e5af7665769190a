"""A session over one World: snapshots of its jobs, each re-making only what changed."""

from collections.abc import Iterator
from functools import cached_property
from typing import TYPE_CHECKING

from roomspec.analysis.engine import Engine, Estimated
from roomspec.analysis.found import Blocks, Found, in_order, placed
from roomspec.analysis.gather import Gathered, gather
from roomspec.analysis.judge import FEW, judge, judge_rooms
from roomspec.analysis.memo import Memo, Same
from roomspec.analysis.saying import Said
from roomspec.analysis.settings import Settings, as_chosen, settings_of
from roomspec.analysis.trees import Trees
from roomspec.analysis.world import World
from roomspec.compile.job import Compiled, compile_job
from roomspec.layout.laid import RoomLayout
from roomspec.model.job import Job
from roomspec.model.room import Room
from roomspec.names.index import Names, index_files
from roomspec.syntax.tree import FileTree

if TYPE_CHECKING:
    from roomspec.takeoff.taken import RoomTakeOff


class Session:
    """Reads jobs from a World. Keep one for as long as the World lives: it remembers what it has computed."""

    def __init__(self, world: World) -> None:
        """Read from `world`."""
        self.world = world
        self.memo = Memo()
        self._trees = Trees()

    def snapshot(self, job_path: str) -> "Snapshot | None":
        """The job in the file, as the World is now; None where the file cannot be read."""
        self.memo.turn()
        gathered = gather(self.world, job_path, self._trees.read)
        return Snapshot(job_path, gathered, self.memo, settings_of(self.world)) if gathered is not None else None


class Snapshot:
    """One job at one moment. Everything is computed when first asked for, and never changes."""

    def __init__(self, path: str, gathered: Gathered, memo: Memo, settings: Settings) -> None:
        """Hold the gathered trees, and what the repository chose."""
        self.path = path
        self.settings = settings
        self._gathered = gathered
        self._memo = memo

    @property
    def files(self) -> tuple[FileTree, ...]:
        """The files read, the job's own first."""
        return self._gathered.trees

    @property
    def job(self) -> Job | None:
        """The model; None where no file holds a job."""
        return self.compiled.job if self.compiled.job.name else None

    @cached_property
    def names(self) -> Names:
        """What the files define."""
        return index_files(self._gathered.trees)

    @cached_property
    def compiled(self) -> Compiled:
        """The job compiled, with the origins of its facts."""
        return compile_job(self.names)

    @cached_property
    def blocks(self) -> Blocks:
        """Where each block stands."""
        return {one.block.key: (tree.path, one.line) for tree in self._gathered.trees for one in tree.blocks}

    @cached_property
    def findings(self) -> tuple[Found, ...]:
        """Every finding as the settings choose, and their own mistakes, in the order of the text."""
        trees = self._gathered.trees
        found = [
            placed(problem, self.blocks, tree.path)
            for tree in trees
            for one in tree.blocks
            for problem in one.block.problems
        ]
        if self.job is None and self._gathered.problems:
            # A file that is no text says so, and nothing else.
            found.extend(placed(problem, self.blocks, self.path) for problem in self._gathered.problems)
            return self._in_order(found)
        outside = (*self._gathered.problems, *(problem for tree in trees for problem in tree.problems))
        inside = (problem for tree in trees for one in tree.blocks for problem in one.block.problems)
        whole = not any(problem.severity == "error" for problem in (*outside, *inside))
        saying = judge(self.compiled, self._engine, self._memo, whole)
        found.extend(placed(diagnostic, self.blocks, self.path) for diagnostic in (*outside, *saying.anew))
        for said in saying.kept:
            found.extend(self._placed(said))
        return self._in_order(found)

    def _placed(self, said: Said) -> tuple[Found, ...]:
        stand = tuple([self.blocks.get(block) for block in said.touches])
        return self._memo.get(
            "place",
            said.touches[0],
            (Same(said), stand, self.path),
            lambda: tuple(placed(diagnostic, self.blocks, self.path) for diagnostic in said.diagnostics),
        )

    def _in_order(self, found: list[Found]) -> tuple[Found, ...]:
        return in_order([*as_chosen(found, self.settings), *self.settings.problems])

    def warm(self) -> Iterator[None]:
        """Do what `findings` needs a few rooms at a time, so that something else may be done between."""
        for _ in judge_rooms(self.compiled, self._engine, self._memo, FEW):
            yield

    @cached_property
    def laid(self) -> tuple[RoomLayout, ...]:
        """Every room laid, in the job's order."""
        job = self.compiled.job
        return tuple(self._engine.layout(room, job.terms) for room in job.rooms)

    def layout(self, room: Room) -> RoomLayout:
        """One room laid."""
        return self._engine.layout(room, self.compiled.job.terms)

    @cached_property
    def taken(self) -> "tuple[RoomTakeOff, ...]":
        """Every room taken off, in the job's order; no panel is cut for it."""
        job = self.compiled.job
        return tuple(self._engine.take_off(*pair, job.terms) for pair in zip(job.rooms, self.laid, strict=True))

    def estimate(self) -> Estimated:
        """The job laid, cut, taken off and priced, as far as it could be understood."""
        return self._engine.estimate(self.compiled.job)

    @cached_property
    def _engine(self) -> Engine:
        return Engine(self._memo)
