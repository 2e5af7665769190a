"""Repeated rooms: which names a span stands for, and which spans are refused."""

import pytest

from roomspec.names.spans import MOST, Refused, expanded


@pytest.mark.parametrize(
    ("first", "last", "names"),
    [
        ("101", "104", ("101", "102", "103", "104")),
        ("2.09", "2.12", ("2.09", "2.10", "2.11", "2.12")),
        ("08", "11", ("08", "09", "10", "11")),
        ("8", "11", ("8", "9", "10", "11")),
        ("a1b-01x", "a1b-02x", ("a1b-01x", "a1b-02x")),
        ("99", "101", ("99", "100", "101")),
        ("7", "7", ("7",)),
        ("höf.1", "höf.2", ("höf.1", "höf.2")),
    ],
)
def test_last_number_counts_and_keeps_its_width(first: str, last: str, names: tuple[str, ...]) -> None:
    """The last run of digits counts; what stands around it stays."""
    assert expanded(first, last) == names


@pytest.mark.parametrize(
    ("first", "last", "words", "instead"),
    [
        ("112", "101", "counts downwards", "101 to 112"),
        ("1.01", "2.12", "differ in more than their last number", ""),
        ("a1", "b2", "differ in more than their last number", ""),
        ("lobby", "hall", "lobby holds no number", ""),
        ("101", "hall", "hall holds no number", ""),
        ("098", "102", "", ""),
        ("8", "012", "as many digits", "8 to 12"),
        ("1", str(MOST + 1), "1,001 rooms", ""),
        ("1", "9" * 5000, "more rooms than can be counted", ""),
    ],
)
def test_spans_that_are_refused_say_why(first: str, last: str, words: str, instead: str) -> None:
    """A span that cannot be meant gives a reason, and the likely one where there is one."""
    found = expanded(first, last)
    if not words:
        assert not isinstance(found, Refused)
        return
    assert isinstance(found, Refused)
    assert words in found.message
    assert found.instead == instead


def test_the_longest_span_is_read() -> None:
    """A thousand rooms are still counted."""
    names = expanded("0001", "1000")
    assert not isinstance(names, Refused)
    assert len(names) == MOST
    assert (names[0], names[-1]) == ("0001", "1000")
