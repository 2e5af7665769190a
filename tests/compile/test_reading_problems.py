"""What cannot be in a room: each told once, at the very words, with its mend."""

import pytest
from read_job import job_with, told, words_at


def problem_of(*lines: str, head: str = "wall a 3000") -> tuple[str, str, str, list[str]]:
    """The one problem of a wall of these lines: its name, words, message and what its fixes write."""
    text = "\n".join(("room r", "  height 2400", f"  {head}", *(f"    {line}" for line in lines))) + "\n"
    (problem,) = told(job_with(text))
    written = [edit.text for fix in problem.fixes for edit in fix.edits]
    return problem.name, words_at(problem.at, "job j\n" + text), problem.message, written


@pytest.mark.parametrize(
    ("line", "words", "message", "instead"),
    [
        ("height 24000", "24000", "a height of 24 m cannot be", ["2400"]),
        ("height 24 m", "24 m", "a height of 24 m cannot be", ["2400"]),
        ("height 0", "height 0", "leaves no wall", []),
        ("height -5", "-5", "a height of -5 mm", []),
        ("height 2400 peak 0 at 100", "0", "a height of 0 mm", []),
        ("flat 3000 under 2 m", "3000", "more than the straightedge", []),
        ("studs every 0", "0", "a spacing of studs of 0 mm", []),
        ("wet direct from 900 to 100", "from 900 to 100", "ends before it begins", ["from 100 to 900"]),
        ("on tile up 900 to 900", "up 900 to 900", "ends where it begins", []),
        ("corner inside 0 deg", "0 deg", "is no corner", []),
        ("corner outside 180 deg", "180 deg", "is no corner", []),
        ("corner inside 270 deg", "270 deg", "is no corner", []),
        ("door 0 x 2040 at 500", "0", "a width of 0 mm", []),
        ("door 926 x 20400 at 500", "20400", "a height of 20.4 m", ["2040"]),
        ("door 926 x 2040 at -5", "-5", "a place of -5 mm", []),
        ("window 600 x 900 at 0 sill -1", "-1", "a sill of -1 mm", []),
        ("window 600 x 900 at 0 sill 900 reveal 0", "0", "a reveal of 0 mm", []),
        ("fixture at 0 up 0 load 9000 kg", "9000 kg", "a load of 9000 kg", []),
        ("keep skirting 0", "0", "a kept trim of 0 mm", []),
        ("upstand 50 lap 100", "100", "more than the upstand's height", []),
        ("joints up 0", "0", "a place of 0 mm", []),
        ("finish lime by glued lengthwise", "lengthwise", "panels on a wall do not run lengthwise", ["horizontal"]),
        ("finish lime by glued crosswise", "crosswise", "panels on a wall do not run crosswise", ["vertical"]),
        ("finish lime by glued vertical start joint at 200 m", "200 m", "a place of 200 m", []),
        ("floor 0 to 16 m", "16 m", "a floor of 16 m", []),
        ("boxing 900 x 1150 at 0 deep 0", "0", "a depth of 0 mm", []),
    ],
)
def test_a_wall_that_cannot_be_is_told(line: str, words: str, message: str, instead: list[str]) -> None:
    """One `impossible-value` each."""
    name, found, said, written = problem_of(line)
    assert (name, found, written) == ("impossible-value", words, instead)
    assert message in said


@pytest.mark.parametrize(
    ("line", "message", "insert"),
    [
        ("door 926 x 2040", "how far along the wall", [" at 0"]),
        ("bath 1700 x 560", "how far along the wall", [" at 0"]),
        ("window 600 x 900 at 640", "how high its sill is", [" sill 0"]),
        ("hatch 600 x 900 at 640", "how high its sill is", [" sill 0"]),
        ("niche 300 x 600 at 0 sill 900", "how deep it is", []),
        ("boxing 300 x 600 at 0", "how deep it is", []),
        ("socket at 300", "how high above the floor", []),
        ("socket up 300", "how far along the wall", [" at 0"]),
    ],
)
def test_what_a_line_does_not_say_leaves_it_out(line: str, message: str, insert: list[str]) -> None:
    """One `missing-line` over all of the line."""
    name, found, said, written = problem_of(line)
    assert (name, found, written) == ("missing-line", line, insert)
    assert message in said
    assert said.endswith("it is left out")


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("door 926 kg x 2040 at 500", "926 kg"),
        ("corner inside 92 m", "92 m"),
        ("fixture at 0 up 0 load 9", "9"),
        ("wet direct from 0 to 1,2 m", "1,2 m"),
        ("socket at 300 up 10.6 ft", "10.6 ft"),
        ("on tile 22 kg over plaster", "22 kg"),
    ],
)
def test_a_quantity_of_another_kind_is_told(line: str, words: str) -> None:
    """One `wrong-unit` at the quantity."""
    name, found, _, _ = problem_of(line)
    assert (name, found) == ("wrong-unit", words)


