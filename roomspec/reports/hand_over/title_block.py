"""What every document begins with: of which job, of which date, and whether it may leave the house."""

from roomspec.reports.hand_over.given import HandOver
from roomspec.reports.paper.sheet import Facts, Part, Points, Sheet, Words
from roomspec.reports.wording import number_of


def sheet_of(given: HandOver, kind: str, facts: tuple[tuple[str, str], ...], parts: tuple[Part, ...]) -> Sheet:
    """A document of the job; `facts` stand under its name and date."""
    job = given.made.job
    about = (("Job", job.name), ("Date", given.numerals.day(job.terms.date)), *facts)
    return Sheet(
        kind=kind,
        title=job.title or job.name,
        facts=Facts(about),
        parts=(*_errors(given), *parts),
        stamp=given.stamp,
        language=given.numerals.language,
    )


def _errors(given: HandOver) -> tuple[Part, ...]:
    if not given.errors:
        return ()
    count = number_of(len(given.errors), "error")
    return (
        Part(
            "Not for issue",
            (
                Words(f"The job's text has {count}; figures go as far as it could be understood.", loud=True),
                Points(tuple(f"{f.place.path}, line {f.place.line}: {f.message}" for f in given.errors)),
            ),
        ),
    )
