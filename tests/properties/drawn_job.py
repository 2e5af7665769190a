"""A whole job at random: its terms, its wares, its rooms."""

from drawn_faces import extras
from drawn_rooms import rooms
from drawn_values import HEIGHT, MM, NAMES, NOTES, SMALL, TITLES, few, lengths, numbers
from drawn_wares import DATES, Wares, wares
from hypothesis import strategies as st

from roomspec.model.job import Job, Terms

CURRENCIES, LOCALES = st.sampled_from(("EUR", "GBP", "JPY")), st.sampled_from((None, "en", "en_GB", "de-AT"))
PERCENT = numbers(0, 100)


@st.composite
def terms(draw: st.DrawFn) -> Terms:
    """Terms that can hold together: dates and years in order, profit or margin."""
    days = sorted((draw(DATES), draw(DATES)))
    years = sorted((draw(st.integers(1000, 2200)), draw(st.integers(1000, 2200))))
    profit, margin = draw(
        st.just((None, None)) | st.tuples(numbers(0, 1000), st.none()) | st.tuples(st.none(), numbers(0, "99.99"))
    )
    return Terms(
        draw(CURRENCIES),
        draw(st.sampled_from((None, days[0]))),
        draw(st.sampled_from((None, days[1]))),
        draw(PERCENT),
        draw(numbers(0, 1000)),
        profit,
        margin,
        draw(PERCENT),
        draw(PERCENT),
        draw(st.sampled_from(("net", "nrm2", "vob", "smm7", "is1200"))),
        draw(st.sampled_from((None, "england", "nfpa"))),
        draw(st.sampled_from(("room", "level", "job"))),
        draw(lengths(0, 20 * MM)),
        draw(lengths(0, SMALL)),
        draw(lengths(0, HEIGHT)),
        draw(numbers(0, 150)),
        draw(st.sampled_from((None, years[0]))),
        draw(st.sampled_from((None, years[1]))),
        draw(LOCALES),
        draw(st.sampled_from(("mm", "cm", "m", "in", "ft"))),
    )


@st.composite
def jobs(draw: st.DrawFn, most: int = 2) -> tuple[Wares, Job]:
    """What the files of a job define, and the job of at most so many rooms or pairs of them."""
    ware = draw(wares())
    made = tuple(draw(rooms(ware, number)) for number in range(draw(st.integers(0, most))))
    said = (draw(NOTES) for _ in range(3))
    gang = draw(st.sampled_from((None, *ware.gangs)))
    flat = tuple(room for pair in made for room in pair)
    return ware, Job(draw(NAMES), draw(TITLES), draw(terms()), flat, gang, draw(few(extras())), *said)
