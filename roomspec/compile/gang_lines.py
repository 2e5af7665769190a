"""The lines of a gang: its rate, and the hours that each task takes."""

from decimal import Decimal

from roomspec.compile.amounts import MOST_MONEY, number_in, sound, within
from roomspec.compile.parts import child, every_word, has, quoted, word
from roomspec.compile.product_lines import note
from roomspec.compile.reading import Fact, Line, Reader, complain
from roomspec.model.method import Takes
from roomspec.syntax.quantity import read_labour
from roomspec.syntax.tree import Node


def _rate(line: Line) -> tuple[Fact, ...]:
    value = number_in(line, word(line.node, "MONEY"), "MONEY", "a rate", 0, MOST_MONEY)
    return () if value is None else (Fact("rate", value),)


def _takes(line: Line) -> tuple[Fact, ...]:
    found, task = word(line.node, "LABOUR"), child(line.node, "task")
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
    return (Fact("takes", Takes(hours, unit or "each", what, where)),)


def _task(task: Node) -> tuple[str, str | None]:
    """The task and where or what: (`panels`, `stairs`), (`removing`, `tile`), (`trims`, None)."""
    found = tuple(every_word(task))
    what = found[0].text
    where = next((w.text for w in found[1:] if w.text not in ("on", "in")), None)
    return what, quoted(task) or where


GANG: dict[str, Reader] = {"rate": _rate, "takes": _takes, "note": note}
