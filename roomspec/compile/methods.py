"""A method's or a gang's block to its value, with the products that the method names put in."""

from functools import lru_cache
from typing import Any

from msgspec import Struct

from roomspec.compile.gather import Gathered, gather, missing, tried
from roomspec.compile.method_lines import BattenLine, FixLine, GlueLine, SealLine, Untrimmed
from roomspec.compile.origins import Fields, Source
from roomspec.compile.parts import quoted
from roomspec.diagnostics.diagnostic import Diagnostic
from roomspec.model.method import Battens, Gang, Glue, Method, Seal
from roomspec.model.product import Product
from roomspec.syntax.tree import Block

Named = tuple[tuple[str, str, Product], ...]
"""The products that a method names: kind, name, value; those that cannot be made are left out."""

_TRIMS = (
    "start",
    "inside_corner",
    "outside_corner",
    "edge",
    "top",
    "joint",
    "skirting",
    "cap",
    "cornice",
    "architrave",
)


class MadeMethod(Struct, frozen=True, gc=False):
    """A method, the problems of its block, the sources of its fields."""

    value: Method
    problems: tuple[Diagnostic, ...]
    head: Source
    fields: Fields


class MadeGang(Struct, frozen=True, gc=False):
    """A gang, the problems of its block, the sources of its fields."""

    value: Gang
    problems: tuple[Diagnostic, ...]
    head: Source
    fields: Fields


@lru_cache(256)
def make_method(block: Block, units: str, named: Named) -> MadeMethod:
    """The method of a block. A line whose product is unknown or cannot be made is left out."""
    found = gather(block.key, "method", block.lines, units)
    products = {(kind, name): value for kind, name, value in named}
    fields: dict[str, Any] = {
        "glue": _glue(found, products),
        "more": found.all("more"),
        "seals": _seals(found, products),
        "battens": _battens(found, products),
        "screw": products.get(("fixing", str(found.last("screw")))),
        "behind": products.get(("sheet", str(found.last("behind")))),
        "scribe": found.last("scribe", 0),
        "gaps": found.all("gaps"),
        "notes": found.all("notes"),
        **_fix(found, products),
    }
    for place in _TRIMS:
        said = found.last(place)
        fields[place] = said.way if isinstance(said, Untrimmed) else products.get(("trim", str(said)))
    value = Method(block.name, quoted(block.head.node), **fields)
    head = Source(block.key, block.head.line, block.head.node)
    return MadeMethod(value, tuple(found.problems), head, found.fields())


@lru_cache(64)
def make_gang(block: Block, units: str) -> MadeGang:
    """The gang of a block."""
    found = gather(block.key, "gang", block.lines, units)
    if not tried(block, "rate"):
        message = f"gang {block.name} says no `rate`; its hours are not priced"
        found.problems.append(missing(block, message, "rate 62.00 per h"))
    fields: dict[str, Any] = {
        "rate": found.last("rate"),
        "takes": found.all("takes"),
        "notes": found.all("notes"),
    }
    value = Gang(block.name, quoted(block.head.node), **fields)
    head = Source(block.key, block.head.line, block.head.node)
    return MadeGang(value, tuple(found.problems), head, found.fields())


_Products = dict[tuple[str, str], Product]


def _glue(found: Gathered, products: _Products) -> Glue | None:
    said: Any = found.last("glue")
    product: Any = products.get(("adhesive", said.adhesive)) if isinstance(said, GlueLine) else None
    return Glue(product, said.bead, said.every, said.first) if product is not None else None


def _seals(found: Gathered, products: _Products) -> tuple[Seal, ...]:
    seals, sources = [], []
    for said, source in zip(found.all("seals"), found.sources.get("seals", ()), strict=True):
        assert isinstance(said, SealLine)
        product: Any = products.get(("sealant", said.sealant))
        if product is not None:
            seals.append(Seal(product, said.shape, said.a, said.b, said.places))
            sources.append(source)
    found.sources["seals"] = sources
    return tuple(seals)


def _battens(found: Gathered, products: _Products) -> tuple[Battens, ...]:
    """Both layers or none: one alone would give a wrong depth."""
    layers = []
    for said in found.all("battens"):
        assert isinstance(said, BattenLine)
        product: Any = products.get(("support", said.support))
        if product is None:
            return ()
        layers.append(Battens(product, said.every, said.direction))
    return tuple(layers)


def _fix(found: Gathered, products: _Products) -> dict[str, Any]:
    said = found.last("fix")
    product = products.get(("fixing", said.fixing)) if isinstance(said, FixLine) else None
    return {"fix": product, "fix_every": said.every if product is not None and isinstance(said, FixLine) else None}
