"""Weight and load on the substrate, region by region, worked by hand."""

from decimal import Decimal
from fractions import Fraction

from sample_walls import battened, finish, glued, one_wall, panel, region, wall

from roomspec.model.wall import Layer, Removal, Substrate, Wall
from roomspec.takeoff.load import Load, lining_weight, loads_on

TILE, PLASTER, BOARD, MASONRY = (Layer(kind) for kind in ("tile", "plaster", "plasterboard", "masonry"))
HALF_TILED = (Substrate((PLASTER,)), Substrate((TILE, PLASTER), region(bottom=0, top=1400)))


def loads(one: Wall) -> tuple[Load, ...]:
    """The loads of a wall's only lining."""
    _, laid = one_wall(one)
    return loads_on(one, laid.walls[0].linings[0])


def test_weight_of_the_finish_polygon() -> None:
    """3000 x 2400 at 5.5 kg/m2: 7.2 m2, 39.6 kg."""
    _, laid = one_wall(wall(3000, 2400, finish(glued())))
    assert lining_weight(laid.walls[0].linings[0]) == Fraction("39.6")


def test_each_region_has_its_own_load() -> None:
    """On plaster 5.5 + 0.75 of adhesive; over tile 22 more, which is over the plaster's 20."""
    tiled, plain = loads(wall(3000, 2400, finish(glued()), substrates=HALF_TILED))
    assert (tiled.load, tiled.layer, tiled.limit) == (Decimal("28.25"), "plaster", 20)
    assert tiled.parts == (("panel", Decimal("5.5")), ("adhesive", Decimal("0.75")), ("tile", Decimal(22)))
    assert (plain.load, plain.layer, plain.limit) == (Decimal("6.25"), "plaster", 20)
    assert plain.share == Fraction(625, 2000)


def test_a_region_that_the_lining_does_not_reach_bears_nothing() -> None:
    """A lining above the tile has one load, on plaster."""
    (only,) = loads(wall(3000, 2400, finish(glued(), region=region(bottom=1400)), substrates=HALF_TILED))
    assert only.load == Decimal("6.25")


def test_a_removed_layer_no_longer_loads() -> None:
    """With the tile off, both regions carry the finish alone."""
    found = loads(wall(3000, 2400, finish(glued()), substrates=HALF_TILED, removals=(Removal("tile"),)))
    assert {load.load for load in found} == {Decimal("6.25")}


def test_a_layer_removed_in_part() -> None:
    """Tile off to 700 only: what is left of it, 700 to 1400, still loads."""
    removal = Removal("tile", region=region(bottom=0, top=700))
    found = loads(wall(3000, 2400, finish(glued()), substrates=HALF_TILED, removals=(removal,)))
    assert sorted(load.load for load in found) == [Decimal("6.25"), Decimal("6.25"), Decimal("28.25")]


def test_a_stated_layer_weight_is_used() -> None:
    """Tile of 15 kg/m2: 5.5 + 0.75 + 15."""
    heavy = (Substrate((Layer("tile", Decimal(15)), PLASTER)),)
    (only,) = loads(wall(3000, 2400, finish(glued()), substrates=heavy))
    assert only.load == Decimal("21.25")


def test_the_weakest_of_several_layers_governs() -> None:
    """Tile on a skim on plasterboard: the skim bears 28.25 of 20, the board 33.25 of 32; the skim governs."""
    stack = (Substrate((TILE, PLASTER, BOARD, Layer("timber-frame"))),)
    (only,) = loads(wall(3000, 2400, finish(glued()), substrates=stack))
    assert (only.layer, only.load) == ("plaster", Decimal("28.25"))


def test_no_published_limit() -> None:
    """Tile on masonry: the masonry carries all 28.25, and no limit is published."""
    (only,) = loads(wall(3000, 2400, finish(glued()), substrates=(Substrate((TILE, MASONRY)),)))
    assert (only.layer, only.load, only.limit, only.share) == ("masonry", Decimal("28.25"), None, 0)


def test_a_screwed_lining_hangs_on_no_layer() -> None:
    """On battens: 5.5, no layer, no limit."""
    (only,) = {(load.load, load.layer) for load in loads(wall(3000, 2400, finish(battened()), substrates=HALF_TILED))}
    assert only == (Decimal("5.5"), None)


def test_without_a_weight_there_is_no_load() -> None:
    """A product that states no weight has neither weight nor load."""
    one = wall(3000, 2400, finish(glued(), laid=panel(weighs=None)))
    _, laid = one_wall(one)
    assert lining_weight(laid.walls[0].linings[0]) is None
    assert loads_on(one, laid.walls[0].linings[0]) == ()
