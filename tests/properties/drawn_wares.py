"""A catalogue, the methods that use it and a gang at random: products of every kind with every line they may have."""

from datetime import date

from drawn_values import METRE, MM, NAMES, NOTES, SMALL, TEXTS, TITLES, few, lengths, numbers
from hypothesis import strategies as st
from msgspec import Struct

from roomspec.compile.gang_lines import MEASURED_IN
from roomspec.compile.product_lines import PRICED
from roomspec.model.method import Battens, Gang, Gap, Glue, Method, More, Seal, Takes
from roomspec.model.product import Compound, Fixing, Panel, Price, Product, Sheet, Stock, Support, Trim

ROLES = (
    *("start", "inside-corner", "outside-corner", "edge", "top"),
    *("joint", "skirting", "cap", "cornice", "architrave"),
)
SUBSTRATES = (
    *("masonry", "concrete", "plaster", "plasterboard", "cement-board", "gypsum-fibre"),
    *("plywood", "tile", "stone", "timber-frame", "metal-frame"),
)
PLACES = ("joints", "trims", "corners", "floor", "ceiling", "edges", "rims", "points")
WET = st.sampled_from(("dry", "splash", "direct"))
DATES = st.integers(date(1000, 1, 1).toordinal(), date(2200, 1, 1).toordinal()).map(date.fromordinal)
THIN = lengths(MM // 2, 50 * MM)


class Wares(Struct, frozen=True):
    """All that the files of a job define beside its rooms."""

    products: tuple[Product, ...]
    methods: tuple[Method, ...]
    gangs: tuple[Gang, ...]

    def of(self, form: type, kind: str = "") -> list:
        """The products of a form; the compounds of a kind."""
        return [one for one in self.products if isinstance(one, form) and kind in ("", getattr(one, "kind", ""))]


def prices(kind: str) -> st.SearchStrategy[Price]:
    """What a product of this kind may cost."""
    return st.builds(Price, numbers(0, 9999), st.sampled_from(PRICED[kind]))


def sold(kind: str) -> dict[str, st.SearchStrategy[object]]:
    """What every product says."""
    return {
        "title": TITLES,
        "pack": st.just(1) | st.integers(1, 100_000),
        "price": st.none() | prices(kind),
        "valid_until": st.none() | DATES,
        "notes": NOTES,
    }


def stocks(kind: str) -> st.SearchStrategy[tuple[Stock, ...]]:
    """One to three lengths, none of them twice."""
    one = st.builds(Stock, lengths(50 * MM, 15 * METRE), st.none() | prices(kind))
    return st.lists(one, min_size=1, max_size=3, unique_by=lambda stock: stock.length).map(tuple)


PANELS = st.builds(
    Panel,
    NAMES,
    stocks=stocks("panel"),
    cover=lengths(151 * MM, SMALL),
    thick=lengths(MM // 2, 150 * MM),
    tongue=st.just(0) | lengths(0, 150 * MM),
    weighs=st.none() | numbers("0.001", 500, 3),
    lay=st.lists(st.sampled_from(("vertical", "horizontal", "overhead")), unique=True).map(tuple),
    joined=st.sampled_from(("long edges", "all edges")),
    sequence=st.integers(1, 100),
    reaction=st.none() | st.sampled_from(("A1", "B-s2,d0", "E", "F")),
    wet=st.none() | WET,
    expands=st.none() | numbers(0, 10),
    supports=st.none() | lengths(50 * MM, SMALL),
    acclimatise=st.none() | st.integers(0, 8760),
    mitre=st.booleans(),
    **sold("panel"),
)
TRIMS = st.builds(
    Trim,
    NAMES,
    role=st.sampled_from(ROLES),
    stocks=stocks("trim"),
    fits=st.none() | lengths(MM // 2, 150 * MM),
    allows=st.just(0) | lengths(0, 150 * MM),
    **sold("trim"),
)
OTHERS = st.tuples(
    *(
        st.builds(Compound, st.just(kind), NAMES, tube=numbers("0.1", 100_000), **sold(kind))
        for kind in ("adhesive", "sealant")
    ),
    st.builds(
        Support,
        NAMES,
        depth=lengths(MM // 2, METRE),
        width=lengths(MM // 2, METRE),
        stocks=stocks("support"),
        **sold("support"),
    ),
    st.builds(Fixing, NAMES, diameter=lengths(MM // 2, 100 * MM), length=lengths(MM // 2, METRE), **sold("fixing")),
    st.builds(
        Sheet,
        NAMES,
        width=lengths(MM // 2, 10 * METRE),
        length=lengths(MM // 2, 1000 * METRE),
        laps=st.just(0) | lengths(0, METRE),
        **sold("sheet"),
    ),
)


EVERY = lengths(10 * MM, SMALL)
SEAL_PLACES = st.lists(st.sampled_from(PLACES), min_size=1, max_size=4, unique=True).map(tuple)
BEADS = THIN.map(lambda size: ("bead", size, size))
SECTIONS = BEADS | st.tuples(st.sampled_from(("fillet", "joint")), THIN, THIN)
MORE = few(st.builds(More, numbers(0, 1000), st.sampled_from(SUBSTRATES)))
GAPS = few(st.builds(Gap, lengths(0, METRE), st.sampled_from(("floor", "ceiling", "ends"))), lambda gap: gap.place)
LAYERS = few(st.tuples(lengths(50 * MM, SMALL), st.sampled_from((None, "vertical", "horizontal"))))
SCRIBE = st.just(0) | lengths(0, METRE)
SOME = st.booleans()


@st.composite
def methods(draw: st.DrawFn, wares: Wares, name: str) -> Method:
    """A method of the catalogue's products: any trim may be named for any place, and a corner may go without."""
    adhesive, sealant = wares.of(Compound, "adhesive")[0], wares.of(Compound, "sealant")[0]
    support, fixing, sheet = (wares.of(form)[0] for form in (Support, Fixing, Sheet))
    trims = st.sampled_from((None, *wares.of(Trim)))
    corners = st.sampled_from((None, *wares.of(Trim), "mitred", "butted"))
    places = {role.replace("-", "_"): draw(corners if "-" in role else trims) for role in ROLES}
    fix = draw(st.none() | EVERY)
    return Method(
        name,
        draw(TITLES),
        glue=Glue(adhesive, draw(THIN), draw(EVERY), draw(SOME)) if draw(SOME) else None,
        more=draw(MORE),
        seals=tuple(Seal(sealant, *draw(SECTIONS), draw(SEAL_PLACES)) for _ in range(draw(st.integers(0, 2)))),
        battens=tuple(Battens(support, *layer) for layer in draw(LAYERS)),
        screw=fixing if draw(SOME) else None,
        fix=fixing if fix is not None else None,
        fix_every=fix,
        behind=sheet if draw(SOME) else None,
        scribe=draw(SCRIBE),
        gaps=draw(GAPS),
        notes=draw(NOTES),
        **places,
    )


@st.composite
def takes(draw: st.DrawFn) -> Takes:
    """A labour constant in what its task is counted in."""
    task = draw(st.sampled_from((*MEASURED_IN, "removing")))
    where = None
    if task == "panels":
        ways = ("vertical", "horizontal", "lengthwise", "crosswise", "stairs", "ceilings", "boxing", "reveals")
        where = draw(st.sampled_from((None, *ways)))
    if task == "removing":
        where = draw(
            st.sampled_from((*SUBSTRATES, "skirting", "cornice", "architrave", "wallpaper", "lining", "radiator"))
            | TEXTS
        )
    return Takes(
        draw(numbers(0, 1000, 3)), draw(st.sampled_from(MEASURED_IN.get(task, ("m2", "m", "each")))), task, where
    )


GANGS = st.builds(Gang, NAMES, TITLES, numbers(0, 9999), st.lists(takes(), max_size=4).map(tuple), NOTES)


@st.composite
def wares(draw: st.DrawFn) -> Wares:
    """Two panels, two trims, one of each other product, two methods and a gang."""
    panels, trims = (
        draw(st.lists(kind, min_size=1, max_size=2, unique_by=lambda one: one.name)) for kind in (PANELS, TRIMS)
    )
    bought = Wares((*panels, *trims, *draw(OTHERS)), (), (draw(GANGS),))
    names = draw(st.lists(NAMES, min_size=1, max_size=2, unique=True))
    return Wares(bought.products, tuple(draw(methods(bought, name)) for name in names), bought.gangs)
