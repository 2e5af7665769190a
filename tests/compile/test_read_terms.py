"""What a job's own lines say, value by value."""

from datetime import date
from decimal import Decimal

import pytest
from read_job import compiled, told

from roomspec.model.job import Terms
from roomspec.model.product import Price
from roomspec.model.wall import Extra
from roomspec.quantities.length import MM

GANG = "gang two\n  rate 60.00 per h\n"


@pytest.mark.parametrize(
    ("line", "field", "value"),
    [
        ("date 2026-11-25", "date", date(2026, 11, 25)),
        ("fit on 2027-03-08", "fit_on", date(2027, 3, 8)),
        ("currency GBP", "currency", "GBP"),
        ("tax 20 %", "tax", Decimal(20)),
        ("overhead 8.5 %", "overhead", Decimal("8.5")),
        ("profit 10 %", "profit", Decimal(10)),
        ("margin 12 %", "margin", Decimal(12)),
        ("contingency 2.5 %", "contingency", Decimal("2.5")),
        ("spare 5 %", "spare", Decimal(5)),
        ("measured nrm2", "measured", "nrm2"),
        ("fire england", "fire", "england"),
        ("pool level", "pool", "level"),
        ("kerf 3.2", "kerf", 3_200_000),
        ("narrowest 2 1/2 in", "narrowest", 63_500_000),
        ("shortest 0.3 m", "shortest", 300 * MM),
        ("swing 35 K", "swing", Decimal(35)),
        ("built 1962", "built", 1962),
        ("refitted 2004", "refitted", 2004),
        ("locale de_DE", "locale", "de_DE"),
    ],
)
def test_each_term_is_read(line: str, field: str, value: object) -> None:
    """One line gives one field; the others keep their defaults."""
    job = compiled(f"job j\n  {line}\n")
    assert not told(job)
    assert job.job.terms == Terms(**{field: value})  # type: ignore[arg-type]


def test_a_job_says_what_stands_beside_its_terms() -> None:
    """Title, gang, extras, assumptions, exclusions and notes."""
    text = """job j "The job"
  labour two
  extra "Skip, 6 yd" 240.00 each
  extra "Carpet" 6.5 m2 at 22.00 per m2
  extra "Cable" 20 ft at 1.00 per ft
  extra "Tiles" 70 ft2 at 4.00 per ft2
  extra "Boxes" 3 at 4.50 per pack
  assume "Power is isolated."
  exclude "New ware."
  note "Call first."
"""
    job = compiled(text + GANG).job
    assert job.title == "The job"
    assert job.gang is not None and job.gang.rate == Decimal("60.00")
    assert job.extras[:2] == (
        Extra("Skip, 6 yd", Price(Decimal("240.00"))),
        Extra("Carpet", Price(Decimal("22.00"), "m2"), Decimal("6.5"), "m2"),
    )
    assert job.extras[2] == Extra("Cable", Price(Decimal("1.00"), "ft"), Decimal("6.096"), "m")
    assert job.extras[3] == Extra("Tiles", Price(Decimal("4.00"), "ft2"), Decimal("6.5032128"), "m2")
    assert job.extras[4] == Extra("Boxes", Price(Decimal("4.50"), "pack"), Decimal(3), "pack")
    assert (job.assumptions, job.exclusions, job.notes) == (("Power is isolated.",), ("New ware.",), ("Call first.",))


@pytest.mark.parametrize(
    ("lines", "words", "message"),
    [
        ("  date 2026-02-30", "2026-02-30", "no day of the calendar"),
        ("  date 25.11.2026", "25.11.2026", "not read as a date"),
        ("  date 2026-11-25\n  fit on 2026-11-24", "fit on 2026-11-24", "before the job's date"),
        ("  profit 10 %\n  margin 12 %", "margin 12 %", "both are said"),
        ("  margin 100 %", "100 %", "leaves nothing"),
        ("  tax 120 %", "120 %", "a percentage of 120 %"),
        ("  spare -5 %", "-5 %", "a percentage of -5 %"),
        ("  kerf 30", "30", "a kerf of 30 mm cannot be"),
        ("  built 92", "92", "a year of 92"),
        ("  built 1990\n  refitted 1980", "refitted 1980", "before it was built"),
        ("  swing 400 K", "400 K", "a swing of temperature"),
    ],
)
def test_terms_that_cannot_be_are_told_at_their_words(lines: str, words: str, message: str) -> None:
    """Each is one `impossible-value` at the very words."""
    from read_job import words_at

    text = f"job j\n{lines}\n"
    (problem,) = told(compiled(text))
    assert problem.name == "impossible-value"
    assert message in problem.message
    assert words_at(problem.at, text) == words


def test_a_date_of_another_order_is_offered() -> None:
    """`25.11.2026` can only mean one day; `03/04/2026` can mean two."""
    (one,) = told(compiled("job j\n  date 25.11.2026\n"))
    (two,) = told(compiled("job j\n  date 03/04/2026\n"))
    assert [fix.edits[0].text for fix in one.fixes] == ["2026-11-25"]
    assert [fix.edits[0].text for fix in two.fixes] == ["2026-04-03", "2026-03-04"]


@pytest.mark.parametrize(
    "line",
    ["tax 20", "kerf 3 kg", 'extra "x" 6 m2 at 2.00 per m', 'extra "x" 6 at 2.00 per m2', 'extra "x" 6 kg at 2 per m'],
)
def test_a_quantity_of_another_kind_is_refused(line: str) -> None:
    """Each is one `wrong-unit`, and the line counts for nothing."""
    job = compiled(f"job j\n  {line}\n")
    (problem,) = told(job)
    assert problem.name == "wrong-unit"
    assert job.job.terms == Terms()
    assert not job.job.extras


def test_rooms_without_a_job_are_told_with_a_fix() -> None:
    """The terms are their defaults; the fix begins the file with a job."""
    job = compiled("room r\n  height 2400\n  wall a 3000\n")
    (problem,) = told(job)
    assert (problem.name, problem.at.block) == ("missing-line", "file a.room")
    assert problem.fixes[0].edits[0].text.startswith("job ")
    assert job.job.name == ""
    assert len(job.job.rooms) == 1
