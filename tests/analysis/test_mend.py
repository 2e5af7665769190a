"""Fixes put to work: the rest of the text stays the user's."""

import datetime

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from roomspec.analysis.found import Found, FoundEdit, FoundFix, Place
from roomspec.analysis.mend import ROUNDS, applied, fix_for, mended
from roomspec.analysis.session import Session
from roomspec.analysis.world import MemoryWorld


def edit(text: str, line: int, column: int, end: int, path: str = "a.room", end_line: int = 0) -> FoundEdit:
    """An edit within a line."""
    return FoundEdit(Place(path, line, column, end_line or line, end), text)


def found(*fixes: FoundFix) -> Found:
    """A finding with these fixes."""
    return Found("any", "error", "m", Place("a.room", 1, 1, 1, 2), fixes=fixes)


def once(text: str, *edits: FoundEdit) -> str:
    """The text with one safe fix applied."""
    return mended({"a.room": text}, [found(FoundFix("f", True, edits))], unsafe=False)[0].get("a.room", text)


@pytest.mark.parametrize(
    ("text", "edits", "expected"),
    [
        pytest.param("a\n  drop me  \nb\n", (edit("", 2, 3, 10),), "a\nb\n", id="an emptied line goes"),
        pytest.param("a\r\n  drop\r\nb\r\n", (edit("", 2, 3, 7),), "a\r\nb\r\n", id="with its CRLF"),
        pytest.param("a\n  drop", (edit("", 2, 3, 7),), "a\n", id="the last line without end"),
        pytest.param("a\n  drop # why\n", (edit("", 2, 3, 7),), "a\n   # why\n", id="a comment stays"),
        pytest.param("a  b \n", (edit("", 1, 4, 5),), "a \n", id="no blanks are left before what is gone"),
        pytest.param("a\ndrop\nb\n", (edit("", 2, 1, 6),), "a\nb\n", id="a line with its end"),
        pytest.param("a\nb\n", (edit("x\n", 2, 1, 1),), "a\nx\nb\n", id="a line put in"),
        pytest.param("a\r\nb\r\n", (edit("x\n", 2, 1, 1),), "a\r\nx\r\nb\r\n", id="put in with the file's line ends"),
        pytest.param("a\r\nb", (edit("\nx", 2, 2, 2),), "a\r\nb\r\nx", id="put in after a line without end"),
        pytest.param("é𝄞 x y\n", (edit("z", 1, 4, 5),), "é𝄞 z y\n", id="columns are code points"),
        pytest.param("a\n\n\nb\n", (edit("c", 4, 1, 2),), "a\n\n\nc\n", id="blank lines stay"),
        pytest.param("move\nhead\n", (edit("", 1, 1, 6), edit("move\n", 3, 1, 1)), "head\nmove\n", id="a line moved"),
        pytest.param("a b\n", (edit("x", 1, 1, 2), edit("y", 1, 3, 4)), "x y\n", id="two places in one line"),
        pytest.param("a\n", (edit("x", 9, 1, 2),), "a\nx", id="beyond the end"),
    ],
)
def test_only_what_an_edit_names_changes(text, edits, expected):
    """Spacing, comments and line ends elsewhere are untouched."""
    assert once(text, *edits) == expected


def test_a_safe_fix_comes_first_and_an_unsafe_one_only_when_asked_and_alone():
    """Where several could be meant, nobody chooses for the user."""
    one, two = FoundFix("1", False, (edit("x", 1, 1, 2),)), FoundFix("2", False, (edit("y", 1, 1, 2),))
    safe = FoundFix("3", True, (edit("z", 1, 1, 2),))
    assert fix_for(found(one), unsafe=False) is None
    assert fix_for(found(one), unsafe=True) == one
    assert fix_for(found(one, two), unsafe=True) is None
    assert fix_for(found(one, safe), unsafe=False) == safe


def test_what_only_a_person_can_say_is_never_applied():
    """A mend to fill in is offered alone, and not put in."""
    fix = FoundFix("f", False, (edit("x", 1, 1, 2),), to_fill_in=True)
    assert fix_for(found(fix), unsafe=True) is None


def test_a_heading_that_lacks_is_put_in_when_asked():
    """`begin with a job` makes no survey fact up; a height of a sill would be one."""
    text = "room 1\n  height 2400\n  wall a 3000\n    window 600 x 900 at 0\n"
    snapshot = Session(MemoryWorld({"a.room": text}, datetime.date(2026, 11, 25))).snapshot("a.room")
    assert snapshot is not None
    offered = {fix.title: fix_for(one, unsafe=True) == fix for one in snapshot.findings for fix in one.fixes}
    assert offered["begin with a job"]
    assert not offered["put it on the floor: `sill 0`"]


def test_fixes_that_touch_wait_for_the_next_round():
    """Of two that change the same words the first is applied; the same one twice counts once."""
    first, second = FoundFix("1", True, (edit("x", 1, 1, 4),)), FoundFix("2", True, (edit("y", 1, 3, 6),))
    assert mended({"a.room": "abcdef\n"}, [found(first), found(second)], unsafe=False) == ({"a.room": "xdef\n"}, 1)
    assert mended({"a.room": "abcdef\n"}, [found(first), found(first)], unsafe=False) == ({"a.room": "xdef\n"}, 2)


