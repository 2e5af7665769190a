"""A file in other units: every bare length written anew, none of them changed."""

from collections.abc import Iterator
from fractions import Fraction

from roomspec.analysis.found import FoundEdit
from roomspec.quantities.length import FOOT, INCH, METRE, MM
from roomspec.syntax.line import Line, read_line
from roomspec.syntax.numerals import Trap, mixed, take_apart
from roomspec.syntax.quantity import FINEST, feet_and_inches, read_length
from roomspec.syntax.statements import words_of
from roomspec_lsp.features.mends import REWRITE, Mend
from roomspec_lsp.features.view import View

SIZES = {"mm": MM, "cm": 10 * MM, "m": METRE, "in": INCH, "ft": FOOT}
"""Nanometres in each unit that a file may be written in."""


def conversions(view: View) -> Iterator[Mend]:
    """The file in each other unit."""
    for target in SIZES:
        if target != view.tree.units:
            yield Mend(f"write this file in {target}", REWRITE, tuple(_converted(view, target)))


def written(length: int, unit: str) -> str | None:
    """A length as a bare number of a unit; None where it is not exact, or would be taken for another."""
    value = Fraction(length, SIZES[unit])
    if value.denominator == 1:
        return str(value)
    if unit in ("in", "ft"):
        return mixed(value) if unit == "in" and FINEST % value.denominator == 0 else None
    text = f"{float(value):.9f}".rstrip("0")
    return text if Fraction(text) == value and unit != "mm" and len(text) < 10 else None


def in_other_units(length: int) -> tuple[str, ...]:
    """The length in millimetres, metres, and feet and inches to the nearest sixteenth."""
    sixteenths = Fraction(round(Fraction(length * 16, INCH)), 16)
    inches = feet_and_inches(sixteenths) if sixteenths >= 12 else f'{mixed(sixteenths)}"'
    nearly = "" if sixteenths * INCH == length else "about "
    return f"{length / MM:.6g} mm", f"{length / METRE:.7g} m", f"{nearly}{inches}"


def _converted(view: View, target: str) -> Iterator[FoundEdit]:
    heading = f"units {target}\n"
    own = False
    for number in range(len(view.lines.starts)):
        read = read_line(view.lines.line(number))
        if not isinstance(read, Line):
            continue
        if read.node.kind == "units_in":
            own = True
            word = words_of(read.node)[1]
            yield FoundEdit(view.place(number, word.start, word.end), target)
            continue
        for word in words_of(read.node):
            taken = take_apart(word.text) if word.type == "LENGTH" else None
            if taken is None or taken.unit is not None:
                continue
            length = read_length(word.text, view.tree.units)
            if isinstance(length, Trap):
                continue
            text = written(length, target)
            unit = "" if text is not None else f" {view.tree.units}"
            yield FoundEdit(view.place(number, word.start, word.end), text or f"{word.text}{unit}")
    if not own:
        yield view.insert(0, heading)
