"""The library's own units, against pint's default registry."""

import pint
import pytest

from roomspec.quantities import pint_edge
from roomspec.quantities.length import INCH, mm

UNITS = ["mm", "cm", "m", "in", "ft", "yard", "kg", "lb", "hour", "minute", "litre", "millilitre"]


@pytest.mark.parametrize("unit", UNITS)
def test_units_are_as_pint_has_them(unit):
    """Each unit of the small registry is what pint's default registry says it is."""
    ours = pint_edge.registry()(f"1 {unit}").to_base_units()
    base = {"millimetre": "mm", "kilogram": "kg", "hour": "hour", "millimetre ** 3": "mm ** 3"}
    theirs = pint.UnitRegistry()(f"1 {unit}").to(base[f"{ours.units:D}"])
    assert ours.magnitude == pytest.approx(theirs.magnitude, rel=1e-15)


@pytest.mark.parametrize(("unit", "spelled"), [("m2", "m**2"), ("ft2", "ft**2")])
def test_areas_are_as_pint_has_them(unit, spelled):
    """Square units too."""
    theirs = pint.UnitRegistry()(f"1 {spelled}").to("mm**2").magnitude
    assert pint_edge.registry()(f"1 {unit}").to("mm**2").magnitude == pytest.approx(theirs, rel=1e-15)


def test_whole_millimetres_stay_whole():
    """A length is a whole number of millimetres where it is one, and prints with its unit."""
    assert pint_edge.length(mm(2410)).magnitude == 2410
    assert isinstance(pint_edge.length(mm(2410)).magnitude, int)
    assert str(pint_edge.length(mm(2410))) == "2410 mm"
    assert pint_edge.length(INCH).to("in").magnitude == pytest.approx(1, rel=1e-15)


def test_loads_times_areas_are_weights():
    """Units multiply."""
    from decimal import Decimal

    weight = pint_edge.load(Decimal("5.5")) * pint_edge.area(5 * mm(1000) ** 2)
    assert weight.to("kg").magnitude == 27.5
