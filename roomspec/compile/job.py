"""A job's resolved names to the job of the model: the one entry to this package."""

from collections.abc import Iterable, Iterator

from msgspec import Struct

from roomspec.compile.allows import Allowance, allowed_in, without_reason
from roomspec.compile.draft import read_draft
from roomspec.compile.methods import MadeGang, MadeMethod, make_gang, make_method
from roomspec.compile.origins import Origins
from roomspec.compile.products import MadeProduct, make_product
from roomspec.compile.rooms import MadeRoom, Text, make_room, named
from roomspec.compile.terms import MadeTerms, make_terms
from roomspec.compile.uncounted import not_counted
from roomspec.diagnostics.diagnostic import Diagnostic, Edit, Fix, Origin
from roomspec.model.job import Job, Terms
from roomspec.model.method import Gang, Method
from roomspec.model.product import Panel, Product
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
    `problems` come each once, in no order that means anything; `uncounted` are the `not-yet-counted` warnings.
    """

    job: Job
    products: dict[tuple[str, str], Product]
    methods: dict[str, Method]
    gangs: dict[str, Gang]
    origins: dict[str, Origins]
    problems: tuple[Diagnostic, ...]
    uncounted: tuple[Diagnostic, ...]
    allowances: tuple[Allowance, ...]


def compile_job(names: Names) -> Compiled:
    """Compile a job. A room, product or method that has not changed since an earlier call is not made again."""
    products = {key: make_product(d.block, d.units) for key, d in names.defined.items() if key[0] in PRODUCTS}
    methods = {n: _method(d, products) for (kind, n), d in names.defined.items() if kind == "method"}
    gangs = {n: make_gang(d.block, d.units) for (kind, n), d in names.defined.items() if kind == "gang"}
    rooms = dict(_rooms(names, products, methods))
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
        *(terms.problems if terms is not None else _jobless(names)),
        *_patterns(names),
        *_too_wide_a_kerf(job, terms),
        *(problem for block in names.blocks for problem in without_reason(block)),
    ]
    return Compiled(
        job,
        {key: made.value for key, made in products.items() if made.value is not None},
        {name: made.value for name, made in methods.items()},
        {name: made.value for name, made in gangs.items()},
        origins,
        tuple(dict.fromkeys(problems)),
        tuple(note for block in _counted_blocks(names, job) for note in not_counted(block)),
        tuple(_allowances(names)),
    )


def _method(definition: Definition, products: dict[tuple[str, str], MadeProduct]) -> MadeMethod:
    wanted = dict.fromkeys((use.kind, use.name) for use in uses(definition.block))
    found = ((*key, products[key].value) for key in wanted if key in products)
    return make_method(definition.block, definition.units, tuple((k, n, v) for k, n, v in found if v is not None))


def _rooms(
    names: Names, products: dict[tuple[str, str], MadeProduct], methods: dict[str, MadeMethod]
) -> Iterator[tuple[str, MadeRoom]]:
    """Each room that can be made; one whose pattern is unknown cannot."""
    made: dict[str, MadeRoom | None] = {}
    for name, definition in names.rooms.items():
        key = definition.block.key if definition.block.kind == "rooms" else f"room {name}"
        if key not in made:
            made[key] = _room(definition, names, products, methods)
        room = made[key]
        if room is not None:
            yield name, room


def _room(
    definition: Definition,
    names: Names,
    products: dict[tuple[str, str], MadeProduct],
    methods: dict[str, MadeMethod],
) -> MadeRoom | None:
    own = Text(definition.block, definition.units)
    pattern = None
    wanted = [*uses(definition.block)]
    as_pattern = read_draft(own.block, own.units).head.pattern
    if as_pattern:
        found = names.find("pattern", as_pattern)
        if found is None:
            return None
        pattern = Text(found.block, found.units)
        wanted += uses(found.block)
    panels = dict.fromkeys(use.name for use in wanted if use.kind == "panel")
    named_methods = dict.fromkeys(use.name for use in wanted if use.kind == "method")
    values = (products[("panel", name)].value for name in panels if ("panel", name) in products)
    return make_room(
        own,
        pattern,
        tuple(value for value in values if isinstance(value, Panel)),
        tuple(methods[name].value for name in named_methods if name in methods),
    )


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


def _jobless(names: Names) -> tuple[Diagnostic, ...]:
    """Rooms without a job have no terms; the fix writes a heading at the top of the first file."""
    if not names.trees:
        return ()
    at = Origin(f"file {names.trees[0].path}", 0, 0, 0)
    fix = Fix("begin with a job", (Edit(at, "job new-job\n\n"),))
    message = "no file here holds a job; its terms are taken as their defaults"
    help_ = 'begin a file with a line such as `job kestrel-house "Kestrel House"`'
    return (Diagnostic("missing-line", "error", message, at, help_, fixes=(fix,)),)


def _patterns(names: Names) -> Iterator[Diagnostic]:
    """The problems of patterns, used or not."""
    for (kind, _), definition in names.defined.items():
        if kind == "pattern":
            yield from read_draft(definition.block, definition.units).problems


def _too_wide_a_kerf(job: Job, terms: MadeTerms | None) -> Iterator[Diagnostic]:
    """A kerf as wide as the narrowest panel leaves nothing of it."""
    panels = {finish.panel for room in job.rooms for wall in room.walls for finish in wall.finishes}
    narrowest = min(panels, key=lambda panel: (panel.cover, panel.name), default=None)
    if terms is not None and narrowest is not None and job.terms.kerf >= narrowest.cover:
        at = terms.origins.at(("kerf",))
        yield Diagnostic("impossible-value", "error", f"the kerf is as wide as panel {narrowest.name}", at)


def _counted_blocks(names: Names, job: Job) -> Iterator[Block]:
    """The blocks that this job's figures rest on: its rooms, their patterns, the panels and methods used, its gang."""
    panels = {finish.panel.name for room in job.rooms for wall in room.walls for finish in wall.finishes}
    methods = {finish.method.name for room in job.rooms for wall in room.walls for finish in wall.finishes}
    patterns = {room.pattern for room in job.rooms}
    gang = job.gang.name if job.gang is not None else ""
    for block in names.blocks:
        used = {"panel": panels, "method": methods, "pattern": patterns, "gang": {gang}}.get(block.kind)
        if block.kind in ("room", "rooms") or (used is not None and block.name in used):
            yield block


def _allowances(names: Names) -> Iterable[Allowance]:
    """Each `allow` for each thing that it holds for; a pattern's for every room made from it."""
    for (kind, name), definition in names.defined.items():
        if kind != "pattern":
            yield from (Allowance(f"{kind} {name}", allowed) for allowed in allowed_in(definition.block))
    for name, definition in names.rooms.items():
        own = allowed_in(definition.block)
        yield from (Allowance(f"room {name}", allowed) for allowed in own)
        pattern = read_draft(definition.block, definition.units).head.pattern
        base = names.find("pattern", pattern) if pattern else None
        if base is not None:
            replaced = {(part.kind, part.name) for part in definition.block.parts}
            under = (allowed for allowed in allowed_in(base.block) if allowed.path[:2] not in replaced)
            yield from (Allowance(f"room {name}", allowed) for allowed in under)
