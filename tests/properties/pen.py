"""A hand that writes values as text, each time in another of the ways that mean the same."""

from collections.abc import Callable, Sequence
from decimal import Decimal
from fractions import Fraction
from random import Random
from typing import TypeVar

from roomspec.model.shape import Region
from roomspec.quantities.length import FOOT, INCH, METRE, MM

SIZES = {"mm": MM, "cm": 10 * MM, "m": METRE, "in": INCH, "ft": FOOT}
FINEST = INCH // 64
GLYPHS = {Fraction(1, 2): "½", Fraction(1, 4): "¼", Fraction(3, 4): "¾", Fraction(1, 8): "⅛", Fraction(7, 8): "⅞"}

T = TypeVar("T")


class Pen:
    """Chance, and the unit of the file's bare lengths."""

    def __init__(self, seed: int, units: str) -> None:
        """The same seed writes the same text."""
        self.chance = Random(seed)
        self.units = units

    def some(self) -> bool:
        """True or False."""
        return self.chance.random() < 0.5

    def one(self, ways: Sequence[T]) -> T:
        """Any of these."""
        return self.chance.choice(ways)

    def line(self, *words: str) -> str:
        """A statement of these words; empty ones are left out."""
        return " ".join(word for word in words if word)

    def options(self, *parts: str) -> str:
        """Parts of a line whose order means nothing."""
        said = [part for part in parts if part]
        self.chance.shuffle(said)
        return " ".join(said)

    def usual(self, text: str, is_default: bool) -> str:
        """The text, or nothing where it says what holds anyhow."""
        return "" if is_default and self.some() else text

    def text(self, text: str) -> str:
        """In quotation marks."""
        return f'"{text}"'

    def titled(self, text: str) -> str:
        """A title or label: nothing where there is none."""
        return self.usual(self.text(text), not text)

    def number(self, number: Decimal | int, *units: str) -> str:
        """Digits, with noughts after the point or not, and one of these spellings of the unit."""
        digits = plain(Fraction(number))
        digits += self.one(("", "0")) if "." in digits else self.one(("", ".0", ".00"))
        return digits + (self.one(("", " ")) + self.one(units) if units else "")

    def length(self, length: int, building: bool = False) -> str:
        """A length in any unit that gives it exactly; bare only where that is no trap."""
        ways = [way for name in ("mm", "cm", "m") for way in _in_metric(abs(length), name)]
        if self.units in ("mm", "cm", "m"):
            bare = plain(Fraction(abs(length), SIZES[self.units]))
            trap = building and self.units == "mm" and "." in bare and abs(length) < 30 * MM
            ways += [] if trap else [bare] * 4
        if length % FINEST == 0:
            ways += _in_inches(abs(length))
            ways += _bare_imperial(abs(length), self.units) * 4
        return ("-" if length < 0 else "") + self.one(ways)

    def size(self, first: int, second: int, building: bool = False) -> str:
        """One length by another."""
        return f"{self.length(first, building)} {self.one('x×')} {self.length(second, building)}"

    def surveyed(self, width: int, height: int, sure: bool) -> str:
        """A width by a height, one of them or both `about` where they are not sure."""
        about = self.one([("", "")] if sure else [("about ", ""), ("", "about "), ("about ", "about ")])
        sides = (how + self.length(side, True) for how, side in zip(about, (width, height), strict=True))
        return f" {self.one('x×')} ".join(sides)

    def span(self, keyword: str, low: int | None, high: int | None) -> str:
        """`from X to Y` or `up X to Y`; nothing where it is all of the face."""
        if low is None or high is None:
            return ""
        return f"{keyword} {self.length(low, True)} to {self.length(high, True)}"

    def region(self, region: Region) -> str:
        """Its parts in either order."""
        return self.options(self.span("from", region.left, region.right), self.span("up", region.bottom, region.top))

    def merged(self, *groups: Sequence[T]) -> list[T]:
        """All lines (or blocks) in any order that keeps the order within each group; empty ones are left out."""
        rest = [[one for one in group if one] for group in groups]
        found = []
        while rest := [group for group in rest if group]:
            found.append(self.one(rest).pop(0))
        return found

    def each(self, write: Callable[["Pen", T], str], values: Sequence[T]) -> list[str]:
        """A line for each value."""
        return [write(self, value) for value in values]


def plain(number: Fraction) -> str:
    """The digits of a number that comes to an end."""
    text = f"{Decimal(number.numerator) / Decimal(number.denominator):f}"
    assert Fraction(text) == number, number
    return text.rstrip("0").rstrip(".") if "." in text else text


def _in_metric(length: int, name: str) -> list[str]:
    digits = plain(Fraction(length, SIZES[name]))
    return [f"{digits} {name}", f"{digits}{name}"]


def _mixed(inches: Fraction) -> list[str]:
    """A whole number and a fraction."""
    whole, rest = divmod(inches, 1)
    ways = [plain(inches)]
    if rest:
        ways += [f"{whole} {rest}", f"{whole}-{rest}"] if whole else [f"{rest}"]
        ways += [f"{whole or ''}{GLYPHS[rest]}"] if rest in GLYPHS else []
    return ways


def _in_inches(length: int) -> list[str]:
    """Inches, and feet and inches."""
    feet, rest = divmod(length, FOOT)
    ways = [f"{number}{mark}" for number in _mixed(Fraction(length, INCH)) for mark in (" in", '"', "″", " inches")]
    for inches in _mixed(Fraction(rest, INCH)):
        ways += [f"{feet}' {inches}\"", f"{feet} ft {inches} in", f"{feet}ft {inches}", f"{feet}′-{inches}″"]
    return ways + [f"{number} {unit}" for number in _bare_imperial(length, "ft") for unit in ("ft", "feet")]


def _bare_imperial(length: int, units: str) -> list[str]:
    """The ways of a bare length; decimal feet only where they come to whole 64ths of an inch."""
    if units == "in":
        return _mixed(Fraction(length, INCH))
    return [plain(Fraction(length, FOOT))] if units == "ft" and length % (3 * FINEST) == 0 else []
