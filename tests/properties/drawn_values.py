"""Values at random for the models of these tests: lengths, numbers, names, texts, spans and regions."""

from collections.abc import Callable
from decimal import Decimal
from functools import lru_cache

from hypothesis import strategies as st

from roomspec.model.shape import WHOLE, Region
from roomspec.quantities.length import INCH, METRE, MM

SIXTY_FOURTH = INCH // 64
WALL, HEIGHT, SMALL = 100 * METRE, 15 * METRE, 3 * METRE
"""The most that the language takes: along a wall, up one, and of what is measured at arm's length."""

NAMES = st.sampled_from(
    ["a", "b", "7", "2.04", "g.02", "sw-25x50", "wc_3", "Küche", "ванная", "x", "door", "by", "at", "12mm", "3ft", "to"]
)
TITLES = st.sampled_from(
    [
        "",
        "Walls # 3",
        "6 ft × ½ in, 'new'",
        "ünï 😀\u2028 tab\t",
        "room a",
        "20 %",
        " two  blanks ",
        "a\rb\x0b\x85\xa0",
        "\\n”",
    ]
)
TEXTS = TITLES.filter(bool)
NOTES = st.lists(TITLES, max_size=2).map(tuple)


@lru_cache(512)
def lengths(least: int, most: int) -> st.SearchStrategy[int]:
    """Nanometres: whole millimetres, 64ths of an inch, or any with six decimals."""
    return st.one_of(
        *(
            st.integers(-(-least // unit), most // unit).map(unit.__mul__)
            for unit in (MM, SIXTY_FOURTH, 1)
            if -(-least // unit) <= most // unit
        )
    )


def numbers(least: str | int, most: str | int, places: int = 2) -> st.SearchStrategy[Decimal]:
    """A number with so many decimals."""
    low, high = (int(Decimal(end).scaleb(places)) for end in (least, most))
    return st.integers(low, high).map(lambda digits: Decimal(digits).scaleb(-places))


def spans(most: int) -> st.SearchStrategy[tuple[int, int]]:
    """Two places, the lower first."""
    return st.tuples(lengths(0, most - METRE), lengths(1, METRE)).map(lambda pair: (pair[0], pair[0] + pair[1]))


NOWHERE = (None, None)
REGIONS = st.tuples(st.just(NOWHERE) | spans(WALL), st.just(NOWHERE) | spans(HEIGHT)).map(
    lambda ends: Region(*ends[0], *ends[1]) if ends != (NOWHERE, NOWHERE) else WHOLE
)


def few(values: st.SearchStrategy[object], key: Callable[[object], object] | None = None) -> st.SearchStrategy[tuple]:
    """None, one or two of them, each with a key of its own."""
    return st.lists(values, max_size=2, unique_by=key).map(tuple)


def of_region(value: object) -> object:
    """The key of what has a region: so that one at most is for the whole."""
    return value.region  # type: ignore[attr-defined]
