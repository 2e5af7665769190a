"""What is said of a line that cannot be read: the exact words, one sentence, the mend."""

import pytest

from roomspec.diagnostics.diagnostic import Diagnostic
from roomspec.syntax.assemble import read_file
from roomspec.text.lines import lines_of

WALL = 'room 1 "Bedroom"\n  wall a 3000\n'
JOB = "job example\n"
METHOD = "method glued\n"
PANEL = "panel board\n"

CASES = [
    # under, line, words marked, message, text to write (None: no fix), safe
    (WALL, "dorr 900 x 2000 at 5", "dorr", "`dorr` begins no line; did you mean `door`?", "door", True),
    (WALL, "Door 900 x 2000", "Door", "`Door` begins no line; did you mean `door`?", "door", True),
    (WALL, "joint up 2040", "joint", "`joint` begins no line; did you mean `joints`?", "joints", True),
    (WALL, 'fix "rail" at 700', "fix", "`fix` begins no line; did you mean `fixing` or `fixture`?", None, False),
    (WALL, "purpse bathroom", "purpse", "`purpse` begins no line of a wall", None, False),
    (METHOD, "batten sw every 400", "batten", "`batten` begins no line; did you mean `battens`?", "battens", True),
    (PANEL, "batens sw every 400", "batens", "`batens` begins no line of a panel", None, False),
    (PANEL, "size 2600 x 250 x 10", "size", "`size` begins no line of a panel", None, False),
    (PANEL, "boxing 245 x 245 up 0", "boxing", "`boxing` begins no line of a panel", None, False),
    (WALL, "on plaster, masonry", ",", "no comma is wanted here; `over` is", " over", False),
    (WALL, "surface painted, sound", ",", "`,` cannot be read here", None, False),
    (WALL, "paint blue", "paint", "`paint` begins no line that is known", None, False),
    (
        WALL,
        "door 900 x 2000 at",
        "door 900 x 2000 at",
        "`door 900 x 2000 at` is not finished: a length is missing",
        None,
        False,
    ),
    (WALL, "door 900 x 2000 att 5", "att", "`att` cannot be read here; did you mean `at`?", "at", False),
    (WALL, "door 900 at 50", "at", "`at` stands where `x` belongs", None, False),
    (WALL, "door 9oo x 2000", "9oo", "`9oo` cannot be read as a length", "900", True),
    (WALL, "door 900 x 2000 # at", "", "", None, False),
    (WALL, "door 900 x 2.1 metres", "metres", "`metres` is no unit here; it is written `m`", "m", True),
    (WALL, "height: 2400", ":", "no colon is wanted; leave out `:`", "", True),
    (WALL, "height = 2400", "=", "no equals sign is wanted; leave out `=`", "", True),
    (WALL, "{", "{", "no braces are wanted, since a line belongs to the heading above it; leave out `{`", "", False),
    (WALL, "bare;", ";", "no semicolon is wanted, since one fact stands on one line; leave out `;`", "", True),
    (WALL, "bare bare", "bare", "`bare` is too much: the line is complete after `bare`", None, False),
    (
        WALL,
        'note "key at reception',
        '"key at reception',
        "this text has no closing quotation mark",
        '"key at reception"',
        False,
    ),
    (WALL, "note “key”", "“key”", "texts stand in straight quotation marks", '"key"', True),
    (WALL, "note „the key“", "„the key“", "texts stand in straight quotation marks", '"the key"', True),
    (WALL, "note “key", "“key", "texts stand in straight quotation marks", None, False),
    (
        WALL,
        'door "to the hall 826 x 2040 at 500',
        '"to the hall 826 x 2040 at 500',
        "this text has no closing quotation mark",
        '"to the hall" 826 x 2040 at 500',
        False,
    ),
    (
        WALL,
        "door at 500 826 x 2040",
        "at",
        "`at` stands where a length, a text in quotation marks or `about` belongs",
        None,
        False,
    ),
    (
        WALL,
        "note key at reception",
        "key at reception",
        "`key at reception` stands where a text in quotation marks belongs",
        '"key at reception"',
        False,
    ),
    (WALL, "note door", "door", "`door` stands where a text in quotation marks belongs", '"door"', False),
    (WALL, "socket 500 up 450", "500", "`at` is missing before `500`", "at 500", False),
    (METHOD, "battens every 400", "400", "`400` stands where `every` belongs", None, False),
    (WALL, "finish board glued", "glued", "`by` is missing before `glued`", "by glued", False),
    (
        WALL,
        "finish board by glued vertcal",
        "vertcal",
        "`vertcal` cannot be read here; did you mean `vertical`?",
        "vertical",
        True,
    ),
    (WALL, "wet splashed", "splashed", "`splashed` cannot be read here; did you mean `splash`?", "splash", True),
    (JOB, "date tomorrow", "tomorrow", "`tomorrow` stands where a date such as 2026-11-25 belongs", None, False),
    (JOB, "use rooms", "rooms", "`rooms` stands where a text in quotation marks belongs", '"rooms"', False),
    (JOB, "labour", "labour", "`labour` is not finished: the name of a gang is missing", None, False),
    (JOB, "currency euro", "euro", "`euro` stands where a currency in three capital letters belongs", None, False),
    (JOB, "measured nrm3", "nrm3", "`nrm3` cannot be read here; did you mean `nrm2`?", "nrm2", False),
    (METHOD, "gap 5 at the floor", "the", "`the` stands where `ceiling`, `ends` or `floor` belongs", None, False),
    (METHOD, "glue grab bead 8 evry 100", "evry", "`evry` cannot be read here; did you mean `every`?", "every", True),
    (PANEL, "reaction X", "X", "`X` stands where a reaction-to-fire class such as B-s2,d0 belongs", None, False),
    (PANEL, "lay", "lay", "`lay` is not finished: `horizontal`, `overhead` or `vertical` is missing", None, False),
    (WALL, "bare\r  butts", "\r", "a bare carriage return stands in this line", None, False),
    ("", "hello", "hello", "`hello` begins no line that is known", None, False),
    ("", "\0\0\x85", "\0\0", "`\ufffd\ufffd` begins no line that is known", None, False),
]


