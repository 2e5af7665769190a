"""The weight of a lining and the load that each layer behind it carries.

A glued lining hangs on the layers: on each one weighs the finish, its adhesive, and every layer in front. A screwed
one hangs on what its screws reach, so no layer's limit applies to it.
"""

from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache

from msgspec import Struct

from roomspec.layout.laid import Lining
from roomspec.model.method import Method
from roomspec.model.product import Panel
from roomspec.model.wall import Layer, Removal, Substrate, Wall
from roomspec.quantities.area import SQUARE_METRE
from roomspec.takeoff.adhesive import more_on, spread
from roomspec.takeoff.clip import Box
from roomspec.takeoff.face import Face
from roomspec.takeoff.lines import on_wall
from roomspec.takeoff.parts import piece_area
from roomspec.takeoff.substrates import stacks_of

LIMITS = {
    "plaster": Decimal(20),
    "plasterboard": Decimal(32),
    "plywood": Decimal(30),
    "gypsum-fibre": Decimal(40),
    "cement-board": Decimal(50),
}
"""kg/m2 of finish with its adhesive: BS 5385-1 as trade pages quote it, the last two a guide.

No limit is published for masonry, concrete, tile, stone or a frame.
"""
LAYER_WEIGHTS = {
    "tile": Decimal(22),
    "stone": Decimal(27),
    "plaster": Decimal(5),
    "plasterboard": Decimal(10),
    "plywood": Decimal(8),
    "gypsum-fibre": Decimal(15),
    "cement-board": Decimal(16),
}
"""kg/m2 of a layer whose weight is not stated: tile four times a 5.5 kg/m2 panel, stone 10 mm, a
3 mm skim of plaster (where plaster lies on a wall it weighs on nothing with a limit), boards of 12 mm. Common practice,
no source."""
ADHESIVE_DENSITY = Fraction(3, 2)
"""Kilograms in a litre of panel adhesive: common practice, no source."""


class Load(Struct, frozen=True, cache_hash=True):
    """What weighs on one layer, kg/m2; the layer that is used most of those in `box`.

    Where no layer has a published limit it is the innermost, which carries all others, and `limit` is None. `layer` is
    None where the lining is screwed or no substrate is stated. `parts` names what the load is made of, in kg/m2.
    """

    box: Box
    load: Decimal
    layer: str | None
    limit: Decimal | None
    parts: tuple[tuple[str, Decimal], ...]
    share: Fraction
    """Load over limit; 0 where there is no limit."""


_OnLayers = tuple[Decimal, str | None, Decimal | None, tuple[tuple[str, Decimal], ...], Fraction]
"""A Load without its place."""


def lining_weight(lining: Lining) -> Fraction | None:
    """Kilograms of panel in a lining; None where the product's weight is not stated."""
    weighs = lining.panel.weighs
    return None if weighs is None else lining.area / SQUARE_METRE * Fraction(weighs)


def loads_on(face: Wall, lining: Lining) -> tuple[Load, ...]:
    """The load on each part of the substrate that the lining covers, heaviest use first; () without a stated weight."""
    pieces = on_wall(lining)
    return _loads(
        face, lining.panel, lining.method, lambda box: any(piece_area(piece, box, face.floor) for piece in pieces)
    )


def loads_under(face: Face, panel: Panel, method: Method, covered: Box) -> tuple[Load, ...]:
    """The same before anything is laid: `covered` is the panels' region."""
    return _loads(face, panel, method, lambda box: box.common(covered) is not None)


def _loads(face: Face, panel: Panel, method: Method, covers: Callable[[Box], bool]) -> tuple[Load, ...]:
    loads = [load for load in loads_behind(face.substrates, face.removals, panel, method) if covers(load.box)]
    return tuple(sorted(loads, key=lambda load: (-load.share, -load.load)) if len(loads) > 1 else loads)


@lru_cache(2048)
def loads_behind(
    substrates: tuple[Substrate, ...], removals: tuple[Removal, ...], panel: Panel, method: Method
) -> tuple[Load, ...]:
    """The load on each part of a face with these layers, wherever the panels are; () without a stated weight."""
    if panel.weighs is None:
        return ()
    return tuple(
        Load(part.box, *_load_on(panel.weighs, method, part.value)) for part in stacks_of(substrates, removals)
    )


def governing_load(face: Wall, lining: Lining) -> Load | None:
    """The load that comes nearest to its limit, or goes furthest beyond it; None without a stated weight."""
    return next(iter(loads_on(face, lining)), None)


def carried(finish: Decimal, layers: tuple[Layer, ...]) -> tuple[tuple[str, Decimal, Decimal | None], ...]:
    """For each layer, outermost first: its name, the load on it and its limit, under `finish` kg/m2."""
    result = []
    load = finish
    for layer in layers:
        result.append((layer.kind, load, LIMITS.get(layer.kind)))
        load += _weight(layer)
    return tuple(result)


def _weight(layer: Layer) -> Decimal:
    return layer.weighs if layer.weighs is not None else LAYER_WEIGHTS.get(layer.kind, Decimal(0))


def _finish_parts(weighs: Decimal, method: Method, layers: tuple[Layer, ...]) -> tuple[tuple[str, Decimal], ...]:
    parts = [("panel", weighs)]
    if method.glue is not None:
        more = 1 + more_on(method, layers[0].kind if layers else "")
        hundredths = round(spread(method.glue) * more / 1000 * ADHESIVE_DENSITY * 100)
        parts.append(("adhesive", Decimal(hundredths) / 100))
    return tuple(parts)


@lru_cache(2048)
def _load_on(weighs: Decimal, method: Method, layers: tuple[Layer, ...]) -> _OnLayers:
    finish = _finish_parts(weighs, method, layers)
    load = sum((weight for _, weight in finish), start=Decimal(0))
    hangs = method.glue is not None and method.screw is None and not method.battens
    stacked = carried(load, layers) if hangs else ()
    if not stacked:
        return load, None, None, finish, Fraction(0)
    limited = [at for at, (_, _, limit) in enumerate(stacked) if limit]
    worst = max(limited, key=lambda at: _share(*stacked[at][1:]), default=len(stacked) - 1)
    name, on_it, limit = stacked[worst]
    parts = finish + tuple((layer.kind, _weight(layer)) for layer in layers[:worst])
    return on_it, name, limit, parts, _share(on_it, limit)


def _share(load: Decimal, limit: Decimal | None) -> Fraction:
    return Fraction(load) / Fraction(limit) if limit else Fraction(0)
