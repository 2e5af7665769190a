"""A model at random, written as text and read again, is the same model: value for value.

Drawn is what reading gives, its normal form: regions with both ends or none, one at most for the whole of a face;
a profile without doubled points; lined faces from head to sill; no finish on a bare wall; an open corner without angle,
and a wall alone with open ends; `fix` with its spacing; a gang with its rate; prices by metric units.
"""

import datetime

from drawn_job import jobs
from drawn_wares import Wares
from hypothesis import given, settings
from hypothesis import strategies as st
from written_job import written

from roomspec.analysis.session import Session, Snapshot
from roomspec.analysis.world import MemoryWorld
from roomspec.diagnostics.diagnostic import Diagnostic
from roomspec.model.job import Job
from roomspec.syntax.format import format_text
from roomspec.syntax.tree import Block

SEEDS = st.integers(0, 999_999)


def read(files: dict[str, str]) -> Snapshot:
    """The job of the files, `job.room` first."""
    snapshot = Session(MemoryWorld(files, datetime.date(2026, 11, 25))).snapshot("job.room")
    assert snapshot is not None
    return snapshot


def told(snapshot: Snapshot) -> list[Diagnostic]:
    """All that reading has to say, but that a name is not used."""
    blocks = [placed.block for tree in snapshot.files for placed in tree.blocks]
    found = [*snapshot.compiled.problems, *(problem for tree in snapshot.files for problem in tree.problems)]
    found += [problem for block in blocks for problem in problems_of(block)]
    return [problem for problem in found if problem.name != "unused-name"]


def problems_of(block: Block) -> list[Diagnostic]:
    """A block's problems with those of its parts."""
    return [*block.problems, *(problem for part in block.parts for problem in problems_of(part))]


def is_read_as(snapshot: Snapshot, wares: Wares, job: Job) -> None:
    """Nothing is wrong with it, and it is these products, methods and gangs, and this job."""
    assert not told(snapshot)
    compiled = snapshot.compiled
    assert set(compiled.catalogue.products.values()) == set(wares.products)
    assert compiled.catalogue.methods == {method.name: method for method in wares.methods}
    assert compiled.catalogue.gangs == {gang.name: gang for gang in wares.gangs}
    assert compiled.job == job


@given(drawn=jobs(), seed=SEEDS)
@settings(max_examples=40, deadline=None)
def test_a_model_written_and_read_is_the_same(drawn: tuple[Wares, Job], seed: int) -> None:
    """However it is written, nothing is wrong with the text, and it is read as what was written, value for value."""
    for another in range(3):
        is_read_as(read(written(*drawn, seed + another)), *drawn)


@given(drawn=jobs(1), seed=SEEDS)
@settings(max_examples=20, deadline=None)
def test_formatting_changes_nothing_of_the_model(drawn: tuple[Wares, Job], seed: int) -> None:
    """The text in its one layout is read as the same model."""
    files = {path: format_text(text) for path, text in written(*drawn, seed).items()}
    is_read_as(read(files), *drawn)
