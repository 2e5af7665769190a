"""Why a line cannot be read, at its exact words, and its mend."""

import re
from decimal import Decimal

from msgspec import Struct

from roomspec.syntax.examples import EXAMPLES, USUAL
from roomspec.syntax.first_word import BRIEF, closest, holders_of, known_elsewhere, likely, may_begin
from roomspec.syntax.joiners import ANY, unjoined
from roomspec.syntax.line import Line, read_line
from roomspec.syntax.numerals import take_apart
from roomspec.syntax.parser import QUANTITIES, Misfit
from roomspec.syntax.statements import placing
from roomspec.syntax.tables import tables
from roomspec.syntax.wording import FEW, TABLES, choices, some_listed, value_name

_STRAY = {
    ":": "no colon is wanted",
    "=": "no equals sign is wanted",
    ";": "no semicolon is wanted, since one fact stands on one line",
    "{": "no braces are wanted, since a line belongs to the heading above it",
    "}": "no braces are wanted, since a line belongs to the heading above it",
}
_SLIPS = str.maketrans({"o": "0", "O": "0", "l": "1", "I": "1"})
_UNIT_WORDS = {
    "m": ("metre", "metres", "meter", "meters", "mtr", "M"),
    "mm": ("millimetre", "millimetres", "millimeter", "millimeters", "MM", "Mm", "mms"),
    "cm": ("centimetre", "centimetres", "centimeter", "centimeters", "CM", "cms"),
    "kg": ("KG", "Kg", "kgs", "kilo", "kilos", "kilogram", "kilograms"),
    "h": ("hr", "hrs", "H"),
    "days": ("d",),
    "deg": ("degrees", "degree"),
    "ml": ("ML", "mL", "Ml", "millilitre", "millilitres"),
    "m2": ("sqm", "qm", "M2", "m^2"),
    "kg/m2": ("kg/sqm", "kg/qm", "KG/M2", "Kg/m2", "kg/m^2"),
    "%": ("percent", "pc"),
    "in": ("IN", "ins", "In"),
    "ft": ("FT", "Ft"),
}
_UNIT_OF = {word: unit for unit, words in _UNIT_WORDS.items() for word in words}

_CURLY = re.compile('[“”„«»]([^“”„«»"]*)[“”„«»"]')
_BLANKS = re.compile(r"\s+")
_TRIES = 20
"""Words of an unclosed text after which the missing mark is tried."""


class Misreading(Struct, frozen=True):
    """What to say of one line: columns, message, help, and the text to put there where a mend is known.

    `certain` where nothing else could have been meant.
    """

    start: int
    end: int
    message: str
    help: str = ""
    instead: str | None = None
    certain: bool = False


def explain(text: str, misfit: Misfit, table: str | None) -> Misreading:
    """Why `text` cannot be read under the heading `table` (None: before any heading)."""
    if misfit.start == misfit.end:
        return _too_short(text, misfit)
    word = text[misfit.start : misfit.end]
    if word[0] == "\r":
        message = "a bare carriage return stands in this line"
        return Misreading(
            misfit.start, misfit.start + 1, message, "save the file with line feeds at the ends of its lines"
        )
    if word[0] in _STRAY:
        return _stray(text, misfit.start)
    if ANY.search(word) and word[0] != '"':
        visible = unjoined(word)
        message = f"`{_shown(word)}` holds a character that cannot be seen, and none is needed there"
        return Misreading(misfit.start, misfit.end, message, f"write {visible}", visible, bool(visible))
    if not misfit.read:
        return _strange_start(text, misfit.start, word, table)
    first = misfit.read[0]
    if table is not None and not may_begin(first.text, table):
        return _strange_start(text, first.start, first.text, table)
    if word[-1] in ":=;" and word[0] != '"':
        return _stray(text, misfit.end - 1)
    if word[0] in '"“”„«»':
        return _quotation(text, misfit, word)
    if misfit.read[-1].type in QUANTITIES and word in _UNIT_OF:
        unit = _UNIT_OF[word]
        message = f"`{word}` is no unit here; it is written `{unit}`"
        return Misreading(misfit.start, misfit.end, message, f"write {unit}", unit, True)
    if word[0].isdigit() and any(kind in QUANTITIES for kind in misfit.expected):
        return _no_quantity(misfit, word)
    return _misspelt(text, misfit, word) or _left_out(text, misfit, word) or _unwanted(text, misfit, word)


