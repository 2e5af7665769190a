"""Walls and ceilings at random, with every line that they may have."""

from decimal import Decimal

from drawn_values import HEIGHT, METRE, MM, REGIONS, SMALL, TEXTS, TITLES, WALL, few, lengths, numbers, of_region
from drawn_wares import SUBSTRATES, WET, Wares
from hypothesis import strategies as st

from roomspec.model.product import Panel, Price
from roomspec.model.shape import SetOut
from roomspec.model.wall import (
    Boxing,
    Extra,
    Finish,
    Flatness,
    Keep,
    Layer,
    Obstacle,
    Opening,
    Removal,
    Studs,
    Substrate,
    Surface,
    WallPoint,
    Wet,
)

KEPT = ("skirting", "cornice", "architrave")
WIDE, HIGH, DEEP = lengths(1, WALL), lengths(1, HEIGHT), lengths(1, SMALL)
ALONG, UP = lengths(0, WALL), lengths(0, HEIGHT)
SURE = st.booleans()
LAYERS = st.lists(
    st.builds(Layer, st.sampled_from(SUBSTRATES), st.none() | numbers(0, 1000)), min_size=1, max_size=3
).map(tuple)
FLATNESS = st.builds(Flatness, lengths(0, METRE - 1), lengths(METRE, 5 * METRE), REGIONS)
STUDS = st.builds(Studs, lengths(50 * MM, SMALL), st.sampled_from(("vertical", "horizontal")), REGIONS)
CONDITIONS = st.sampled_from(("sound", "loose", "painted", "damp", "unknown"))
FACES = ((), ("head",), ("jambs",), ("sill",), ("head", "jambs"), ("jambs", "sill"), ("head", "jambs", "sill"))


def openings(*kinds: str) -> st.SearchStrategy[Opening]:
    """Openings of these kinds; only a niche is deep, it alone has no reveal, only a hatch has a leaf."""

    def of(kind: str) -> st.SearchStrategy[Opening]:
        return st.builds(
            Opening,
            st.just(kind),
            *(ALONG, WIDE, UP, HIGH, TITLES),
            st.none() if kind == "niche" else st.none() | DEEP,
            st.sampled_from(FACES),
            DEEP if kind == "niche" else st.none(),
            st.booleans() if kind == "hatch" else st.just(False),
            SURE,
        )

    return st.one_of(*(of(kind) for kind in kinds))


SLOPED = st.builds(
    Obstacle, st.sampled_from(("bath", "tray")), ALONG, WIDE, HIGH, st.none() | HIGH, UP, TITLES, confirmed=SURE
)
OBSTACLES = st.one_of(
    SLOPED,
    st.builds(Obstacle, st.just("units"), ALONG, WIDE, HIGH, sill=UP, label=TITLES, confirmed=SURE),
    st.builds(Obstacle, st.just("heat"), ALONG, WIDE, HIGH, st.none(), UP, TITLES, st.none() | lengths(0, SMALL), SURE),
)
BOXING = st.builds(Boxing, ALONG, WIDE, HIGH, DEEP, UP, TITLES, SURE)
POUND = Decimal("0.45359237")
LOADS = numbers(0, 5000) | st.integers(0, 9999).map(lambda pounds: pounds * POUND)
POINTS = st.one_of(
    st.builds(WallPoint, st.sampled_from(("socket", "switch", "pipe")), ALONG, lengths(0, SMALL), TITLES),
    st.builds(WallPoint, st.just("fixture"), ALONG, lengths(0, SMALL), TITLES, st.none() | LOADS),
)
REMOVALS = st.one_of(
    st.builds(Removal, st.sampled_from(KEPT), st.none() | lengths(1, 5 * METRE)),
    st.builds(Removal, st.sampled_from((*SUBSTRATES, "wallpaper", "lining")), region=REGIONS),
    st.builds(Removal, st.just("radiator"), x=st.none() | ALONG, label=TITLES),
    st.tuples(TEXTS, st.none() | ALONG).map(lambda said: Removal(said[0], x=said[1], label=said[0])),
)


@st.composite
def extras(draw: st.DrawFn) -> Extra:
    """A sum, which may be a discount, or a quantity at its price."""
    per = draw(st.sampled_from(("sum", "each", "pack", "m2", "m", "h")))
    if per == "sum":
        return Extra(draw(TITLES), Price(draw(numbers(-9999, 9999))))
    return Extra(draw(TITLES), Price(draw(numbers(0, 9999)), per), draw(numbers(0, 9999)), per)


def set_out(*ways: str, most: int) -> st.SearchStrategy[SetOut]:
    """One of these ways, or centred at a place."""
    centred = st.builds(SetOut, st.sampled_from(("centre", "joint")), st.none() | lengths(0, most))
    return st.builds(SetOut, st.sampled_from(ways)) | centred


BONDS = st.sampled_from(("stacked", "half", "third", "run-on"))
STARTS = set_out("left", "right", "balanced", most=WALL)
ROWS = set_out("bottom", "top", "balanced", most=HEIGHT)
FINISHED = few(REGIONS, lambda region: region)


@st.composite
def finishes(draw: st.DrawFn, wares: Wares, *directions: str) -> tuple[Finish, ...]:
    """None, one or two; that they overlap is no concern of reading."""
    return tuple(
        Finish(
            draw(st.sampled_from(wares.of(Panel))),
            draw(st.sampled_from(wares.methods)),
            draw(st.sampled_from(directions)),
            *(draw(how) for how in (BONDS, STARTS, ROWS)),
            region,
        )
        for region in draw(FINISHED)
    )


Fields = dict[str, st.SearchStrategy[tuple]]
SURVEYED: Fields = {
    "substrates": few(st.builds(Substrate, LAYERS, REGIONS), of_region),
    "surfaces": few(st.builds(Surface, CONDITIONS, REGIONS), of_region),
    "flatness": few(FLATNESS, of_region),
    "studs": few(STUDS, of_region),
    "wet": few(st.builds(Wet, WET, REGIONS), of_region),
    "keeps": few(st.builds(Keep, st.sampled_from(KEPT), lengths(1, 5 * METRE)), lambda keep: keep.kind),
    "removals": few(REMOVALS),
}
"""What a wall may take from its room beside its height, finishes and upstand, and a ceiling says itself."""
