"""What a repository may choose for its checks."""

import pytest

from roomspec.checks.choosing import chosen, refused, stays_whatever_is_chosen


@pytest.mark.parametrize(
    ("choice", "severity", "expected"),
    [
        ("error", "warning", "error"),
        ("error", "hint", "hint"),
        ("hint", "warning", "hint"),
        ("warning", "hint", "hint"),
        ("off", "warning", "off"),
        ("off", "hint", "off"),
    ],
)
def test_a_choice_holds_and_raises_nothing_that_the_check_finds_milder(choice, severity, expected):
    """narrow-strip is a warning, and a hint for strips that are merely under half a panel."""
    assert chosen("narrow-strip", severity, {"narrow-strip": choice}) == expected
    assert chosen("no-gap", severity, {"narrow-strip": choice}) == severity


def test_problems_cannot_be_switched_off_but_made_stricter():
    """A line that cannot be read stays an error; a warning of reading may become one; a hint may go."""
    assert refused("unreadable-line", "off") and refused("unreadable-line", "warning")
    assert not refused("unreadable-line", "error")
    assert refused("use-finds-nothing", "hint") and not refused("use-finds-nothing", "error")
    assert not refused("unused-name", "off") and not refused("narrow-strip", "off")
    assert stays_whatever_is_chosen("unknown-name") and stays_whatever_is_chosen("no-such-name")
    assert not stays_whatever_is_chosen("file-in-no-job") and not stays_whatever_is_chosen("narrow-strip")