def _strange_start(text: str, start: int, word: str, table: str | None) -> Misreading:
    word = word.rstrip(":=;")
    end = start + len(word)
    near = likely(word, table)
    if near:
        meant = some_listed(f"`{other}`" for other in near)
        sure = _sure(near, word) and _reads(text[:start] + near[0] + text[end:])
        message = f"`{_shown(word)}` begins no line; did you mean {meant}?"
        return Misreading(start, end, message, _written_small(word, near), _only(near), sure)
    known = known_elsewhere(word) if table is not None else ""
    if known and table is not None:
        holders = some_listed(TABLES[holder] for holder in holders_of(known))
        message = f"`{_shown(word)}` begins no line of {TABLES[table]}"
        return Misreading(start, end, message, f"`{known}` belongs under {holders}")
    usual = some_listed((f"`{other}`" for other in USUAL[table]), "and") if table is not None else ""
    help_ = (
        f"{TABLES[table]} holds lines such as {usual}" if table is not None else "start with a heading such as `job`"
    )
    return Misreading(start, end, f"`{_shown(word)}` begins no line that is known", help_)


def _swapped(text: str, start: int, word: str) -> str:
    """The text with a word in place of the mark at a column."""
    return f"{text[:start].rstrip()} {word} {text[start + 1 :].lstrip()}"


def _reads_once(text: str) -> bool:
    """True where the text is a line that gives nothing a second time."""
    read = read_line(text)
    return isinstance(read, Line) and not read.again


def _reads(text: str) -> bool:
    return isinstance(read_line(text), Line)


