"""A job's resolved names to the job of the model: the one entry to this package."""

from collections.abc import Iterable, Iterator

from msgspec import Struct

from roomspec.compile.allows import Allowance, allowances, without_reason
from roomspec.compile.job_problems import jobless, of_patterns, too_wide_a_kerf
from roomspec.compile.kept import Keep, Same, anew
from roomspec.compile.methods import MadeGang, MadeMethod, make_gang, make_method
from roomspec.compile.origins import Origins
from roomspec.compile.products import MadeProduct, make_product
from roomspec.compile.stretch import MadeRooms, Stretch, given, make_rooms, stretches
from roomspec.compile.terms import MadeTerms, make_terms
from roomspec.diagnostics.diagnostic import Diagnostic
from roomspec.model.job import Job, Terms
from roomspec.model.method import Gang, Method
from roomspec.model.product import Product
from roomspec.model.room import Room
from roomspec.names.index import Definition, Names
from roomspec.names.kinds import PRODUCTS
from roomspec.names.references import uses
from roomspec.names.resolve import unknown_names, unused_names
from roomspec.syntax.tree import Block


class Compiled(Struct, frozen=True, gc=False):
    """A job understood as far as it can be.

    `products` are by kind and name, `methods` and `gangs` by name: all that the files define and that could be made.
    `origins` are by the thing's kind and name: `room 101`, `panel limestone-long`, `method glued-wet`, `job x`.
    `problems` come each once, in no order that means anything.
    """

    job: Job
    products: dict[tuple[str, str], Product]
    methods: dict[str, Method]
    gangs: dict[str, Gang]
    origins: dict[str, Origins]
    problems: tuple[Diagnostic, ...]
    allowances: tuple[Allowance, ...]
    stretches: tuple[MadeRooms, ...]
    """The job's rooms again, with what is known of them, as they were made: some in a row."""


def compile_job(names: Names, keep: Keep = anew) -> Compiled:
    """Compile a job. A room, product or method that has not changed since an earlier call is not made again.

    `keep` keeps what is made of rooms in a row: then those that have not changed are not even looked at.
    """
    products, methods = _entries(names)
    gangs = {n: make_gang(d.block, d.units) for (kind, n), d in names.defined.items() if kind == "gang"}
    in_a_row = tuple(stretches(names, keep))
    rooms = [_rooms(stretch, names, products, methods, keep) for stretch in in_a_row]
    terms = make_terms(names.job.block, names.job.units) if names.job is not None else None
    origins = {
        **{f"{kind} {name}": Origins(made.head, made.fields) for (kind, name), made in products.items()},
        **{f"method {name}": Origins(made.head, made.fields) for name, made in methods.items()},
        **{f"gang {name}": Origins(made.head, made.fields) for name, made in gangs.items()},
        **({f"job {terms.name}": terms.origins} if terms is not None else {}),
    }
    for made in rooms:
        origins.update(made.origins)
    job = _job(terms, tuple([room for made in rooms for room in made.rooms]), gangs)
    known = {key: made.value for key, made in products.items() if made.value is not None}
    problems = [
        *names.problems,
        *unknown_names(names, _naming(names, in_a_row)),
        *unused_names(names),
        *(problem for product in products.values() for problem in product.problems),
        *(problem for method in methods.values() for problem in method.problems),
        *(problem for gang in gangs.values() for problem in gang.problems),
        *(problem for made in rooms for problem in made.problems),
        *(terms.problems if terms is not None else jobless(names)),
        *of_patterns(names),
        *too_wide_a_kerf(job, terms, known.values()),
        *(problem for d in names.defined.values() for problem in without_reason(d.block)),
    ]
    return Compiled(
        job,
        known,
        {name: made.value for name, made in methods.items()},
        {name: made.value for name, made in gangs.items()},
        origins,
        tuple(dict.fromkeys(problems)),
        (*allowances(names), *(allowance for made in rooms for allowance in made.allowances)),
        tuple(rooms),
    )


def make_ready(names: Names, keep: Keep) -> Iterator[None]:
    """Make what is dear of `compile_job`, the rooms, some at a time; `keep` keeps them."""
    products, methods = _entries(names)
    for stretch in stretches(names, keep):
        _rooms(stretch, names, products, methods, keep)
        yield


def _entries(names: Names) -> tuple[dict[tuple[str, str], MadeProduct], dict[str, MadeMethod]]:
    products = {key: make_product(d.block, d.units) for key, d in names.defined.items() if key[0] in PRODUCTS}
    return products, {n: _method(d, products) for (kind, n), d in names.defined.items() if kind == "method"}


def _method(definition: Definition, products: dict[tuple[str, str], MadeProduct]) -> MadeMethod:
    wanted = dict.fromkeys((use.kind, use.name) for use in uses(definition.block))
    found = ((*key, products[key].value) for key in wanted if key in products)
    return make_method(definition.block, definition.units, tuple((k, n, v) for k, n, v in found if v is not None))


def _naming(names: Names, in_a_row: Iterable[Stretch]) -> Iterator[Block]:
    """The blocks that may name what there is not."""
    yield from (definition.block for definition in names.defined.values())
    for stretch in in_a_row:
        if not names.defined.keys() >= stretch.used:
            yield from {id(block): block for block in stretch.blocks}.values()


def _rooms(
    stretch: Stretch,
    names: Names,
    products: dict[tuple[str, str], MadeProduct],
    methods: dict[str, MadeMethod],
    keep: Keep,
) -> MadeRooms:
    known = given(stretch, names, products, methods)
    label = f"rooms from {stretch.names[0]}"
    return keep("compile", label, (Same(stretch), known.key()), lambda: make_rooms(stretch, known, keep))


def _job(terms: MadeTerms | None, rooms: tuple[Room, ...], gangs: dict[str, MadeGang]) -> Job:
    if terms is None:
        return Job("", "", Terms(), rooms)
    gang = gangs[terms.gang].value if terms.gang in gangs else None
    return Job(
        terms.name,
        terms.title,
        terms.terms,
        rooms,
        gang,
        terms.extras,
        terms.assumptions,
        terms.exclusions,
        terms.notes,
    )
