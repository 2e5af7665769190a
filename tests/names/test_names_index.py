"""Definitions and uses across the files of a job."""

import pytest

from roomspec.diagnostics.diagnostic import Origin
from roomspec.names.index import index_files
from roomspec.names.resolve import unknown_names, unused_names
from roomspec.names.spans import MOST_ROOMS
from roomspec.syntax.assemble import read_file


def names(*texts: str):  # type: ignore[no-untyped-def]
    """The index of the texts as files a.room, b.room."""
    return index_files([read_file(f"{name}.room", text) for name, text in zip("abc", texts, strict=False)])


KINDS = (
    "panel",
    "trim",
    "adhesive",
    "sealant",
    "support",
    "fixing",
    "sheet",
    "method",
    "gang",
    "pattern",
    "room",
    "job",
)


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_has_a_space_of_its_own(kind: str) -> None:
    """One name stands once for each kind, in any file."""
    found = names("\n".join(f"{kind} x" for kind in KINDS[:6]), "\n".join(f"{kind} x" for kind in KINDS[6:]))
    assert not found.problems
    definition = found.find(kind, "x")
    assert (definition.kind, definition.name, definition.block.key) == (kind, "x", f"{kind} x")
    assert definition.path == ("a.room" if kind in KINDS[:6] else "b.room")
    assert found.find(kind, "y") is None


def test_rooms_and_repeats_share_a_space() -> None:
    """In the order of the text."""
    found = names("room 3\nrooms 1 to 2, 7 as p\nroom hall", "rooms 8, 9 as p")
    assert list(found.rooms) == ["3", "1", "2", "7", "hall", "8", "9"]
    assert not found.problems


def test_the_second_of_a_name_is_told_and_left_out() -> None:
    """At its own place, whichever file it stands in; the first is the related one."""
    found = names("panel oak\n  cover 1\n\nroom 101", "# two\npanel oak\n  cover 2\nrooms 100 to 102 as p")
    first, second = found.problems
    assert (first.name, first.at) == ("duplicate-name", Origin("file b.room", 1, 6, 9))
    assert first.related[0].at == Origin("file a.room", 0, 6, 9)
    assert (second.name, second.at, second.related[0].at) == (
        "duplicate-name",
        Origin("file b.room", 3, 6, 9),
        Origin("file a.room", 3, 5, 8),
    )
    assert found.find("panel", "oak").path == "a.room"
    assert list(found.rooms) == ["101", "100", "102"]
    assert [block.key for block in found.blocks] == ["panel oak", "room 101", "rooms 100"]


def test_a_second_job_is_left_out() -> None:
    """By whatever name."""
    found = names("job a", "job b")
    (problem,) = found.problems
    assert (problem.name, problem.at) == ("duplicate-name", Origin("file b.room", 0, 4, 5))
    assert found.job.name == "a"


def test_a_span_that_counts_wrongly_is_told() -> None:
    """The other rooms of the line are made."""
    found = names("rooms 112 to 101, 7 as p")
    (problem,) = found.problems
    assert (problem.name, problem.at) == ("impossible-value", Origin("file a.room", 0, 6, 16))
    assert problem.fixes[0].edits[0].text == "101 to 112"
    assert list(found.rooms) == ["7"]


def test_rooms_without_end_are_capped() -> None:
    """A few lines cannot make millions of rooms."""
    lines = "".join(f"rooms {n}001 to {n}999 as p\n" for n in range(1, 40))
    found = names(lines)
    assert len(found.rooms) == MOST_ROOMS
    assert "at most 20,000 rooms" in found.problems[0].message


def test_unknown_names_are_told_where_they_are_used() -> None:
    """The nearest of the same kind is offered, never another kind's."""
    found = names(
        "job j\n  labour too\nroom r\n  finish oka by glue vertical\ngang two\npanel oak\nmethod glued", "trim glue"
    )
    told = {problem.at: problem for problem in unknown_names(found)}
    gang, panel = told[Origin("job j", 1, 9, 12)], told[Origin("room r", 1, 9, 12)]
    method = told[Origin("room r", 1, 16, 20)]
    assert (gang.message, gang.fixes[0].edits[0].text) == ("no gang is called too; no labour is priced", "two")
    assert (panel.help, panel.fixes[0].title) == ("did you mean `oak`?", "write `oak`")
    assert not panel.fixes[0].safe
    assert (method.help, method.fixes) == ("glue is a trim", ())


def test_a_name_like_no_other_says_what_to_write() -> None:
    """Where nothing is near."""
    (problem,) = unknown_names(names("room r\n  finish oak by m vertical\nmethod m"))
    assert problem.help == "define it: `panel oak`, or name the file that does with `use` in the job"


def test_unused_names_are_hinted_in_a_jobs_own_files() -> None:
    """Not in a catalogue, which many jobs use parts of."""
    own = "job j\n  labour two\nroom r\n  finish oak by m vertical\npanel oak\npanel ash\nmethod m\ngang two\ngang one"
    catalogue = "panel elm\nmethod n\n  glue grab bead 8 every 100\nadhesive grab"
    hints = unused_names(names(own, catalogue))
    assert [(hint.name, hint.severity, hint.message) for hint in hints] == [
        ("unused-name", "hint", "nothing uses panel ash"),
        ("unused-name", "hint", "nothing uses gang one"),
    ]


def test_what_a_mistaken_line_may_mean_is_not_called_unused() -> None:
    """Neither what a line that cannot be read names, nor what is nearest to a misspelt name, nor another kind's."""
    for line in (
        "finish oak with m vertical",
        "finish okk by m vertical",
        "finish m by oak vertical",
        "finnish oak by m",
    ):
        own = f"job j\nroom r\n  wall a 100\n    {line}\npanel oak\npanel ash\nmethod m"
        assert [hint.message for hint in unused_names(names(own))] == ["nothing uses panel ash"]


def test_ten_thousand_unknown_names_are_told_quickly() -> None:
    """The nearest are looked up for the first of them only; the count of edits is bounded by their number."""
    text = "room r\n" + "".join(f"  finish oak{n} by glue{n} vertical from {n} to {n + 1}\n" for n in range(5_000))
    text += "".join(f"panel ash{n}\nmethod m{n}\n" for n in range(5_000))
    assert len(unknown_names(names(text))) == 10_000


@pytest.mark.parametrize("slip", ["", "  finnish oak by m vertical", "  finish elm by m vertical"])
def test_nothing_is_removed_while_a_line_may_yet_use_it(slip: str) -> None:
    """A definition can be removed where every line is read and names what there is."""
    own = f"job j\nroom r\n{slip}\n  wall a 100\n    finish oak by m vertical\npanel oak\npanel ash\nmethod m"
    (hint,) = unused_names(names(own))
    assert bool(hint.fixes) == (not slip)


def test_nothing_is_removed_while_a_file_is_missing_or_a_line_stands_under_no_heading() -> None:
    """What the missing file would use nobody knows, nor whether the stray line is of a room."""
    own = "job j\nroom r\n  wall a 100\npanel ash\n"
    (whole,) = unused_names(names(own))
    (missing,) = unused_names(index_files([read_file("a.room", own)], whole=False))
    (stray,) = unused_names(names("  finish ash by m vertical\n" + own))
    assert [bool(hint.fixes) for hint in (whole, missing, stray)] == [True, False, False]
