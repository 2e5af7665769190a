"""The tour of the samples quotes what is printed, and leads to files that are there."""

import re
from pathlib import Path

import pytest

SAMPLES = Path(__file__).parents[2] / "samples"
TOUR = (SAMPLES / "README.md").read_text(encoding="utf-8")


@pytest.mark.parametrize("link", re.findall(r"\]\(([^)#:]+)\)", TOUR))
def test_links_lead_somewhere(link):
    """Every file that the tour names is there."""
    assert (SAMPLES / link).exists()


def test_the_estimate_is_quoted_as_it_is():
    """The tables of the tour are lines of Kestrel House's estimate."""
    printed = (SAMPLES / "kestrel-house" / "expected" / "estimate.txt").read_text(encoding="utf-8")
    tables = [block for block in re.findall(r"^```text\n(.*?)^```", TOUR, re.MULTILINE | re.DOTALL) if "\n---" in block]
    assert len(tables) == 2
    for table in tables:
        assert table in printed
