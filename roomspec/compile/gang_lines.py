"""The lines of a gang: its rate, and the hours that each task takes."""

from decimal import Decimal

from roomspec.compile.amounts import MOST_MONEY, number_in, sound, within
from roomspec.compile.parts import every_word, has, quoted, word
from roomspec.compile.product_lines import note
from roomspec.compile.reading import Fact, Line, Reader, complain
from roomspec.model.method import Takes
from roomspec.syntax.quantity import read_labour
from roomspec.syntax.tree import Node, Word

MEASURED_IN = {
    "panels": ("m2", "each"),
    "sheets": ("m2",),
    "trims": ("m", "each"),
    "battens": ("m", "each"),
    "seals": ("m",),
    "mitres": ("each", "m"),
    "cut-outs": ("each",),
    "openings": ("each",),
    "boxing": ("each",),
    "rooms": ("each",),
}
"""What the take-off counts each task in, the usual first; what is removed is counted as it is surveyed."""


def _rate(line: Line) -> tuple[Fact, ...]:
    value = number_in(line, word(line.node, "MONEY"), "MONEY", "a rate", 0, MOST_MONEY)
    return () if value is None else (Fact("rate", value),)


def _takes(line: Line) -> tuple[Fact, ...]:
    found, task = word(line.node, "LABOUR"), line.part("task")
    read = sound(line, found, read_labour(found.text)) if found is not None else None
    if found is None or read is None or task is None:
        return ()
    hours, unit = read
    each = has(line.node, "each")
    if each and unit:
        complain(line, "wrong-unit", f"{found.text} each says two things", found, "write `0.15 h each` or `0.30 h/m2`")
        return ()
    if within(line, found, hours, "a labour constant", Decimal(0), 1000) is None:
        return ()
    what, where = _task(task)
    counted = MEASURED_IN.get(what, ())
    if counted and (unit or "each") not in counted:
        _not_counted_so(line, found, unit or "each", what, counted)
        return ()
    return (Fact("takes", Takes(hours, unit or "each", what, where)),)


def _not_counted_so(line: Line, found: Word, unit: str, what: str, counted: tuple[str, ...]) -> None:
    """Only a length and an area taken for one another are mended: how many make a metre nobody can say here."""
    by = {"m2": "area", "m": "length", "each": "number"}
    ways = " or ".join(by[way] for way in counted)
    pair = counted[0] != "each" and unit != "each"
    right = found.text.removesuffix("2") if counted[0] == "m" else f"{found.text}2"
    help_ = f"give the hours as `{right if pair else _usual(counted[0])}`"
    message = f"the task `{what}` goes by {ways}; hours by {by[unit]} would never be used"
    complain(line, "wrong-unit", message, found, help_, (right,) if pair else ())


def _usual(unit: str) -> str:
    return "0.30 h each" if unit == "each" else f"0.30 h/{unit}"


def _task(task: Node) -> tuple[str, str | None]:
    """The task and where or what: (`panels`, `stairs`), (`removing`, `tile`), (`trims`, None)."""
    found = tuple(every_word(task))
    what = found[0].text
    where = next((w.text for w in found[1:] if w.text not in ("on", "in")), None)
    return what, quoted(task) or where


GANG: dict[str, Reader] = {"rate": _rate, "takes": _takes, "note": note}
