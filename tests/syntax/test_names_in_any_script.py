"""Names in any script: letters with their marks, however an accent is written. Unicode as `unicodedata` has it."""

from datetime import date
from unicodedata import category, normalize, ucd_3_2_0

import pytest

from roomspec.analysis.session import Session
from roomspec.analysis.world import MemoryWorld
from roomspec.names.index import index_files
from roomspec.syntax.assemble import read_file
from roomspec.syntax.format import format_text
from roomspec.syntax.line import Line, read_line
from roomspec.syntax.parser import pattern_of
from roomspec.syntax.statements import words_of
from roomspec.syntax.tables import tables

SCRIPTS = {
    "Thai": "ห้องน้ำ",
    "Devanagari": "स्नानघर-2",
    "Bengali": "স্নানঘর",
    "Tamil": "குளியலறை",
    "Burmese": "ရေချိုးခန်း",
    "Khmer": "បន្ទប់ទឹក",
    "Tibetan": "ཁྲུས་ཁང".replace("་", "."),
    "Hebrew with points": "חֶדֶר",
    "Arabic with vowels": "غُرْفَة",
    "Vietnamese, decomposed": normalize("NFD", "phòng-tắm"),
    "Chakma, beyond 16 bits": "\U00011107\U00011127\U0001110c",
    "Persian with a joiner": "می\u200cخواهم",
    "Hindi with joiners": "क्\u200dष-क्\u200cष",
    "Sinhala": "ශ්\u200dරී",
    "Thai digits": "๒.๐๔",
}


def name_in(text: str) -> str:
    """The wall's name in a line."""
    read = read_line(text)
    assert isinstance(read, Line), text
    return next(word.text for word in words_of(read.node) if word.type == "NAME")


@pytest.mark.parametrize("name", SCRIPTS.values(), ids=SCRIPTS)
def test_a_name_in_any_script_is_a_name(name: str) -> None:
    """Its marks are parts of it, and the words after it are read."""
    assert name_in(f"wall {name} 1200") == normalize("NFC", name)


def test_every_mark_goes_on_a_name() -> None:
    """Each character of the categories Mn and Mc of Unicode 3.2, the version that every Python keeps."""
    code = map(chr, range(0x110000))
    marks = [mark for mark in code if ucd_3_2_0.category(mark) in ("Mn", "Mc") and normalize("NFC", mark).isprintable()]
    assert len(marks) > 600
    assert [f"{ord(mark):x}" for mark in marks if not pattern_of("NAME").fullmatch(f"a{mark}b")] == []


def test_nothing_else_goes_on_a_name() -> None:
    """No blank, no punctuation, no sign: what Unicode 3.2 calls so and still is; three signs and the joiners may."""
    signs = {"Zs", "Zl", "Zp", "Pc", "Pd", "Ps", "Pe", "Pi", "Pf", "Po", "Sm", "Sc", "Sk", "So", "Cc", "Cf"}
    code = (chr(at) for at in range(0x110000) if chr(at) not in ".-_\u200c\u200d")
    others = [other for other in code if {ucd_3_2_0.category(other), category(other)} <= signs]
    assert len(others) > 3000
    assert [f"{ord(other):x}" for other in others if pattern_of("NAME").fullmatch(f"a{other}b")] == []


def test_a_word_with_a_mark_is_no_keyword() -> None:
    """`door` with an accent is a name, and opens no line."""
    assert name_in("wall door\u0301 1200") == "dooŕ"
    assert not isinstance(read_line("door\u0301 900 x 2000 at 100"), Line)
    assert not isinstance(read_line("wall \u0301a 1200"), Line)


@pytest.mark.parametrize("spelling", ["NFC", "NFD"])
@pytest.mark.parametrize("name", ["café", "Küche-2", "Ångström", "ống"])
def test_an_accent_is_the_same_however_it_is_written(name: str, spelling: str) -> None:
    """As one character with its letter or as one of its own, in either order of reading; columns are the text's."""
    text = f"wall {normalize(spelling, name)} 1200"
    assert name_in(text) == normalize("NFC", name)
    assert name_in(text.replace("1200", "3400")) == normalize("NFC", name)
    read = read_line(text)
    assert isinstance(read, Line)
    word = next(word for word in words_of(read.node) if word.type == "NAME")
    assert text[word.start : word.end] == normalize(spelling, name)


def test_a_panel_is_found_under_either_spelling() -> None:
    """What one file writes composed and another decomposed is one name, and written twice is a duplicate."""
    composed, decomposed = "chêne", normalize("NFD", "chêne")
    files = {
        "job.room": (
            f'job j\n  use "p.room"\nroom r\n  height 2400\n  wall a 3000\n    finish {decomposed} by g vertical\n'
        ),
        "p.room": (
            f"panel {composed}\n  length 2600\n  cover 250\n  thick 10\n  price 20.00 each\n"
            "adhesive k\n  tube 290 ml\n  price 6.00 each\nmethod g\n  glue k bead 8 every 100\n"
        ),
    }
    found = {one.name for one in Session(MemoryWorld(files, date(2026, 11, 25))).snapshot("job.room").findings}
    assert not found & {"unknown-name", "unused-name", "duplicate-name"}
    files["p.room"] += f"panel {decomposed}\n  length 2600\n  cover 250\n  thick 10\n"
    found = {one.name for one in Session(MemoryWorld(files, date(2026, 11, 25))).snapshot("job.room").findings}
    assert "duplicate-name" in found


def test_the_formatter_writes_accents_with_their_letters() -> None:
    """One spelling for each name; what stands in quotation marks stays as it is."""
    text = normalize("NFD", 'room é "É"\n')
    assert format_text(text) == f'room é "{normalize("NFD", "É")}"\n'


def test_the_class_of_marks_is_in_the_pattern_of_names() -> None:
    """What other readers of the tables take for the marks is what names are read with."""
    assert tables().marks in pattern_of("NAME").pattern


@pytest.mark.parametrize(
    "name",
    [
        "a\u200cb",
        "a\u200db",
        "می\u200c",
        "می\u200c-2",
        "می\u200dخواهم",
        "क\u200cष",
        "क्\u200d",
        "ห\u200cอ",
        "a\u0301\u200cb",
    ],
)
def test_a_joiner_where_no_script_needs_one_is_refused(name: str) -> None:
    """Unicode Standard Annex 31, contexts A1, A2 and B, from memory: the mend leaves it out."""
    tree = read_file("a.room", f"room 1\n  wall {name} 1200\n")
    (problem,) = tree.blocks[0].block.problems
    assert problem.message.endswith("holds a character that cannot be seen, and none is needed there")
    assert problem.fixes[0].edits[0].text == name.replace("\u200c", "").replace("\u200d", "")


def test_names_that_differ_in_what_cannot_be_seen_are_told() -> None:
    """Both are names, and nobody could tell one from the other."""
    text = "job j\npanel می\u200cخواهم\n  length 1 m\npanel میخواهم\n  length 1 m\npanel می\n  length 1 m\n"
    problems = index_files([read_file("a.room", text)]).problems
    assert [(one.name, one.at.line) for one in problems] == [("duplicate-name", 3)]
    assert problems[0].message.endswith("differ only in what cannot be seen")


def test_the_formatter_keeps_a_joiner() -> None:
    """The word is spelled with it."""
    assert format_text("room می\u200cخواهم\n") == "room می\u200cخواهم\n"
