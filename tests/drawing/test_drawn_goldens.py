"""Every drawing of the samples as it was when it was last looked at, and a few of them whole for the reader."""

from hashlib import sha256
from pathlib import Path

import pytest
from drawn_jobs import ROOT, drawings_of

from roomspec.reports.drawing.file_names import file_names

KEPT = {
    "kestrel-house": ["g.02/wall b", "g.03/wall f", "1.04/plan", "2.02/wall a", "cutting/dune-mural, first"],
    "loft-inches": ["bath/wall a"],
    "harbour-hotel": ["1.18/wall c"],
}


def file_of(sample: str, name: str) -> Path:
    """Where a drawing is kept."""
    return ROOT / "samples" / sample / "expected" / "drawings" / file_names([name])[0]


@pytest.mark.parametrize("sample", KEPT)
def test_every_drawing_is_as_it_was_looked_at(sample, update):
    """Byte for byte, by a digest of each: the lines that differ name the drawings to look at again."""
    found = "".join(
        f"{sha256(one.svg.encode()).hexdigest()[:16]} {one.paper} {one.name}\n" for one in drawings_of(sample)
    )
    file = ROOT / "samples" / sample / "expected" / "drawings.txt"
    if update:
        file.write_text(found, encoding="utf-8", newline="\n")
    assert file.read_text(encoding="utf-8").splitlines() == found.splitlines()


@pytest.mark.parametrize(("sample", "name"), [(sample, name) for sample, names in KEPT.items() for name in names])
def test_the_drawing_is_as_kept(sample, name, update):
    """Byte for byte."""
    (drawing,) = [one for one in drawings_of(sample) if one.name == name]
    file = file_of(sample, name)
    if update:
        file.parent.mkdir(exist_ok=True)
        file.write_text(drawing.svg, encoding="utf-8", newline="\n")
    assert file.read_text(encoding="utf-8") == drawing.svg


def test_no_other_drawing_is_kept():
    """What is no longer drawn does not stay."""
    kept = {file for sample in KEPT for file in (ROOT / "samples" / sample / "expected" / "drawings").iterdir()}
    assert kept == {file_of(sample, name) for sample, names in KEPT.items() for name in names}
