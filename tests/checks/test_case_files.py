"""The case format itself: reading, comparing, rewriting."""

from pathlib import Path

from case_files import Mark, applied, read_cases, rewrite, unlike

from roomspec.analysis.found import FoundEdit, Place

TEXT = """\
# topic

```room catalogue.room
panel p
```

## One (only narrow-strip, idle-allow)

```room
job j
  wall a 30$000
# ^^^^ error some-name: begins so
^^^ hint other-name
```

```fixed catalogue.room
panel q
```

## Two

Words.

```room rooms/1.room
room 1
```
"""


def write(folder: Path, text: str = TEXT) -> Path:
    """The text as a case file."""
    path = folder / "topic.md"
    path.write_text(text, "utf-8")
    return path


def test_reads_files_marks_cursor_and_what_all_cases_share(tmp_path: Path) -> None:
    """Caret lines are no part of the file; the shared file comes after the case's own."""
    one, two = read_cases(write(tmp_path))
    assert one.files == {"job.room": "job j\n  wall a 3000\n", "catalogue.room": "panel p\n"}
    assert one.marks == (
        Mark("job.room", 2, 3, 7, "error", "some-name", "begins so"),
        Mark("job.room", 2, 1, 4, "hint", "other-name"),
    )
    assert (one.only, one.fixed, one.cursor) == (
        ("narrow-strip", "idle-allow"),
        ("catalogue.room", "panel q\n"),
        ("job.room", 2, 12),
    )
    assert (two.job, two.files["catalogue.room"], two.only) == ("rooms/1.room", "panel p\n", ())


def test_a_finding_without_its_mark_fails_as_a_mark_without_its_finding(tmp_path: Path) -> None:
    """Place, severity and name must agree, and the message begin as it is written."""
    expected = read_cases(write(tmp_path))[0].marks
    actual = [
        Mark("job.room", 2, 3, 7, "error", "some-name", "begins so and goes on"),
        Mark("job.room", 2, 1, 5, "hint", "other-name", "longer"),
    ]
    assert unlike(expected, actual) == [
        "missing  job.room:2:1-4 hint other-name: ",
        "unmarked job.room:2:1-5 hint other-name: longer",
    ]
    assert unlike(expected, [actual[0], Mark("job.room", 2, 1, 4, "hint", "other-name", "any")]) == []


def test_rewrites_one_case_and_leaves_the_rest(tmp_path: Path) -> None:
    """New messages are written, left-out ones stay left out; a second reading gives what was written."""
    path = write(tmp_path)
    found = [
        Mark("job.room", 1, 1, 4, "hint", "other-name", "not shown"),
        Mark("job.room", 2, 3, 7, "error", "some-name", "new words"),
    ]
    rewrite(path, "One (only narrow-strip, idle-allow)", found, "panel r\n")
    assert path.read_text("utf-8") == TEXT.replace("panel q", "panel r").replace(
        "job j\n  wall a 30$000\n# ^^^^ error some-name: begins so\n^^^ hint other-name\n",
        "job j\n^^^ hint other-name\n  wall a 30$000\n# ^^^^ error some-name: new words\n",
    )
    assert unlike(read_cases(path)[0].marks, found) == []


def test_edits_are_made_last_first_and_an_emptied_line_goes() -> None:
    """Places are those of the text as it was."""
    text = "job j\n  allow x\n  wall a\n"
    edits = (FoundEdit(Place("j", 2, 3, 2, 10), ""), FoundEdit(Place("j", 3, 9, 3, 9), "\n  wall b"))
    assert applied(text, edits) == "job j\n  wall a\n  wall b\n"
