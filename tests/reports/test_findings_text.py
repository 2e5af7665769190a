"""Findings as text: the line, the words, the mend."""

import pytest

from roomspec.analysis.found import Found, FoundEdit, FoundFix, FoundRelated, Place
from roomspec.reports.findings_text import counted, findings_text
from roomspec.reports.paint import coloured

LINES = {
    "rooms/a.room": [
        "room 1",
        "  finish bord by glued",
        "\tfinish\tbord",
        '  note "客房客房" bord',
        "x" * 500 + "bord",
        "",
    ]
}


def line_of(path: str, line: int) -> str:
    """A line of the texts above."""
    return LINES[path][line - 1]


def found(line: int, column: int, end: int, **more: object) -> Found:
    """A finding in `rooms/a.room`."""
    return Found(
        "unknown-name", "error", "no panel is called bord", Place("rooms/a.room", line, column, line, end), **more
    )


def test_a_finding_in_full():
    """Place, severity, message, name; the line; the words; another place; help; the mended line."""
    fix = FoundFix("write board", True, (FoundEdit(Place("rooms/a.room", 2, 10, 2, 14), "board"),))
    other = FoundRelated("the catalogue is here", Place("rooms/a.room", 1, 1, 1, 5))
    text = findings_text([found(2, 10, 14, help="did you mean board?", related=(other,), fixes=(fix,))], line_of)
    assert text == (
        "rooms/a.room:2:10: error: no panel is called bord [unknown-name]\n"
        " 2 |   finish bord by glued\n"
        "   |          ^^^^\n"
        "   see rooms/a.room:1:1: the catalogue is here\n"
        "   help: did you mean board?\n"
        " 2 |   finish board by glued\n"
        "\n"
        "1 error in 1 file.\n"
    )


@pytest.mark.parametrize(
    ("help_", "title", "lines"),
    [
        ("write board", "write `board`", ["write board"]),
        ("did you mean `board`?", "write `board`", ["did you mean `board`?"]),
        ("write 2.4 m or 2400", "write `2400`", ["write 2.4 m or 2400"]),
        ("write 2400", "write `240`", ["write 2400", "write `240`"]),
        ("both ends are then 135", "start balanced", ["both ends are then 135", "start balanced"]),
        ("", "remove this line", ["remove this line"]),
    ],
)
def test_a_mend_is_said_once(help_, title, lines):
    """A fix whose title the help says already stands under it without words of its own."""
    fix = FoundFix(title, True, (FoundEdit(Place("rooms/a.room", 2, 10, 2, 14), "board"),))
    text = findings_text([found(2, 10, 14, help=help_, fixes=(fix,))], line_of)
    assert [line.split("help: ")[1] for line in text.split("\n") if "help: " in line] == lines
    assert " 2 |   finish board by glued\n" in text


@pytest.mark.parametrize(
    ("line", "column", "before"),
    [(3, 9, "    finish    "), (4, 15, '  note "客房客房" ')],
)
def test_the_marks_stand_under_the_words(line, column, before):
    """Tabs count as the spaces shown, wide letters as two columns."""
    shown, marks = findings_text([found(line, column, column + 4)], line_of).split("\n")[1:3]
    assert shown.split("| ", 1)[1].startswith(before + "bord")
    wide = sum(2 if ord(letter) > 0x2E80 else 1 for letter in before)
    assert marks.split("| ", 1)[1] == " " * wide + "^^^^"


def test_a_long_line_is_shown_around_the_words():
    """Of a very long line only the neighbourhood is shown."""
    shown, marks = findings_text([found(5, 501, 505)], line_of).split("\n")[1:3]
    assert len(shown) < 160
    assert marks.index("^") == shown.index("bord")


def test_an_empty_line_is_not_shown():
    """Where there is nothing to show, the place and the message stand alone."""
    assert "|" not in findings_text([found(6, 1, 1)], line_of)


def test_control_letters_cannot_reach_the_terminal():
    """Escape codes in a file show as a mark, never act."""
    text = findings_text([found(2, 10, 14, help="\x1b[2J\u202e")], lambda _path, _line: "\x1b[31mbord\u202e\r")
    assert "\x1b" not in text
    assert "\u202e" not in text


def test_colours_change_no_words():
    """The coloured text without its codes is the plain text."""
    import re

    findings = [found(2, 10, 14, help="did you mean board?")]
    assert re.sub(r"\x1b\[[\d;]*m", "", findings_text(findings, line_of, coloured)) == findings_text(findings, line_of)


def test_counts():
    """How many of each, and in how many files."""
    warning = Found("w", "warning", "m", Place("b.room", 1, 1, 1, 1))
    assert counted([]) == "No findings."
    assert counted([found(2, 1, 2), found(3, 1, 2), warning]) == "2 errors and 1 warning in 2 files."
