"""Figures and dates of documents: the house's way, or that of the job's `locale` (Unicode CLDR, by Babel).

The house's way: a decimal point, thousands set off by a space, dates by ISO 8601. Text stays English.
"""

import re
from datetime import date
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache
from typing import TYPE_CHECKING

from msgspec import Struct

from roomspec.quantities.in_units import figure_text, is_imperial, pounds
from roomspec.quantities.money import cent_of
from roomspec.reports.figures import area_figure, at_least_places, length_figure, quantity_text, size_figure
from roomspec.reports.number import Number
from roomspec.reports.wording import money_text, number_text

if TYPE_CHECKING:
    from babel import Locale
    from babel.numbers import NumberPattern

_FIGURE = re.compile(r"-?[0-9][0-9 ]*(?:\.[0-9]+)?")
_QUOTED = re.compile(r'("[^"]*")')
# A decimal that a sentence of ours counts something by; never a room's name such as 2.02.
_COUNTED = re.compile(r"(?<![\w.])[0-9]+\.[0-9]+(?= (?:mm|m2|m|kg|lb|ft2|ft|h)\b)")
_DECIMAL = re.compile(r"(?<![\w.])[0-9]+\.[0-9]+(?![\w.])")


class Numerals(Struct, frozen=True):
    """How a job's documents write figures; `locale` is one that Babel knows, or "" for the house's way."""

    units: str = "mm"
    currency: str = "EUR"
    locale: str = ""

    def number(self, value: Number | Decimal) -> str:
        """Without trailing zeros: `2603.5`."""
        return self.figure(number_text(value))

    def money(self, amount: Decimal | None) -> str:
        """With its cents and without its currency; "" for none."""
        return "" if amount is None else self.figure(money_text(amount))

    def signed(self, amount: Decimal) -> str:
        """A difference: `+358.11`, `-20.00`, `0.00`."""
        return f"{'+' if amount > 0 else '-' if amount < 0 else ''}{self.money(abs(amount))}"

    def price(self, amount: Decimal) -> str:
        """A price for one: the currency's decimals, two more where it is finer than the coin."""
        coins = max(0, -int(cent_of(self.currency).as_tuple().exponent))
        return self.figure(at_least_places(amount, coins, coins + 2))

    def percent(self, value: Decimal) -> str:
        """`7.5 %`"""
        return f"{self.number(value)} %"

    def size(self, length: int) -> str:
        """A size as on a drawing: millimetres to the tenth, or feet and inches."""
        return self.figure(figure_text(length, self.units))

    def size_of_mm(self, mm: Number) -> str:
        """A size given as the JSON has it."""
        return self.figure(size_figure(mm, self.units))

    def length(self, length: int) -> str:
        """A size with its unit."""
        return self.size(length) if is_imperial(self.units) else f"{self.size(length)} mm"

    def area(self, m2: Number) -> str:
        """To the hundredth of the job's unit."""
        return self.figure(area_figure(m2, self.units))

    def run(self, m: Number) -> str:
        """A quantity of length, to the hundredth of the job's unit."""
        return self.figure(length_figure(m, self.units))

    def quantity(self, value: Number, unit: str) -> str:
        """With its unit: `12.40 m2`, `5`."""
        figure, _, name = quantity_text(value, unit, self.units).partition(" ")
        return f"{self.figure(figure)} {name}".rstrip()

    def weight(self, kilograms: Fraction | Decimal) -> str:
        """To the tenth of a kilogram or a pound, halves to even: `18.2 kg`."""
        imperial = is_imperial(self.units)
        exact = pounds(kilograms) if imperial else Fraction(kilograms)
        return f"{self.number(float(round(exact, 1)))} {'lb' if imperial else 'kg'}"

    def day(self, day: date | None, otherwise: str = "not given") -> str:
        """A date, or what to say where there is none."""
        if day is None:
            return otherwise
        if not self.locale:
            return day.isoformat()
        from babel.dates import format_date

        return str(format_date(day, "medium", _babel(self.locale)))

    def figure(self, text: str) -> str:
        """A figure of the house, its decimals as many as they are, in the locale's way; anything else as it is."""
        if not self.locale or not _FIGURE.fullmatch(text):
            return text
        value = Decimal(text.replace(" ", ""))
        places = max(0, -int(value.as_tuple().exponent))
        # A size of four digits is written without a mark in the house, so it is in the locale.
        return str(_pattern(self.locale, places).apply(value, _babel(self.locale), group_separator=" " in text))

    def sentence(self, text: str) -> str:
        """A sentence of ours, what it counts in the locale's way; what stands in quotation marks is left alone."""
        return self._outside_quotes(text, _COUNTED)

    def step(self, text: str) -> str:
        """A step of measuring, `6.200 x 0.980 = 6.076 m2`: every decimal outside quotation marks is a figure."""
        return self._outside_quotes(text, _DECIMAL)

    def _outside_quotes(self, text: str, figures: re.Pattern[str]) -> str:
        if not self.locale:
            return text
        parts = _QUOTED.split(text)
        return "".join(
            part if at % 2 else figures.sub(lambda found: self.figure(found[0]), part) for at, part in enumerate(parts)
        )

    @property
    def language(self) -> str:
        """The BCP 47 tag of the text: English, as the locale writes it where that is an English one."""
        return self.locale.replace("_", "-") if self.locale.startswith("en") else "en"


def numerals_of(units: str, currency: str, locale: str | None) -> Numerals:
    """The numerals of a job; a locale that nobody knows leaves the house's way."""
    return Numerals(units, currency, locale if locale and known_locale(locale) else "")


@lru_cache
def known_locale(name: str) -> bool:
    """True where CLDR has the locale: `en_GB`, `de-AT`."""
    from babel import UnknownLocaleError

    try:
        _babel(name)
    except (UnknownLocaleError, ValueError):
        return False
    return True


@lru_cache
def _pattern(name: str, places: int) -> "NumberPattern":
    """The locale's way with decimals, exactly so many."""
    from babel.numbers import parse_pattern

    pattern = parse_pattern(_babel(name).decimal_formats[None].pattern)
    pattern.frac_prec = places, places
    return pattern


@lru_cache
def _babel(name: str) -> "Locale":
    from babel import Locale

    return Locale.parse(name.replace("-", "_"))
