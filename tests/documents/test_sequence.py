"""The sequence of work and the checks to tick: what the room has, each once, with the walls that it is true of."""

import pytest
from small_hand_over import JOB, handed_over

from roomspec.reports.hand_over.given import faces_text
from roomspec.reports.hand_over.sequence import sequence_of
from roomspec.reports.hand_over.ticks import ticks_of

TRIMS = JOB.replace("  edge edge\n", "  edge edge\n  joint edge\n  outside-corner mitred\n  gap 5 at ceiling\n")


def steps(text: str) -> tuple[str, ...]:
    """The sequence of the small job's room."""
    given = handed_over(text=text)
    return sequence_of(given.rooms[0], given.numerals)


def ticks(text: str) -> tuple[str, ...]:
    """Its checks."""
    given = handed_over(text=text)
    return ticks_of(given.rooms[0], given.numerals, given.made.job.terms.narrowest)


def marked(text: str) -> list[str]:
    """The steps of marking out."""
    return [step for step in steps(text) if "mark out" in step]


def test_walls_of_which_the_same_is_true_share_a_step():
    """Walls a and c are alike; b and d are as wide, and both are set out in the same way."""
    same = "mark out {} columns of board, vertical, balanced: {} mm at the left and at the right."
    assert marked(JOB) == [f"Walls a and c: {same.format(12, 245)}", f"Walls b and d: {same.format(8, 245)}"]
    assert sum("see that all is sound" in step for step in steps(JOB)) == 1


@pytest.mark.parametrize(
    ("way", "ends"),
    [
        ("start left", "from the left: 250 mm at the left, 240 mm at the right"),
        ("start right", "from the right: 240 mm at the left, 250 mm at the right"),
        ("start centre", "with a panel centred: 120 mm at the left and at the right"),
    ],
)
def test_the_ends_are_told_where_they_stand(way: str, ends: str):
    """2990 mm between the corners take eleven panels of 250 mm and 240 mm more, from whichever side one begins."""
    assert any(step.endswith(f"vertical, {ends}.") for step in marked(JOB.replace("start balanced", way)))


def test_rows_are_told_from_the_floor_up():
    """The start along a row stands after the rows, with its bond."""
    text = JOB.replace("vertical start balanced", "horizontal bond third rows top start left").replace(
        "lay vertical", "lay horizontal"
    )
    first = marked(text)[0]
    assert "rows of board, horizontal, from the top: " in first
    assert first.endswith("250 mm at the top; along each row from the left, bond third.")


def test_only_what_the_room_has_is_told():
    """No joint over a lining lower than a panel, no outside corner in a room of four walls."""
    told = "\n".join(steps(TRIMS))
    assert "edge (Edge trim)" in told
    assert "joint (" not in told
    assert "outside corners" not in told
    assert "joint (" in "\n".join(steps(TRIMS.replace("height 2400", "height 2900")))


@pytest.mark.parametrize(("region", "kept"), [("", True), (" up 0 to 1000", False), (" up 1000 to 2400", True)])
def test_a_gap_is_kept_where_the_lining_reaches_it(region: str, kept: bool):
    """A dado ends below the ceiling, so that it has no gap there, in the sequence as in the checks."""
    text = TRIMS.replace("start balanced", f"start balanced{region}")
    assert any("keep a gap of 5 mm at the ceiling" in step for step in steps(text)) is kept
    assert ("Gap of 5 mm open at the ceiling." in ticks(text)) is kept


@pytest.mark.parametrize(
    ("names", "told"),
    [
        (("wall a", "wall b", "wall a"), "walls a and b"),
        (("wall a niche back", "wall a niche left jamb", "wall b"), "wall b; wall a niche back and left jamb"),
        (("wall b boxing 1 front", "wall b boxing 2 front"), "wall b boxing 1 front; wall b boxing 2 front"),
        (("ceiling over", "ceiling over hatch leaf"), "ceiling over; ceiling over hatch leaf"),
        ((), ""),
    ],
)
def test_faces_are_told_by_what_they_are_of(names: tuple[str, ...], told: str):
    """Plain walls first, then the faces of each thing on a wall together."""
    assert faces_text(names) == told


def test_cut_outs_are_one_check():
    """Each wall with its number."""
    text = JOB.replace("  wall c 3000\n", "  wall c 3000\n    socket at 500 up 450\n    socket at 900 up 450\n")
    assert "Each cut-out made and tried against its plate or rose: wall a 1 and wall c 3." in ticks(text)
