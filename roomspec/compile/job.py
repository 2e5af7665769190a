"""A job's resolved names to the job of the model: the one entry to this package."""

from collections.abc import Iterable, Iterator

from msgspec import Struct

from roomspec.compile.allows import Allowance, allowances_of_entry, without_reason
from roomspec.compile.catalogue import ENTRIES, MadeCatalogue, catalogue_of
from roomspec.compile.job_problems import jobless, of_patterns, too_wide_a_kerf
from roomspec.compile.kept import Keep, Same, anew
from roomspec.compile.origins import Origins
from roomspec.compile.stretch import MadeRooms, Stretch, given, make_rooms, stretches
from roomspec.compile.terms import MadeTerms, make_terms
from roomspec.diagnostics.diagnostic import Diagnostic
from roomspec.model.job import Job, Terms
from roomspec.model.room import Room
from roomspec.names.index import Definition, Names
from roomspec.names.resolve import unknown_names, unused_names
from roomspec.syntax.tree import Block


class Compiled(Struct, frozen=True, gc=False):
    """A job understood as far as it can be.

    `catalogue` is all that the files define, used or not.
    `origins` are by the thing's kind and name: `room 101`, `panel limestone-long`, `method glued-wet`, `job x`.
    `problems` come each once, in no order that means anything.
    """

    job: Job
    catalogue: MadeCatalogue
    origins: dict[str, Origins]
    problems: tuple[Diagnostic, ...]
    allowances: tuple[Allowance, ...]
    stretches: tuple[MadeRooms, ...]
    """The job's rooms again, with what is known of them, as they were made: some in a row."""


def compile_job(names: Names, keep: Keep = anew, share: Keep = anew) -> Compiled:
    """Compile a job. A room, product or method that has not changed since an earlier call is not made again.

    `keep` keeps what is made of rooms in a row: then those that have not changed are not even looked at. `share` keeps
    catalogues for other jobs too.
    """
    catalogue = catalogue_of(names, share)
    in_a_row = tuple(stretches(names, keep))
    rooms = [_rooms(stretch, names, catalogue, keep) for stretch in in_a_row]
    terms = make_terms(names.job.block, names.job.units) if names.job is not None else None
    origins = catalogue.origins | ({f"job {terms.name}": terms.origins} if terms is not None else {})
    for made in rooms:
        origins.update(made.origins)
    job = _job(terms, tuple([room for made in rooms for room in made.rooms]), catalogue)
    others = {key: d for key, d in names.defined.items() if key[0] not in ENTRIES}
    problems = [
        *names.problems,
        *unknown_names(names, _naming(names, others.values(), catalogue, in_a_row)),
        *unused_names(names),
        *catalogue.problems,
        *(problem for made in rooms for problem in made.problems),
        *(terms.problems if terms is not None else jobless(names)),
        *of_patterns(names),
        *too_wide_a_kerf(job, terms, catalogue.products.values()),
        *(problem for d in others.values() for problem in without_reason(d.block)),
    ]
    own = [one for key, d in others.items() if key[0] == "job" for one in allowances_of_entry(" ".join(key), d.block)]
    return Compiled(
        job,
        catalogue,
        origins,
        tuple(dict.fromkeys(problems)),
        (*own, *catalogue.allowances, *(allowance for made in rooms for allowance in made.allowances)),
        tuple(rooms),
    )


def make_ready(names: Names, keep: Keep, share: Keep) -> Iterator[None]:
    """Make what is dear of `compile_job`, the rooms, some at a time; `keep` and `share` as there."""
    catalogue = catalogue_of(names, share)
    for stretch in stretches(names, keep):
        _rooms(stretch, names, catalogue, keep)
        yield


def _naming(
    names: Names, others: Iterable[Definition], catalogue: MadeCatalogue, in_a_row: Iterable[Stretch]
) -> Iterator[Block]:
    """The blocks that may name what there is not."""
    known = names.defined.keys()
    yield from (definition.block for definition in others)
    yield from () if known >= catalogue.used else catalogue.blocks
    for stretch in in_a_row:
        if not known >= stretch.used:
            yield from {id(block): block for block in stretch.blocks}.values()


def _rooms(stretch: Stretch, names: Names, catalogue: MadeCatalogue, keep: Keep) -> MadeRooms:
    known = given(stretch, names, catalogue.made_products, catalogue.made_methods)
    label = f"rooms from {stretch.names[0]}"
    return keep("compile", label, (Same(stretch), known.key()), lambda: make_rooms(stretch, known, keep))


def _job(terms: MadeTerms | None, rooms: tuple[Room, ...], catalogue: MadeCatalogue) -> Job:
    if terms is None:
        return Job("", "", Terms(), rooms)
    return Job(
        terms.name,
        terms.title,
        terms.terms,
        rooms,
        catalogue.gangs.get(terms.gang),
        terms.extras,
        terms.assumptions,
        terms.exclusions,
        terms.notes,
    )
