"""Weight limits of substrates: BS 5385-1 as trade pages quote it, and common weights."""

from decimal import Decimal

import pytest
from sample_walls import finish, glued, one_wall, panel, wall

from roomspec.model.wall import Layer
from roomspec.quantities.length import MM
from roomspec.takeoff.load import LIMITS, carried, governing_load
from roomspec.takeoff.sections import section_area, volume


@pytest.mark.parametrize(
    ("layer", "limit"),
    [("plaster", 20), ("plasterboard", 32), ("plywood", 30), ("gypsum-fibre", 40), ("cement-board", 50)],
)
def test_published_limits(layer: str, limit: int) -> None:
    """W-01 to W-05, kg/m2 for the finish with its adhesive; the last two are a guide."""
    assert LIMITS[layer] == limit


@pytest.mark.parametrize("layer", ["masonry", "concrete", "tile", "stone", "timber-frame", "metal-frame"])
def test_no_limit_is_published(layer: str) -> None:
    """W-08, W-09: none for masonry, render, old tile or a frame."""
    assert layer not in LIMITS


@pytest.mark.parametrize(("finish_weight", "layer", "passes"), [(28, "plaster", False), (28, "plasterboard", True)])
def test_porcelain(finish_weight: int, layer: str, passes: bool) -> None:
    """Check case: porcelain 10 mm (23, W-22) with 5 of adhesive (W-25) fails plaster and passes plasterboard."""
    ((_, load, limit),) = carried(Decimal(finish_weight), (Layer(layer),))
    assert limit is not None
    assert (load <= limit) == passes


def test_thin_ceramic_on_plaster() -> None:
    """Check case: ceramic 8 mm, about 13.5, with 5 of adhesive takes 93 per cent of plaster; over 70 per cent, W-10."""
    ((_, load, limit),) = carried(Decimal("18.5"), (Layer("plaster"),))
    assert limit is not None
    assert round(load / limit * 100) in (92, 93)
    assert load / limit > Decimal("0.7")


def test_weakest_layer_governs() -> None:
    """Section 2: a panel of 5.5 over old tile (22: common practice, no source) is 27.5 on the plaster that takes 20."""
    tile, plaster, _ = carried(Decimal("5.5"), (Layer("tile"), Layer("plaster"), Layer("masonry")))
    assert tile == ("tile", Decimal("5.5"), None)
    assert plaster == ("plaster", Decimal("27.5"), Decimal(20))


def test_a_lining_with_its_adhesive() -> None:
    """A bead of 8 every 100 is 502.65 ml/m2 (6.3), 0.75 kg at 1.5 kg to the litre (common practice, no source)."""
    one = wall(3000, 2400, finish(glued(), laid=panel(weighs=Decimal("16.5"))), substrates=())
    _, laid = one_wall(one)
    load = governing_load(one, laid.walls[0].linings[0])
    assert load is not None
    assert volume(section_area("bead", 8 * MM), 10 * 10**9) == pytest.approx(502.65, abs=0.01)
    assert load.load == Decimal("17.25")
