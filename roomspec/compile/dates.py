"""Dates of a statement: year-month-day, else a problem that offers what can be meant."""

import datetime
import re

from roomspec.compile.parts import word
from roomspec.compile.reading import Line, complain


def date(line: Line) -> datetime.date | None:
    """The statement's date, year-month-day."""
    found = word(line.node, "DATE")
    if found is None:
        return None
    if re.fullmatch(r"\d{4}-\d{2}-\d{2}", found.text):
        try:
            return datetime.date.fromisoformat(found.text)
        except ValueError:
            complain(line, "impossible-value", f"{found.text} is no day of the calendar", found)
            return None
    complain(
        line,
        "impossible-value",
        f"{found.text} is not read as a date",
        found,
        "write year-month-day: 2026-11-25",
        _as_iso(found.text),
    )
    return None


def _as_iso(text: str) -> tuple[str, ...]:
    """The ways that day.month.year or month/day/year can be meant."""
    parts = [int(part) for part in re.split(r"[./-]", text) if part.isdigit() and len(part) <= 4]
    if len(parts) != 3:
        return ()
    year_first = parts[0] > 31
    orders = [parts] if year_first else [[parts[2], parts[1], parts[0]], [parts[2], parts[0], parts[1]]]
    found = []
    for year, month, day in orders:
        if 1900 <= year <= 2200 and 1 <= month <= 12 and 1 <= day <= 31:
            found.append(f"{year:04}-{month:02}-{day:02}")
    return tuple(dict.fromkeys(found))