def all_problems(text: str) -> list[tuple[int, Diagnostic]]:
    """Each problem with its line in the text."""
    tree = read_file("a.room", text)
    found = [(problem.at.line, problem) for problem in tree.problems]
    for placed in tree.blocks:
        for block in (placed.block, *placed.block.parts):
            found.extend((placed.line + problem.at.line, problem) for problem in block.problems)
    return found


def shown(text: str) -> list[tuple[str, str, str]]:
    """Each problem as its name, the words marked, the message."""
    lines = lines_of(text)
    return [
        (problem.name, lines.line(line)[problem.at.start : problem.at.end], problem.message)
        for line, problem in all_problems(text)
    ]


@pytest.mark.parametrize(
    ("under", "line", "words", "message", "instead", "safe"), CASES, ids=lambda value: str(value)[:24]
)
def test_a_line_is_explained(under: str, line: str, words: str, message: str, instead: str | None, safe: bool) -> None:
    """The words, the message and the fix are these; nothing else is said."""
    text = f"{under}    {line}\n"
    assert shown(text) == ([("unreadable-line", words, message)] if message else [])
    fixes = [fix for _, problem in all_problems(text) for fix in problem.fixes]
    assert [fix.edits[0].text for fix in fixes] == ([] if instead is None else [instead])
    assert [fix.safe for fix in fixes] == ([] if instead is None else [safe])


@pytest.mark.parametrize("case", [case for case in CASES if case[5]], ids=lambda case: str(case[1])[:24])
def test_the_mend_of_a_single_mistake_reads(case: tuple[str, str, str, str, str, bool]) -> None:
    """A safe fix leaves nothing to complain of."""
    under, line, words, _, instead, _ = case
    assert not shown(f"{under}    {line.replace(words, instead, 1)}\n")


def test_messages_stand_alone_in_an_estimators_words() -> None:
    """One line each, without the grammar's names, never `illegal`, no final stop."""
    for under, line, *_ in CASES:
        for _, problem in all_problems(f"{under}    {line}\n"):
            for said in (problem.message, problem.help):
                assert "\n" not in said and not said.endswith(".")
                assert not any(
                    word in said for word in ("illegal", "token", "NAME", "LENGTH", "$END", "_KEY", "syntax")
                )


def test_noise_is_limited_and_quick() -> None:
    """Ten thousand lines of garbage give a hundred findings and a count of the others."""
    text = "room 1\n" + "".join(f"  garbage{number} xyz\n" for number in range(10_000))
    found = shown(text)
    assert len(found) == 101
    assert found[-1] == ("unreadable-line", "garbage100", "9900 more lines from here on cannot be used")


@pytest.mark.parametrize(
    "line",
    [
        "wall a " + "1" * 200_000,
        "wall a 5'" + " " * 100_000 + "x",
        "wall a " + "1," * 100_000,
        "wall a " + "1-" * 100_000,
        "wall a " + "1 111" * 50_000,
        "wall a 8" + "\t" * 100_000 + "/",
        'note "' + "x" * 200_000,
        "note " + '"' * 100_000,
        "door 900 x 2000 " + "at 5 " * 50_000,
        "\0" * 100_000,
    ],
    ids=lambda line: line[:12],
)
def test_a_huge_line_is_read_at_once(line: str) -> None:
    """No line takes more than its length."""
    assert all(len(message) < 300 for _, _, message in shown(f"room 1\n{line}\n"))


@pytest.mark.parametrize(("line", "offered"), [("188 0", False), ("188 5", False), ("1880 1884", True)])
def test_to_is_offered_only_where_it_makes_a_range(line: str, offered: bool) -> None:
    """`188 0` is a slip for one figure, `1880 1884` may be two readings."""
    tree = read_file("a.room", f"room 1\n  wall b {line}\n")
    said = [*tree.problems, *(problem for placed in tree.blocks for problem in placed.block.problems)]
    assert len(said) == 1
    assert any("`to " in fix.title for fix in said[0].fixes) is offered
