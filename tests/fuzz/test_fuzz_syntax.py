"""A fixed number of fuzzing seeds, run with the other tests."""

from fuzz_syntax import run


def test_torn_texts_are_read_and_formatted() -> None:
    """Two hundred torn texts: no exception, and formatting keeps what was understood."""
    assert run(200) == 200
