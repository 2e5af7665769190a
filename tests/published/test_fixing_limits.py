"""Published limits of fixing that the checks use, each at its edge."""

from datetime import date
from decimal import Decimal

import pytest
from sample_walls import panel

from roomspec.analysis.session import Session
from roomspec.analysis.world import MemoryWorld
from roomspec.checks.rules.fixing.battens_too_far_apart import widest_spacing
from roomspec.checks.rules.fixing.box_not_flush import SET_BACK
from roomspec.checks.rules.fixing.nothing_behind_fixture import ON_STUDS_OVER
from roomspec.checks.rules.fixing.screw_too_short import needed
from roomspec.model.product import Fixing
from roomspec.quantities.length import INCH, MM, mm

JOB = """\
job test
room 1
  height 2400
  wall a 3000
    on      {layer}
    surface sound
    finish  slab by thin-glue vertical
panel slab
  length 2600
  cover  250
  thick  10
  weighs {weight} kg/m2
  price  31.50 each
adhesive grab
  tube  290 ml
  price 6.20 each
method thin-glue
  glue grab bead 1 every 1000
"""
"""The adhesive weighs nothing to the hundredth, so that `weight` is the whole load."""


def heard(layer: str, weight: str) -> list[str]:
    """The severities of what is said about a load on a layer."""
    world = MemoryWorld({"job.room": JOB.format(layer=layer, weight=weight)}, date(2026, 11, 25))
    snapshot = Session(world).snapshot("job.room")
    assert snapshot is not None
    return [found.severity for found in snapshot.findings if found.name == "too-heavy-for-wall"]


@pytest.mark.parametrize(("diameter", "depth"), [("4", 24), ("4.5", 27), ("5", 30)])
def test_penetration_is_six_diameters(diameter: str, depth: int) -> None:
    """B-13: EN 1995-1-1 8.7.2(3), point-side threaded penetration of at least 6 d."""
    assert needed(Fixing("screw", "", mm(diameter), 40 * MM)) == depth * MM


@pytest.mark.parametrize(
    ("layer", "limit"),
    [("plaster", "20"), ("plasterboard", "32"), ("plywood", "30"), ("gypsum-fibre", "40"), ("cement-board", "50")],
)
def test_the_limit_of_each_layer_at_its_edge(layer: str, limit: str) -> None:
    """W-01 to W-05: BS 5385-1 as trade pages quote it, the last two a guide. Exactly on it carries."""
    assert heard(layer, str(Decimal(limit) - Decimal("0.01"))) == ["hint"]
    assert heard(layer, limit) == ["hint"]
    assert heard(layer, str(Decimal(limit) + Decimal("0.01"))) == ["error"]


@pytest.mark.parametrize(("layer", "share"), [("plaster", "14"), ("plasterboard", "22.4"), ("plywood", "21")])
def test_seventy_per_cent_at_its_edge(layer: str, share: str) -> None:
    """W-10: BS 5385-1:2018, over 70 % of what the background carries is bedded solid."""
    assert heard(layer, share) == []
    assert heard(layer, str(Decimal(share) + Decimal("0.01"))) == ["hint"]


def test_porcelain_fails_plaster_and_passes_plasterboard() -> None:
    """Check case: porcelain 10 mm (23, W-22) and 5 of adhesive (W-25) is 28: over 20, under 32."""
    assert heard("plaster", "28") == ["error"]
    assert heard("plasterboard", "28") == ["hint"]


def test_thin_ceramic_passes_plaster_but_is_bedded_solid() -> None:
    """Check case: ceramic 8 mm with its adhesive is 18.5, 93 % of 20; porcelain 9 mm is 18, 90 % (W-10's example)."""
    assert heard("plaster", "18.5") == ["hint"]
    assert heard("plaster", "18") == ["hint"]


def test_nothing_is_published_for_masonry_and_old_tile() -> None:
    """W-08, W-09: whatever hangs there."""
    assert heard("masonry", "90") == heard("tile over masonry", "90") == []


@pytest.mark.parametrize(("thick", "published"), [("9.5", 450), ("10", 450), ("12.5", 600), ("18", 600)])
def test_battens_stand_no_further_apart_than_boards_are_let(thick: str, published: int) -> None:
    """B-01: 400 to 450 under boarding; B-10: NHBC 6.3.12 (BS 8212), 9.5 mm at 450 at most, 12.5 mm at 600."""
    assert widest_spacing(panel(thick=mm(thick))) <= published * MM


def test_battens_behind_a_panel_of_ten() -> None:
    """B-01: 400 under 10 mm; what the maker says goes before it."""
    assert widest_spacing(panel()) == 400 * MM
    assert widest_spacing(panel(supports=450 * MM)) == 450 * MM


def test_fifty_pounds_go_into_studs() -> None:
    """H-13: what weighs over 50 lb (0.45359237 kg each) goes into studs, to the tenth of a kilogram."""
    assert round(50 * Decimal("0.45359237"), 1) == ON_STUDS_OVER


def test_a_box_is_left_a_quarter_inch_behind_at_most() -> None:
    """US wiring practice, 1/4 in, from memory; rounded down to the millimetre."""
    assert SET_BACK == INCH // 4 // MM * MM
