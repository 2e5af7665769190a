"""Room texts at random, built over the statement table: every statement in every form that the parser accepts."""

from hypothesis import strategies as st

from roomspec.syntax.line import Line, read_line
from roomspec.syntax.parser import Stack
from roomspec.syntax.statements import placing
from roomspec.syntax.tables import tables
from roomspec.syntax.tree import Node, Word

NAMES = st.sampled_from(
    [
        *("a", "b", "g.02", "2.04", "sw-25x50", "wc_3", "Küche", "ванная", "101", "x", "door", "7b"),
        *("ห้องน้ำ", "स्नानघर", "gästeba\u0308d", "door\u0301", "a.\u0323\u0301b"),
    ]
)
LENGTHS = st.one_of(
    st.integers(0, 99999).map(str),
    st.decimals(0, 9999, places=1).map(lambda number: f"{number} mm"),
    st.integers(1, 99).map(lambda number: f"{number / 10} m"),
    st.tuples(st.integers(1, 30), st.integers(0, 11), st.sampled_from(["", " 1/2", "½", "-3/4"])).map(
        lambda parts: f"{parts[0]}' {parts[1]}{parts[2]}\""
    ),
    st.sampled_from(["3/4 in", "94 1/2 in", "8.5 ft", "240cm", "8ft 6", "8'-6½\"", '½"', "2400mm", "6 ft"]),
)
VALUES = {
    "LENGTH": LENGTHS,
    "WEIGHT": st.sampled_from(["5.5 kg/m2", "12kg/m²", "1.2 lb/ft2"]),
    "MASS": st.sampled_from(["110 kg", "25kg", "40 lb"]),
    "PERCENT": st.integers(0, 99).map(lambda number: f"{number} %"),
    "MONEY": st.decimals(0, 999, places=2).map(str),
    "AMOUNT": st.sampled_from(["240.00", "6.5 m2", "6.5m²", "3 h", "12 m"]),
    "COUNT": st.integers(1, 3000).map(str),
    "KELVIN": st.just("20 K"),
    "ANGLE": st.sampled_from(["92 deg", "135°", "88.5 deg"]),
    "EXPANSION": st.just("0.06 mm/m/K"),
    "DURATION": st.sampled_from(["48 h", "2 days", "1 day", "24 hours"]),
    "VOLUME": st.sampled_from(["290 ml", "0.31 l"]),
    "LABOUR": st.sampled_from(["0.30 h/m2", "0.06h/m", "0.15 h", "0.03 h/ft2"]),
    "STRING": st.sampled_from(['""', '"Skip, 6 yd"', '"# no comment"', '"Bad „A“ × 2"']),
    "DATE": st.dates().map(str),
    "CURRENCY": st.sampled_from(["EUR", "GBP", "JPY"]),
    "LOCALE": st.sampled_from(["en", "en_GB", "de-AT"]),
    "REACTION": st.sampled_from(["B-s2,d0", "A1", "C-s3, d2", "E"]),
    "TIMES": st.sampled_from(["x", "×"]),
    "COMMA": st.just(","),
}
GAPS = st.sampled_from([" ", "  ", "\t", "   "])
COMMENTS = st.sampled_from(["", "", "", "  # as measured", "#x", ' # 2 m "open'])
INDENTS = st.sampled_from(["", "  ", "    ", "\t"])
PUT_IN = st.sampled_from(["", "q", "\n", " ", '"', "#", "0", ":", "\r\n", "\t", "ü", "x", "\u0301"])
MOST_WORDS = 24


@st.composite
def lines_of(draw: st.DrawFn, table: str) -> str:
    """One statement that a table holds, in any form that the parser takes; no option in it is given twice."""
    place = placing()
    kind = draw(st.sampled_from(sorted(place.holds[table] - place.inner)))
    return draw(statements(kind).filter(lambda text: not again(text)))


def again(text: str) -> bool:
    """True where an option is given twice."""
    read = read_line(text)
    assert isinstance(read, Line), text
    return bool(read.again)


@st.composite
def statements(draw: st.DrawFn, kind: str) -> str:
    """One statement of a kind."""
    keywords = tables().keywords
    first = draw(st.sampled_from(tables().words[kind]))
    stack, text, count = Stack(), "", 0
    kinds = tuple(name for name, word in keywords.items() if word == first and stack.accepts_one(name))
    while True:
        terminal = draw(st.sampled_from(kinds))
        if terminal == "$END":
            break
        word = keywords.get(terminal) or draw(NAMES if terminal.endswith("NAME") else VALUES[terminal])
        assert stack.take(terminal, Word(terminal, word, 0, 0))
        text += (draw(GAPS) if text else "") + word
        kinds = stack.accepts()
        count += 1
        if count > MOST_WORDS and "$END" in kinds:
            break
        if kind == "units_in":
            kinds = tuple(k for k in kinds if k not in ("LENGTH", "STRING", "ABOUT"))
        if kind == "units":
            kinds = tuple(k for k in kinds if k not in ("MM", "CM", "M", "IN", "FT")) if count == 1 else kinds
    return text


@st.composite
def blocks_of(draw: st.DrawFn, table: str) -> list[str]:
    """A block of one table: a heading, lines that may stand under it, walls and ceilings last."""
    head = draw(st.sampled_from(tables().heads[table]))
    found = [draw(statements(head))]
    marks: set[str] = set()
    for line in draw(st.lists(lines_of(table), max_size=4)):
        read = read_line(line)
        assert isinstance(read, Line)
        if read.mark is None or read.mark not in marks:
            found.append(line)
        marks.add(read.mark or "")
    for part in tables().parts[table]:
        for block in draw(st.lists(blocks_of(part), max_size=2)):
            found.extend(block)
    return found


@st.composite
def files(draw: st.DrawFn) -> str:
    """A valid text: a `units` line or none, then blocks; comments, blank lines and indents anywhere."""
    tops = sorted(set(tables().heads) - placing().inner)
    found = [draw(statements("units_in"))] if draw(st.booleans()) else []
    for table in draw(st.lists(st.sampled_from(tops), max_size=4)):
        found.extend(draw(blocks_of(table)))
    text = ""
    for line in found:
        text += draw(st.sampled_from(["", "", "\n", "# a note\n", "   # another  \n"]))
        text += draw(INDENTS) + line + draw(COMMENTS) + "\n"
    return text


@st.composite
def damaged(draw: st.DrawFn) -> str:
    """A valid text with letters struck out, put in, swapped, and lines torn."""
    text = draw(files())
    for _ in range(draw(st.integers(1, 6))):
        at = draw(st.integers(0, len(text)))
        cut = draw(st.integers(0, 3))
        text = text[:at] + draw(PUT_IN) + text[at + cut :]
    return text


def plain(node: Node) -> object:
    """A node without columns, to compare by."""
    return node.kind, [(part.type, part.text) if isinstance(part, Word) else plain(part) for part in node.parts]
