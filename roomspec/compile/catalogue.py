"""The products, methods and gangs that a job's files define, made together: jobs that share them share what is made."""

from collections.abc import Mapping, Sequence

from msgspec import Struct

from roomspec.compile.allows import Allowance, allowances_of_entry, without_reason
from roomspec.compile.kept import Keep
from roomspec.compile.methods import MadeGang, MadeMethod, make_gang, make_method
from roomspec.compile.origins import Origins
from roomspec.compile.products import MadeProduct, make_product
from roomspec.diagnostics.diagnostic import Diagnostic
from roomspec.model.method import Gang, Method
from roomspec.model.product import Product
from roomspec.names.index import Names
from roomspec.names.kinds import PRODUCTS
from roomspec.names.references import uses
from roomspec.syntax.tree import Block

_Entry = tuple[str, str, Block, str]
"""Kind, name, block, and the unit of its file's bare lengths."""

ENTRIES = frozenset((*PRODUCTS, "method", "gang"))


class MadeCatalogue(Struct, frozen=True, gc=False):
    """What could be made, by kind and name or by name, and the same with where it is written."""

    products: dict[tuple[str, str], Product]
    methods: dict[str, Method]
    gangs: dict[str, Gang]
    made_products: dict[tuple[str, str], MadeProduct]
    made_methods: dict[str, MadeMethod]
    origins: dict[str, Origins]
    """By kind and name: `panel limestone-long`."""
    problems: tuple[Diagnostic, ...]
    allowances: tuple[Allowance, ...]
    blocks: tuple[Block, ...]
    used: frozenset[tuple[str, str]]
    """Kinds and names that the blocks name."""


def catalogue_of(names: Names, keep: Keep) -> MadeCatalogue:
    """The catalogue of a job, found where its blocks are as they were, or as another job has them."""
    found = [(key, definition) for key, definition in names.defined.items() if key[0] in ENTRIES]
    entries = tuple([(*key, definition.block, definition.units) for key, definition in found])
    return keep("catalogue", found[0][1].path if found else "", entries, lambda: _made(entries))


def _made(entries: Sequence[_Entry]) -> MadeCatalogue:
    products = {(kind, name): make_product(block, units) for kind, name, block, units in entries if kind in PRODUCTS}
    methods = {name: _method(block, units, products) for kind, name, block, units in entries if kind == "method"}
    gangs = {name: make_gang(block, units) for kind, name, block, units in entries if kind == "gang"}
    named: list[tuple[str, MadeProduct | MadeMethod | MadeGang]] = []
    named += [(f"{kind} {name}", made) for (kind, name), made in products.items()]
    named += [(f"method {name}", made) for name, made in methods.items()]
    named += [(f"gang {name}", made) for name, made in gangs.items()]
    blocks = tuple(block for _, _, block, _ in entries)
    problems = [problem for _, made in named for problem in made.problems]
    problems += [problem for block in blocks for problem in without_reason(block)]
    return MadeCatalogue(
        {key: made.value for key, made in products.items() if made.value is not None},
        {name: made.value for name, made in methods.items()},
        {name: made.value for name, made in gangs.items()},
        products,
        methods,
        {key: Origins(made.head, made.fields) for key, made in named},
        tuple(dict.fromkeys(problems)),
        tuple(one for kind, name, block, _ in entries for one in allowances_of_entry(f"{kind} {name}", block)),
        blocks,
        frozenset((use.kind, use.name) for block in blocks for use in uses(block)),
    )


def _method(block: Block, units: str, products: Mapping[tuple[str, str], MadeProduct]) -> MadeMethod:
    wanted = dict.fromkeys((use.kind, use.name) for use in uses(block))
    found = ((*key, products[key].value) for key in wanted if key in products)
    return make_method(block, units, tuple((k, n, v) for k, n, v in found if v is not None))
