"""Products, methods and gangs as text."""

from collections.abc import Sequence

from pen import Pen

from roomspec.model.method import Battens, Gang, Gap, Glue, Method, More, Seal, Takes
from roomspec.model.product import Compound, Fixing, Panel, Price, Product, Sheet, Stock, Support, Trim

WORDS = {Panel: "panel", Trim: "trim", Support: "support", Fixing: "fixing", Sheet: "sheet"}
TRIMS = ("start", "inside_corner", "outside_corner", "edge", "top", "joint", "skirting", "cap", "cornice", "architrave")
ON = {"stairs": "on stairs", "ceilings": "on ceilings", "boxing": "on boxing", "reveals": "in reveals"}
UNQUOTED = (
    *("masonry", "concrete", "plaster", "plasterboard", "cement-board", "gypsum-fibre", "plywood", "tile", "stone"),
    *("timber-frame", "metal-frame", "skirting", "cornice", "architrave", "wallpaper", "lining", "radiator"),
)


def price(pen: Pen, price: Price) -> str:
    """`31.50 each`, `6 per m2`."""
    return f"{pen.number(price.amount)} {'each' if price.per == 'each' else f'per {price.per}'}"


def product(pen: Pen, product: Product) -> list[str]:
    """A product's block."""
    kind = product.kind if isinstance(product, Compound) else WORDS[type(product)]
    sold = [
        [pen.usual(f"pack {product.pack}", product.pack == 1)],
        [f"price {price(pen, product.price)}" if product.price else ""],
        [f"valid until {product.valid_until}" if product.valid_until else ""],
        notes(pen, product.notes),
    ]
    return [pen.line(kind, product.name, pen.titled(product.title)), *pen.merged(*sold, *_own(pen, product))]


def notes(pen: Pen, notes: Sequence[str]) -> list[str]:
    """A line each."""
    return [f"note {pen.text(note)}" for note in notes]


def _own(pen: Pen, product: Product) -> list[list[str]]:
    match product:
        case Panel():
            return _panel(pen, product)
        case Trim():
            return [
                [f"role {product.role}"],
                _stocks(pen, product.stocks),
                [f"fits {pen.length(product.fits)}" if product.fits is not None else ""],
                [pen.usual(f"allows {pen.length(product.allows)}", product.allows == 0)],
            ]
        case Compound():
            return [[f"tube {pen.one((pen.number(product.tube, 'ml'), pen.number(product.tube / 1000, 'l')))}"]]
        case Support():
            return [[f"section {pen.size(product.depth, product.width)}"], _stocks(pen, product.stocks)]
        case Fixing():
            return [[f"size {pen.size(product.diameter, product.length)}"]]
        case Sheet():
            laps = pen.usual(f"laps {pen.length(product.laps)}", product.laps == 0)
            return [[f"roll {pen.size(product.width, product.length)}"], [laps]]


def _stocks(pen: Pen, stocks: Sequence[Stock]) -> list[str]:
    return [
        pen.line("length", pen.length(stock.length), f"at {price(pen, stock.price)}" if stock.price else "")
        for stock in stocks
    ]


def _panel(pen: Pen, panel: Panel) -> list[list[str]]:
    hours = panel.acclimatise
    time = pen.one([f"{hours} h", f"{hours}hours", *([f"{hours // 24} days"] if hours and hours % 24 == 0 else [])])
    return [
        _stocks(pen, panel.stocks),
        [f"cover {pen.length(panel.cover)}"],
        [f"thick {pen.length(panel.thick)}"],
        [pen.usual(f"tongue {pen.length(panel.tongue)}", panel.tongue == 0)],
        [f"weighs {pen.number(panel.weighs, 'kg/m2', 'kg/m²')}" if panel.weighs is not None else ""],
        [f"lay {' '.join(panel.lay)}" if panel.lay else ""],
        [pen.usual(f"joined {panel.joined}", panel.joined == "long edges")],
        [pen.usual(f"sequence {panel.sequence}", panel.sequence == 1)],
        [f"reaction {panel.reaction}" if panel.reaction else ""],
        [f"wet {panel.wet}" if panel.wet else ""],
        [f"expands {pen.number(panel.expands, 'mm/m/K')}" if panel.expands is not None else ""],
        [f"supports every {pen.length(panel.supports)}" if panel.supports is not None else ""],
        [f"acclimatise {time}" if hours is not None else ""],
        ["" if panel.mitre else "mitre never"],
    ]


def method(pen: Pen, method: Method) -> list[str]:
    """A method's block."""
    lines = [
        [_glue(pen, method.glue) if method.glue else ""],
        pen.each(_more, method.more),
        pen.each(_seal, method.seals),
        [f"battens {' over '.join(pen.each(_battens, method.battens))}" if method.battens else ""],
        [f"screw {method.screw.name}" if method.screw else ""],
        [f"fix {method.fix.name} every {pen.length(method.fix_every or 0)}" if method.fix else ""],
        [f"behind {method.behind.name}" if method.behind else ""],
        [pen.usual(f"scribe {pen.length(method.scribe)}", method.scribe == 0)],
        _gaps(pen, method.gaps),
        *([_trimming(place, getattr(method, place))] for place in TRIMS),
        notes(pen, method.notes),
    ]
    return [pen.line("method", method.name, pen.titled(method.title)), *pen.merged(*lines)]


def _trimming(place: str, trim: Trim | str | None) -> str:
    return f"{place.replace('_', '-')} {trim if isinstance(trim, str) else trim.name}" if trim is not None else ""


def _glue(pen: Pen, glue: Glue) -> str:
    first = "first" if glue.first else ""
    return pen.line("glue", glue.adhesive.name, "bead", pen.length(glue.bead), first, "every", pen.length(glue.every))


def _more(pen: Pen, more: More) -> str:
    return f"more {pen.number(more.percent, '%')} on {more.on}"


def _seal(pen: Pen, seal: Seal) -> str:
    size = pen.length(seal.a) if seal.shape == "bead" else pen.size(seal.a, seal.b)
    return f"seal {seal.sealant.name} {seal.shape} {size} at {' '.join(seal.places)}"


def _battens(pen: Pen, layer: Battens) -> str:
    return pen.line(layer.support.name, "every", pen.length(layer.every), layer.direction or "")


def _gaps(pen: Pen, gaps: Sequence[Gap]) -> list[str]:
    """One line for all where they are alike, or a line each."""
    if gaps and len({gap.size for gap in gaps}) == 1 and pen.some():
        return [f"gap {pen.length(gaps[0].size)} at {' '.join(gap.place for gap in gaps)}"]
    return [f"gap {pen.length(gap.size)} at {gap.place}" for gap in gaps]


def gang(pen: Pen, gang: Gang) -> list[str]:
    """A gang's block."""
    rate = [f"rate {pen.number(gang.rate)} per h"] if gang.rate is not None else []
    lines = pen.merged(rate, pen.each(_takes, gang.takes), notes(pen, gang.notes))
    return [pen.line("gang", gang.name, pen.titled(gang.title)), *lines]


def _takes(pen: Pen, takes: Takes) -> str:
    hours = pen.number(takes.hours, "h") + pen.one((" each", ""))
    if takes.per != "each":
        hours = pen.number(takes.hours, *(("h/m2", "h/m²") if takes.per == "m2" else ("h/m",)))
    where = takes.where or ""
    if takes.task == "removing" and where not in UNQUOTED:
        where = pen.text(where)
    return pen.line("takes", hours, "for", takes.task, ON.get(where, where) if takes.task == "panels" else where)
