"""The line that `height` and `floor` draw, vertex by vertex."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from read_job import job_with, mm, told, wall_with, words_at

from roomspec.compile.face_lines import Rise
from roomspec.compile.profile import drawn
from roomspec.quantities.length import MM


def points(*pairs: tuple[float, float]) -> tuple[tuple[int, ...], ...]:
    """Pairs of millimetres as vertices."""
    return tuple(mm(*pair) for pair in pairs)


@pytest.mark.parametrize(
    ("lines", "top"),
    [
        (("height 2400",), points((0, 2400), (3000, 2400))),
        (("height 2400 to 2700",), points((0, 2400), (3000, 2700))),
        (("height 0 to 2700",), points((0, 0), (3000, 2700))),
        (("height 2400 peak 3100 at 1600",), points((0, 2400), (1600, 3100), (3000, 2400))),
        (("height 2400 to 2500 peak 3100 at 1600",), points((0, 2400), (1600, 3100), (3000, 2500))),
        (
            ("height 2300 from 1100 to 3000", "height 1200 to 2300 from 0 to 1100"),
            points((0, 1200), (1100, 2300), (3000, 2300)),
        ),
        (
            ("height 2400 from 0 to 1000", "height 2100 from 1000 to 3000"),
            points((0, 2400), (1000, 2400), (1000, 2100), (3000, 2100)),
        ),
        (
            ("height 2400", "height 2100 from 1000 to 1500"),
            points((0, 2400), (1000, 2400), (1000, 2100), (1500, 2100), (1500, 2400), (3000, 2400)),
        ),
        (
            ("height 2400 to 2700", "height 2100 from 1000 to 1500"),
            points((0, 2400), (1000, 2500), (1000, 2100), (1500, 2100), (1500, 2550), (3000, 2700)),
        ),
        (
            ("height 2400 peak 3000 at 1500", "height 2400 from 2000 to 3000"),
            points((0, 2400), (1500, 3000), (2000, 2800), (2000, 2400), (3000, 2400)),
        ),
    ],
)
def test_heights_are_drawn_exactly(lines: tuple[str, ...], top: tuple[tuple[int, ...], ...]) -> None:
    """Level, raked, gabled, in parts, and parts over a whole, on a wall 3000 wide."""
    assert wall_with(*lines).top == top


def test_a_floor_rises_and_lands() -> None:
    """A stair of 2700 with a landing, as the language has it."""
    wall = wall_with("floor 0 to 2700 from 0 to 3600", "floor 2700 to 2700 from 3600 to 5000", width=5000)
    assert wall.floor == points((0, 0), (3600, 2700), (5000, 2700))
    assert wall_with().floor == points((0, 0), (3000, 0))
    assert wall_with("floor 0 to -13").floor == points((0, 0), (3000, -13))


@pytest.mark.parametrize(
    ("lines", "words", "message", "top"),
    [
        (
            ("height 2400 from 0 to 1000", "height 2400 from 1100 to 3000"),
            "height 2400 from 1100 to 3000",
            "nothing is said from 1000 to 1100 mm, and parts must meet from end to end",
            points((0, 2400), (1000, 2400), (1100, 2400), (3000, 2400)),
        ),
        (
            ("height 2400 from 0 to 1000", "height 2100 from 900 to 3000"),
            "height 2100 from 900 to 3000",
            "begins at 900 mm, before the last one ends",
            points((0, 2400), (1000, 2400), (1000, 2100), (3000, 2100)),
        ),
        (
            ("height 2400 from 0 to 3500",),
            "height 2400 from 0 to 3500",
            "ends at 3500 mm, beyond the wall's 3000 mm",
            points((0, 2400), (3000, 2400)),
        ),
        (
            ("height 2400 from 0 to 2000",),
            "height 2400 from 0 to 2000",
            "nothing is said from 2000 to 3000 mm, and parts must meet from end to end",
            points((0, 2400), (2000, 2400), (3000, 2400)),
        ),
    ],
)
def test_parts_must_meet(lines: tuple[str, ...], words: str, message: str, top: tuple[tuple[int, ...], ...]) -> None:
    """The room's height does not fill what a wall's parts leave out: a slip of the pen would draw a step."""
    text = "\n    ".join(("room r\n  height 2400\n  wall a 3000", *lines)) + "\n"
    job = job_with(text)
    (problem,) = told(job)
    assert (problem.name, words_at(problem.at, "job j\n" + text)) == ("impossible-value", words)
    assert message in problem.message
    assert job.job.rooms[0].walls[0].top == top


PLACE = st.integers(0, 40)
RISES = st.lists(
    st.builds(
        lambda start, end, ends: Rise(start * MM, end * MM, None, (min(ends) * MM, (max(ends) + 1) * MM)),
        PLACE,
        PLACE,
        st.tuples(PLACE, PLACE),
    ),
    max_size=5,
)


@settings(max_examples=150)
@given(RISES, st.integers(1, 30), st.booleans())
def test_any_parts_draw_one_line_from_end_to_end(rises: list[Rise], width: int, ground: bool) -> None:
    """From 0 to the width without going back, and within the heights that are said."""
    all_rises = [*rises, *([Rise(7 * MM, 9 * MM)] if ground else [])]
    line, slips = drawn(all_rises, width * MM)
    across = [x for x, _ in line]
    assert across[0] == 0
    assert across[-1] == width * MM
    assert across == sorted(across)
    highest = max((h for rise in all_rises for h in (rise.start, rise.end)), default=0)
    assert all(0 <= y <= highest for _, y in line)
    assert all(0 <= number < max(len(all_rises), 1) for number, _ in slips)
