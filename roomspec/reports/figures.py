"""Figures of a report in the job's units: metric as they are, or feet, inches and pounds for a job in these.

They take the numbers of the JSON: millimetres, square metres, metres, kg/m2.
"""

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

from roomspec.quantities.area import SQUARE_METRE
from roomspec.quantities.in_units import feet, feet_text, is_imperial, pounds_on_a_square_foot, square_feet
from roomspec.quantities.length import METRE, MM
from roomspec.reports.number import Number
from roomspec.reports.wording import number_text

_PER = {"m2": ("ft2", Decimal("0.09290304")), "m": ("ft", Decimal("0.3048"))}
"""A metric unit -> the imperial one that stands for it, and how much of it that is: exact, international foot, 1959."""


def unit_name(metric: str, units: str) -> str:
    """What `m2`, `m` or `kg/m2` is called in a job of these units."""
    if not is_imperial(units):
        return metric
    return "lb/ft2" if metric == "kg/m2" else _PER.get(metric, (metric,))[0]


def size_figure(mm: Number, units: str) -> str:
    """A size without its unit on a drawing: `2410`, or `7' 10 7/8"`."""
    return feet_text(round(Fraction(mm) * MM)) if is_imperial(units) else number_text(round(mm, 1))


def area_figure(m2: Number, units: str) -> str:
    """An area to the hundredth of the job's unit."""
    return str(square_feet(Fraction(m2) * SQUARE_METRE)) if is_imperial(units) else f"{m2:.2f}"


def length_figure(m: Number, units: str) -> str:
    """A quantity of length to the hundredth of the job's unit."""
    return str(feet(Fraction(m) * METRE)) if is_imperial(units) else f"{m:.2f}"


def load_figure(kg_m2: Number, units: str) -> str:
    """A load: tenths of kg/m2, hundredths of lb/ft2."""
    return f"{float(pounds_on_a_square_foot(Fraction(kg_m2))):.2f}" if is_imperial(units) else f"{kg_m2:.1f}"


def limit_figure(kg_m2: Number, units: str) -> str:
    """The most that a layer bears, as published, without trailing zeros."""
    return f"{float(pounds_on_a_square_foot(Fraction(kg_m2))):.3g}" if is_imperial(units) else f"{kg_m2:g}"


def quantity_text(quantity: Number, unit: str, units: str) -> str:
    """A quantity of work with its unit: `12.40 m2`, `133.47 ft2`, `5`."""
    if unit == "each":
        return number_text(quantity)
    figure = {"m2": area_figure, "m": length_figure}.get(unit)
    return f"{figure(quantity, units) if figure else f'{quantity:.2f}'} {unit_name(unit, units)}"


def per_unit(amount: Number | Decimal, per: str, units: str) -> tuple[Decimal, str]:
    """What one metric unit takes or costs, as what one of the job's own does: (0.0300, `ft2`)."""
    exact = amount if isinstance(amount, Decimal) else Decimal(str(amount))
    name, size = _PER.get(per, (per, Decimal(1))) if is_imperial(units) else (per, Decimal(1))
    return exact * size, name


def at_least_places(value: Decimal, least: int, most: int) -> str:
    """With `least` decimals, more where it has more, at most `most`, halves up; thousands set off by a space."""
    whole, _, decimals = f"{value.quantize(Decimal(1).scaleb(-most), ROUND_HALF_UP):,f}".partition(".")
    kept = decimals.rstrip("0").ljust(least, "0")
    return whole.replace(",", " ") + (f".{kept}" if kept else "")


def in_measure(quantity: Number, per: str) -> Decimal:
    """A metric quantity as a price per ft or ft2 counts it, to three decimals, halves up; others as they are."""
    size = next((size for name, size in _PER.values() if name == per), Decimal(1))
    return (Decimal(str(quantity)) / size).quantize(Decimal("0.001"), ROUND_HALF_UP)