def test_a_fix_that_edits_a_file_out_of_reach_is_left_alone():
    """All of a fix or nothing."""
    fix = FoundFix("f", True, (edit("x", 1, 1, 2), edit("x", 1, 1, 2, path="b.room")))
    assert mended({"a.room": "ab\n"}, [found(fix)], unsafe=False) == ({}, 0)


@given(
    st.text(st.sampled_from("ab \n\r\t#é"), max_size=40),
    st.lists(st.tuples(st.integers(0, 40), st.integers(0, 6), st.sampled_from(["", "x", "x\n"])), max_size=5),
)
@settings(max_examples=200)
def test_what_stands_away_from_every_edit_is_kept(text, places):
    """The text before the first edit's line and after the last edit's line stays to the last character."""
    edits, last = [], -1
    for start, length, new in sorted(places):
        start, end = min(start, len(text)), min(start + length, len(text))
        if start > last:
            edits.append((start, end, new))
            last = end
    result = applied(text, edits)
    first = text.rfind("\n", 0, edits[0][0]) + 1 if edits else len(text)
    feed = text.find("\n", edits[-1][1]) if edits else -1
    assert result.startswith(text[:first].rstrip(" \t"))
    assert result.endswith(text[feed + 1 :] if feed >= 0 else "")


SLIPS = """\
job small   # ours
  date  2026-11-25

room 1 "Store"
  height: 2400
  hieght   2400   # from the floor
  wall a 3000 millimetres
  wall b 2l00
    allow no-gap because "none here"   # look again
    allow no-gap because "none here"
  purpose bathroom
"""


def test_safe_fixes_leave_a_readable_text_with_its_comments():
    """Rounds of safe fixes end, mend each slip whose mend is certain, and lose no comment."""
    texts = {"job.room": SLIPS}
    for _ in range(ROUNDS):
        world = MemoryWorld(texts, datetime.date(2026, 11, 25))
        snapshot = Session(world).snapshot("job.room")
        assert snapshot is not None
        changed, _count = mended(texts, snapshot.findings, unsafe=False)
        if not changed:
            break
        texts |= changed
    text = texts["job.room"]
    assert not mended(texts, snapshot.findings, unsafe=False)[0]
    assert [f.name for f in snapshot.findings if f.name == "unreadable-line"] == []
    assert all(words in text for words in ("# ours", "# from the floor", "# look again", "wall b 2100", "3000 mm"))
    assert text.count("height") == 1 and "height: " not in text


def test_a_line_goes_above_the_battens_of_a_method_that_has_nothing_else():
    """Its line stays whole, though what is known of it is the place of a layer, after its first word."""
    text = (
        "job j\nroom r\n  height 2400\n  wall a 3000\n    finish p by m vertical\n"
        "panel p\n  length 2600\n  cover 250\n  thick 10\n  expands 0.03 mm/m/K\n"
        "support bat\n  section 25 x 50\n  length 2400\nmethod m\n  battens bat every 400\n"
    )
    snapshot = Session(MemoryWorld({"a.room": text}, datetime.date(2026, 11, 25))).snapshot("a.room")
    assert snapshot is not None
    findings = [one for one in snapshot.findings if one.name == "no-gap"]
    assert findings
    files, _ = mended({"a.room": text}, findings, unsafe=True)
    head, _, rest = files["a.room"].partition("method m\n")
    assert head == text.partition("method m\n")[0]
    assert rest.endswith("\n  battens bat every 400\n") and rest.startswith("  gap ")


def test_nothing_is_removed_that_another_mend_comes_to_use():
    """`labour late` is put into the job before it is asked whether the gang may go; the other one may."""
    texts = {"a.room": "job j\nroom r\n  height 2400\n  wall a 3000\n    finish p by m vertical\n"}
    texts["a.room"] += (
        "panel p\n  length 2600\n  cover 250\n  thick 10\n  lay vertical\nmethod m\n  glue g bead 8 every 300\n"
    )
    texts["a.room"] += "adhesive g\n  tube 290 ml\nsheet foil\n  roll 1200 x 50 m\ngang late\n  rate 40 per h\n"
    for _ in range(ROUNDS):
        snapshot = Session(MemoryWorld(texts, datetime.date(2026, 11, 25))).snapshot("a.room")
        assert snapshot is not None
        changed, _ = mended(texts, snapshot.findings, unsafe=True)
        texts |= changed
    assert "labour late" in texts["a.room"] and "gang late" in texts["a.room"]
    assert "sheet foil" not in texts["a.room"]


@pytest.mark.parametrize("use", ["gone.room", "rooms/*.room", "../out.room"])
def test_nothing_is_removed_while_a_file_that_is_used_is_missing(use):
    """Its rooms may be those that the panel is for."""
    text = f'job j\n  use "{use}"\npanel p\n  length 2600\n  cover 250\n  thick 10\n'
    snapshot = Session(MemoryWorld({"a.room": text}, datetime.date(2026, 11, 25))).snapshot("a.room")
    assert snapshot is not None
    (hint,) = [one for one in snapshot.findings if one.name == "unused-name"]
    assert not hint.fixes