def _sure(near: tuple[str, ...], word: str) -> bool:
    """True where one word of letters is near: what is short, or cut short, and `nrm3` may have been meant otherwise."""
    near_in_length = len(near) == 1 and len(near[0]) - len(word) <= max(1, len(word) // 3)
    return near_in_length and len(word) > BRIEF and not any(letter.isdigit() for letter in word)


def _only(near: tuple[str, ...]) -> str | None:
    return near[0] if len(near) == 1 else None


def _written_small(word: str, near: tuple[str, ...]) -> str:
    if word.lower() == near[0]:
        return "keywords are written in small letters"
    return f"write {some_listed(f'`{other}`' for other in near)}"


def _shown(word: str) -> str:
    """A word as it may stand in a message: printable, and not too long."""
    brief = word if len(word) <= 40 else word[:39] + "…"
    return "".join(letter if letter.isprintable() and letter != "`" else "�" for letter in brief)


def _before(text: str, misfit: Misfit) -> str:
    """The words read, as written, one blank between them."""
    return _shown(" ".join(text[misfit.read[0].start : misfit.read[-1].end].split()))


def _as_in(misfit: Misfit) -> str:
    """An example of the statement that the line begins like; empty where it may be one of several."""
    kinds = placing().by_word.get(misfit.read[0].text, ())
    return f"as in `{EXAMPLES[kinds[0]]}`" if kinds else ""


def _stray(text: str, place: int) -> Misreading:
    """A mark of other languages; where it stands beside a blank and the line reads without it, it was only that."""
    mark, before, after = text[place], text[:place], text[place + 1 :]
    sure = (before[-1:].isspace() or not after[:1].strip()) and _reads(before + after)
    message = f"{_STRAY[mark]}; leave out `{mark}`"
    return Misreading(place, place + 1, message, "a line is a keyword and its values", "", sure)


def _too_short(text: str, misfit: Misfit) -> Misreading:
    wanted = choices(misfit.expected)
    message = f"`{_before(text, misfit)}` is not finished: {wanted} is missing"
    return Misreading(misfit.read[0].start, misfit.read[-1].end, message, _as_in(misfit))


def _quotation(text: str, misfit: Misfit, word: str) -> Misreading:
    start, whole = misfit.start, text[misfit.start :].rstrip()
    if word[0] != '"':
        message, help_ = "texts stand in straight quotation marks", 'write "like this"'
        curly = _CURLY.match(whole)
        straight = f'"{curly[1]}"' if curly else ""
        if curly and _reads(text[:start] + straight + text[start + curly.end() :]):
            return Misreading(start, start + curly.end(), message, help_, straight, True)
        return Misreading(start, misfit.end, message, help_)
    if len(word) > 1 and word[-1] == '"':
        return _unwanted(text, misfit, word)
    message = "this text has no closing quotation mark"
    return Misreading(start, start + len(whole), message, 'write it as in "like this"', _closed(text[:start], whole))


def _closed(before: str, whole: str) -> str:
    """The text closed after as many words as leave a line that can be read: all of them where none do."""
    ends = [len(whole), *(blank.start() for blank in reversed(list(_BLANKS.finditer(whole))))]
    tried = (f'{whole[:end]}"{whole[end:]}' for end in ends[:_TRIES])
    return next((closed for closed in tried if _reads(before + closed)), whole + '"')


def _no_quantity(misfit: Misfit, word: str) -> Misreading:
    wanted = next(kind for kind in misfit.expected if kind in QUANTITIES)
    mended = word.translate(_SLIPS)
    message = f"`{_shown(word)}` cannot be read as {value_name(wanted)}"
    if mended != word and take_apart(mended) is not None:
        return Misreading(misfit.start, misfit.end, message, f"write {mended}", mended, True)
    return Misreading(misfit.start, misfit.end, message, _as_in(misfit))


def _misspelt(text: str, misfit: Misfit, word: str) -> Misreading | None:
    """A word close to a keyword that may stand there."""
    keywords = tables().keywords
    near = closest(word, [keywords[kind] for kind in misfit.expected if kind in keywords])
    if not near:
        return None
    sure = _sure(near, word) and _reads(text[: misfit.start] + near[0] + text[misfit.end :])
    meant = some_listed(f"`{other}`" for other in near)
    message = f"`{_shown(word)}` cannot be read here; did you mean {meant}?"
    return Misreading(misfit.start, misfit.end, message, _written_small(word, near), _only(near), sure)


def _left_out(text: str, misfit: Misfit, word: str) -> Misreading | None:
    """A keyword, or the quotation marks, without which the line cannot be read and with which it can."""
    start, end = misfit.start, misfit.end
    keywords = [tables().keywords[kind] for kind in misfit.expected if kind in tables().keywords]
    adding = [other for other in keywords if _reads_once(f"{text[:start]}{other} {text[start:]}")]
    if word == "," and len(instead := [other for other in keywords if _reads_once(_swapped(text, start, other))]) == 1:
        return Misreading(start, end, f"no comma is wanted here; `{instead[0]}` is", "", f" {instead[0]}")
    number = word[0].isdigit() and bool(adding)
    # `at` or `up` is a line's own word out of its order; `room` or `door` may well be part of a title.
    own = word in tables().keywords.values() and word not in placing().by_word and len(misfit.expected) > 1
    if not number and not own and "STRING" in misfit.expected:
        for stop in (end, len(text.rstrip()) if word[0].isalpha() else end):
            if _reads(f'{text[:start]}"{text[start:stop]}"{text[stop:]}'):
                said = text[start:stop]
                message = f"`{_shown(said)}` stands where a text in quotation marks belongs"
                return Misreading(start, stop, message, f'write "{_shown(said)}"', f'"{said}"')
    if adding == ["to"] and _falls_short(text[:start].split()[-1:], word):
        return None
    if len(adding) == 1 and text[: misfit.start].split()[-1:] != adding:
        message = f"`{adding[0]}` is missing before `{_shown(word)}`"
        return Misreading(start, end, message, _as_in(misfit), f"{adding[0]} {word}")
    return None


def _falls_short(before: list[str], word: str) -> bool:
    """True where a range would end below half of where it begins: `188 0` is no `188 to 0`."""
    figures = [*before, word]
    if not all(figure.replace(".", "", 1).isdecimal() for figure in figures):
        return False
    return len(figures) == 2 and 2 * Decimal(word) < Decimal(before[0])


def _unwanted(text: str, misfit: Misfit, word: str) -> Misreading:
    start, end = misfit.start, misfit.end
    wanted = choices(misfit.expected)
    if not wanted:
        message = f"`{_shown(word)}` is too much: the line is complete after `{_before(text, misfit)}`"
        return Misreading(start, end, message, "leave it out")
    ends = "$END" in misfit.expected
    if not ends and len(misfit.expected) <= FEW:
        return Misreading(start, end, f"`{_shown(word)}` stands where {wanted} belongs", _as_in(misfit))
    may_end = ", or the line ends" if ends else ""
    help_ = f"after `{_before(text, misfit)}` may stand {wanted}{may_end}"
    return Misreading(start, end, f"`{_shown(word)}` cannot be read here", help_)
