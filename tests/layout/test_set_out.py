"""Setting out strips, worked by hand."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roomspec.layout.set_out import joint_of, set_out, strips_from_joint
from roomspec.model.shape import SetOut


@pytest.mark.parametrize(
    ("way", "strips"),
    [
        (SetOut("left"), (250, 250, 250, 250, 60)),
        (SetOut("bottom"), (250, 250, 250, 250, 60)),
        (SetOut("right"), (60, 250, 250, 250, 250)),
        (SetOut("top"), (60, 250, 250, 250, 250)),
        (SetOut("centre"), (155, 250, 250, 250, 155)),
        (SetOut("joint"), (30, 250, 250, 250, 250, 30)),
        (SetOut("balanced"), (155, 250, 250, 250, 155)),
        (SetOut("joint", 200), (100, 250, 250, 250, 210)),
        (SetOut("centre", 200), (225, 250, 250, 250, 85)),
    ],
)
def test_each_way(way: SetOut, strips: tuple[int, ...]) -> None:
    """A run of 1060 that begins at 100, panels of 250."""
    assert set_out(100, 1160, 250, way) == strips


@pytest.mark.parametrize(
    ("length", "strips"),
    [(1000, (250,) * 4), (249, (249,)), (250, (250,)), (251, (125, 126)), (500, (250, 250)), (0, ()), (-5, ())],
)
def test_balanced_runs(length: int, strips: tuple[int, ...]) -> None:
    """A run that fits whole is not cut, a short one is one piece, a spare nanometre goes to the last."""
    assert set_out(0, length, 250, SetOut("balanced")) == strips


def test_balanced_is_the_better_centred_way() -> None:
    """Of the two centred ways, the one whose narrowest strip is wider."""
    for length in range(2, 1500, 2):
        ways = [set_out(0, length, 100, SetOut(way)) for way in ("centre", "joint")]
        assert set_out(0, length, 100, SetOut("balanced")) == max(ways, key=lambda strips: min(strips[0], strips[-1]))


WAYS = st.builds(
    SetOut, st.sampled_from(("left", "right", "centre", "joint", "balanced")), st.none() | st.integers(-5000, 5000)
)


@given(st.integers(-1000, 1000), st.integers(1, 20_000), st.integers(1, 700), WAYS)
def test_strips_fill_the_run(start: int, length: int, module: int, way: SetOut) -> None:
    """Strips sum to the run; all but the ends are whole; none is empty or over a module."""
    strips = set_out(start, start + length, module, way)
    assert sum(strips) == length
    assert all(0 < strip <= module for strip in strips)
    assert set(strips[1:-1]) <= {module}


@given(st.integers(-1000, 1000), st.integers(1, 20_000), st.integers(1, 700), WAYS)
def test_the_joint_gives_the_strips(start: int, length: int, module: int, way: SetOut) -> None:
    """Every way is its one joint and the others a module apart."""
    joint = joint_of(start, start + length, module, way)
    assert strips_from_joint(start, start + length, module, joint) == set_out(start, start + length, module, way)
