"""A session over one World: snapshots of its jobs, each re-making only what changed."""

from collections.abc import Callable, Hashable, Iterator
from functools import cached_property
from itertools import chain
from typing import TYPE_CHECKING, TypeVar

from roomspec.analysis.engine import Engine, Estimated
from roomspec.analysis.found import Blocks, Found
from roomspec.analysis.gather import Gathered, gather
from roomspec.analysis.judge import judge
from roomspec.analysis.judge_rooms import warm
from roomspec.analysis.memo import Memo
from roomspec.analysis.placing import Placing, Standing, in_files, standing
from roomspec.analysis.settings import Settings, settings_of
from roomspec.analysis.trees import Trees
from roomspec.analysis.world import World
from roomspec.compile.job import Compiled, compile_job, make_ready
from roomspec.layout.laid import RoomLayout
from roomspec.model.job import Job
from roomspec.model.room import Room
from roomspec.names.index import Names, index_files
from roomspec.syntax.tree import FileTree

if TYPE_CHECKING:
    from roomspec.takeoff.taken import RoomTakeOff

T = TypeVar("T")


class Session:
    """Reads jobs from a World. Keep one for as long as the World lives: it remembers what it has computed."""

    def __init__(self, world: World) -> None:
        """Read from `world`."""
        self.world = world
        self.memo = Memo()
        """Of files; each job has a memo of its own, which lasts as long as it does."""
        self._of_jobs: dict[str, Memo] = {}
        self._trees = Trees()

    def snapshot(self, job_path: str) -> "Snapshot | None":
        """The job in the file, as the World is now; None where the file cannot be read."""
        gathered = gather(self.world, job_path, self._trees.read)
        if gathered is None:
            return None
        memo = self._of_jobs.get(job_path)
        if memo is None:
            memo = self._of_jobs[job_path] = Memo(self.memo.ran)
        memo.turn()
        return Snapshot(job_path, gathered, memo, self.memo, settings_of(self.world))

    def forget(self, job_path: str) -> None:
        """Let go of what was computed of a job that there is no more."""
        self._of_jobs.pop(job_path, None)


class Snapshot:
    """One job at one moment. Everything is computed when first asked for, and never changes."""

    def __init__(self, path: str, gathered: Gathered, memo: Memo, of_files: Memo, settings: Settings) -> None:
        """Hold the gathered trees, and what the repository chose."""
        self.path = path
        self.settings = settings
        self._gathered = gathered
        self._memo = memo
        self._of_files = of_files

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
        return index_files(self._gathered.trees, not self._gathered.problems)

    @cached_property
    def compiled(self) -> Compiled:
        """The job compiled, with the origins of its facts."""
        return compile_job(self.names, self._memo.get, self._share)

    def _share(self, stage: str, label: str, key: Hashable, make: Callable[[], T]) -> T:
        return self._of_files.latest(stage, "", label, key, make)

    @cached_property
    def _stand(self) -> list[Standing]:
        return [standing(tree, self.settings, self._of_files) for tree in self._gathered.trees]

    @cached_property
    def blocks(self) -> Blocks:
        """Where each block stands."""
        blocks: dict[str, tuple[str, int]] = {}
        for one in self._stand:
            blocks.update(one.blocks)
        return blocks

    @property
    def findings(self) -> tuple[Found, ...]:
        """Every finding as the settings choose, and their own mistakes, in the order of the text."""
        return tuple(chain.from_iterable(self.found.values()))

    @cached_property
    def found(self) -> dict[str, tuple[Found, ...]]:
        """The same by file; of a file of which nothing else is said it is the very same tuple as before."""
        placing = Placing(self.blocks, self.path, self.settings, self._memo)
        outside = [*self._gathered.problems, *(problem for tree in self._gathered.trees for problem in tree.problems)]
        if self.job is None and self._gathered.problems:
            # A file that is no text says so, and nothing else.
            return in_files(
                self.path, [*(one.found for one in self._stand)], placing.each(self._gathered.problems), self._memo
            )
        whole = not any(one.broken for one in self._stand) and not any(one.severity == "error" for one in outside)
        saying = judge(self.compiled, self._engine, self._memo, whole)
        parts = [*(one.found for one in self._stand), *(placing.rooms(one, saying.shared) for one in saying.rooms)]
        parts.extend(placing.said(said) for said in saying.shared.values())
        loose = [*placing.each((*outside, *saying.anew)), *self.settings.problems]
        return in_files(self.path, parts, loose, self._memo)

    def warm(self) -> Iterator[None]:
        """Do what `findings` needs a few rooms at a time, so that something else may be done between."""
        yield from make_ready(self.names, self._memo.get, self._share)
        yield from warm(self.compiled, self._engine, self._memo)

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