@pytest.mark.parametrize(
    ("head", "words", "message"),
    [
        ("wall a 0", "0", "a wall of 0 mm cannot be"),
        ("wall a 1 km", "1 km", "a wall of 1000 m cannot be"),
        ("wall a 3000 to 5", "5", "a wall of 5 mm cannot be"),
        ("wall a " + "9" * 40, "9" * 40, "too many digits"),
    ],
)
def test_a_wall_of_no_size_leaves_the_room_incomplete(head: str, words: str, message: str) -> None:
    """The wall is left out where its width is not known, and the plan is not to be trusted."""
    text = f"room r\n  height 2400\n  {head}\n  wall b 3000\n"
    job = job_with(text)
    (problem,) = told(job)
    assert (problem.name, words_at(problem.at, "job j\n" + text)) == ("impossible-value", words)
    assert message in problem.message
    room = job.job.rooms[0]
    assert room.incomplete == (words != "5")
    assert [wall.name for wall in room.walls] == (["a", "b"] if words == "5" else ["b"])


def test_a_lined_face_needs_lined() -> None:
    """The fix puts the word in."""
    assert problem_of("door 926 x 2040 at 0 head") == (
        "missing-line",
        "head",
        "`head` names a face to be lined, but `lined` is not said",
        ["lined head"],
    )


def test_a_bare_wall_has_no_finish() -> None:
    """`bare` holds."""
    name, words, _, _ = problem_of("bare", "finish lime by glued vertical")
    assert (name, words) == ("impossible-value", "bare")


def test_a_room_without_height_is_told_once() -> None:
    """At its name, with its walls; they keep their width and nothing stands in them."""
    text = "room r\n  wall a 3000\n    door 926 x 2040 at 0\n  wall b 2000\n    height 2400\n  wall c 3000\n"
    job = job_with(text)
    (problem,) = told(job)
    assert (problem.name, words_at(problem.at, "job j\n" + text)) == ("missing-line", "r")
    assert "walls a, c" in problem.message
    walls = job.job.rooms[0].walls
    assert walls[0].top == ((0, 0), (walls[0].width, 0))
    assert walls[0].openings == ()
    assert not job.job.rooms[0].incomplete


def test_a_height_that_cannot_be_is_not_also_missing() -> None:
    """One mistake is told once."""
    (problem,) = told(job_with("room r\n  height 2,4 m\n  wall a 3000\n"))
    assert problem.name == "wrong-unit"
    assert [edit.text for fix in problem.fixes for edit in fix.edits] == ["2.4 m"]


def test_two_walls_of_one_name_are_told() -> None:
    """The first counts; the second points at it."""
    text = "room r\n  height 2400\n  wall a 3000\n  wall a 2000\n"
    job = job_with(text)
    (problem,) = told(job)
    assert (problem.name, problem.at.line) == ("duplicate-name", 3)
    assert problem.related[0].at.line == 2
    assert len(job.job.rooms[0].walls) == 1


def test_a_diagonal_to_no_wall_is_told() -> None:
    """At the name, the nearest offered; the diagonal is left out."""
    text = "room r\n  height 2400\n  diagonal a bb 5000\n  wall a 3000\n  wall b 2000\n"
    job = job_with(text)
    (problem,) = told(job)
    assert (problem.name, words_at(problem.at, "job j\n" + text)) == ("unknown-name", "bb")
    assert [fix.edits[0].text for fix in problem.fixes] == ["b", "a"] or [f.edits[0].text for f in problem.fixes] == [
        "b"
    ]
    assert job.job.rooms[0].diagonals == ()


def test_a_finish_of_an_unmade_panel_is_left_out() -> None:
    """The panel's own problem says so; nothing more is told of the finish."""
    text = "room r\n  height 2400\n  finish p by glued vertical\n  wall a 3000\npanel p\n  length 2600\n  thick 10\n"
    job = job_with(text)
    (problem,) = told(job)
    assert problem.message == "panel p says no `cover`; it is left out wherever it is used"
    assert job.job.rooms[0].walls[0].finishes == ()


def test_a_finish_of_an_unknown_panel_or_method_is_left_out() -> None:
    """One `unknown-name` for each, the nearest offered."""
    text = "room r\n  height 2400\n  finish line by blued vertical\n  wall a 3000\n"
    job = job_with(text)
    assert [(p.name, words_at(p.at, "job j\n" + text), p.fixes[0].edits[0].text) for p in told(job)] == [
        ("unknown-name", "line", "lime"),
        ("unknown-name", "blued", "glued"),
    ]
    assert all(problem.message.endswith("this finish is left out") for problem in told(job))
    assert job.job.rooms[0].walls[0].finishes == ()


def test_a_kerf_as_wide_as_the_panel_is_told() -> None:
    """At the kerf."""
    text = "  kerf 20\nroom r\n  height 2400\n  finish thin by glued vertical\n  wall a 3000\n"
    text += "panel thin\n  length 2600\n  cover 18\n  thick 9\n"
    (problem,) = told(job_with(text))
    assert (problem.name, words_at(problem.at, "job j\n" + text)) == ("impossible-value", "kerf 20")


def test_a_ceiling_without_size_has_no_right_end() -> None:
    """What is measured from it is left out."""
    text = "room r\n  height 2400\n  wall a 3000\n  ceiling c\n    hatch 600 x 600 at 0 from right up 100\n"
    job = job_with(text)
    (problem,) = told(job)
    assert problem.name == "missing-line"
    assert job.job.rooms[0].ceilings[0].openings == ()
