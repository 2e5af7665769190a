"""Heights of a wall's top line over a stretch of it."""

from fractions import Fraction

from roomspec.checks.profile import highest, lowest

GABLE = ((0, 2400), (1600, 3100), (3200, 2400))
STEP = ((0, 2400), (1000, 2400), (1000, 2100), (3000, 2100))


def test_ends_and_vertices_between_count() -> None:
    """A gable is highest at its peak and lowest at the lower end of the stretch."""
    assert highest(GABLE, 800, 2800) == 3100
    assert lowest(GABLE, 800, 2800) == Fraction(2575)


def test_a_step_at_the_end_of_the_stretch_does_not_count() -> None:
    """What lies beyond the stretch is not over it."""
    assert lowest(STEP, 0, 1000) == 2400
    assert lowest(STEP, 0, 1001) == 2100
    assert highest(STEP, 1000, 3000) == 2100


def test_off_the_line_there_is_no_height() -> None:
    """A stretch beside the wall has none, and one that hangs over its end is cut to it."""
    assert lowest(STEP, 3000, 4000) is None
    assert lowest(STEP, -500, 500) == 2400
    assert lowest((), 0, 100) is None
