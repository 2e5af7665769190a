"""A job's resolved names to the job of the model: the one entry to this package."""

from functools import lru_cache

from msgspec import Struct

from roomspec.compile.allows import Allowance, allowances, without_reason
from roomspec.compile.draft import read_draft
from roomspec.compile.job_problems import jobless, of_patterns, too_wide_a_kerf
from roomspec.compile.methods import MadeGang, MadeMethod, make_gang, make_method
from roomspec.compile.origins import Origins
from roomspec.compile.products import MadeProduct, make_product
from roomspec.compile.rooms import MadeRoom, Text, make_room, named
from roomspec.compile.terms import MadeTerms, make_terms
from roomspec.diagnostics.diagnostic import Diagnostic
from roomspec.model.job import Job, Terms
from roomspec.model.method import Gang, Method
from roomspec.model.product import Panel, Product
from roomspec.model.room import Room
from roomspec.names.index import Definition, Names
from roomspec.names.kinds import PRODUCTS
from roomspec.names.references import uses
from roomspec.names.resolve import unknown_names, unused_names


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


def compile_job(names: Names) -> Compiled:
    """Compile a job. A room, product or method that has not changed since an earlier call is not made again."""
    products = {key: make_product(d.block, d.units) for key, d in names.defined.items() if key[0] in PRODUCTS}
    methods = {n: _method(d, products) for (kind, n), d in names.defined.items() if kind == "method"}
    gangs = {n: make_gang(d.block, d.units) for (kind, n), d in names.defined.items() if kind == "gang"}
    rooms = _rooms(names, products, methods)
    terms = make_terms(names.job.block, names.job.units) if names.job is not None else None
    origins = {
        **{f"{kind} {name}": Origins(made.head, made.fields) for (kind, name), made in products.items()},
        **{f"method {name}": Origins(made.head, made.fields) for name, made in methods.items()},
        **{f"gang {name}": Origins(made.head, made.fields) for name, made in gangs.items()},
        **{f"room {name}": made.origins for name, made in rooms.items()},
        **({f"job {terms.name}": terms.origins} if terms is not None else {}),
    }
    job = _job(terms, rooms, gangs)
    problems = [
        *names.problems,
        *unknown_names(names),
        *unused_names(names),
        *(problem for product in products.values() for problem in product.problems),
        *(problem for method in methods.values() for problem in method.problems),
        *(problem for gang in gangs.values() for problem in gang.problems),
        *(problem for room in rooms.values() for problem in room.problems),
        *(terms.problems if terms is not None else jobless(names)),
        *of_patterns(names),
        *too_wide_a_kerf(job, terms),
        *(problem for block in names.blocks for problem in without_reason(block)),
    ]
    return Compiled(
        job,
        {key: made.value for key, made in products.items() if made.value is not None},
        {name: made.value for name, made in methods.items()},
        {name: made.value for name, made in gangs.items()},
        origins,
        tuple(dict.fromkeys(problems)),
        tuple(allowances(names)),
    )


def _method(definition: Definition, products: dict[tuple[str, str], MadeProduct]) -> MadeMethod:
    wanted = dict.fromkeys((use.kind, use.name) for use in uses(definition.block))
    found = ((*key, products[key].value) for key in wanted if key in products)
    return make_method(definition.block, definition.units, tuple((k, n, v) for k, n, v in found if v is not None))


def _rooms(
    names: Names, products: dict[tuple[str, str], MadeProduct], methods: dict[str, MadeMethod]
) -> dict[str, MadeRoom]:
    """Each room that can be made; one whose pattern is unknown cannot. All are read before the first is made."""
    blocks = {id(definition.block): _texts(definition, names) for definition in names.rooms.values()}
    wanted = {key: _wanted(*texts) for key, texts in blocks.items() if texts is not None}
    made = {key: _room(texts, *wanted[key], products, methods) for key, texts in blocks.items() if texts is not None}
    rooms = ((name, id(definition.block)) for name, definition in names.rooms.items())
    return {name: made[key] for name, key in rooms if key in made}


def _texts(definition: Definition, names: Names) -> tuple[Text, Text | None] | None:
    """A room's own block and its pattern's; None where the pattern is unknown."""
    own = Text(definition.block, definition.units)
    pattern = read_draft(own.block, own.units).head.pattern
    if not pattern:
        return own, None
    found = names.find("pattern", pattern)
    return (own, Text(found.block, found.units)) if found is not None else None


def _room(
    texts: tuple[Text, Text | None],
    panels: tuple[str, ...],
    methods: tuple[str, ...],
    products: dict[tuple[str, str], MadeProduct],
    made: dict[str, MadeMethod],
) -> MadeRoom:
    values = [products[("panel", name)].value for name in panels if ("panel", name) in products]
    return make_room(
        *texts,
        tuple([value for value in values if isinstance(value, Panel)]),
        tuple([made[name].value for name in methods if name in made]),
    )


@lru_cache(8192)
def _wanted(own: Text, pattern: Text | None) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The panels and the methods that a room and its pattern name, each once."""
    found = (*uses(own.block), *(uses(pattern.block) if pattern is not None else ()))
    panels, methods = ([use.name for use in found if use.kind == kind] for kind in ("panel", "method"))
    return tuple(dict.fromkeys(panels)), tuple(dict.fromkeys(methods))


def _job(terms: MadeTerms | None, rooms: dict[str, MadeRoom], gangs: dict[str, MadeGang]) -> Job:
    made: tuple[Room, ...] = tuple(named(room.value, name) for name, room in rooms.items())
    if terms is None:
        return Job("", "", Terms(), made)
    gang = gangs[terms.gang].value if terms.gang in gangs else None
    return Job(
        terms.name,
        terms.title,
        terms.terms,
        made,
        gang,
        terms.extras,
        terms.assumptions,
        terms.exclusions,
        terms.notes,
    )
