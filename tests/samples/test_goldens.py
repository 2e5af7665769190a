"""Each sample is a whole job, clean of errors, and gives what its golden files hold."""

import json
from pathlib import Path

import jsonschema
import pytest

from roomspec.analysis.session import Session
from roomspec.analysis.world import World
from roomspec.files.disk import DiskWorld
from roomspec.reports import schemas
from roomspec.reports.estimate_json import EstimateOut, estimate_json
from roomspec.reports.estimate_out import estimate_of
from roomspec.reports.estimate_text import estimate_screen, estimate_text
from roomspec.reports.findings_json import findings_json

ROOT = Path(__file__).parents[2]
SAMPLES = sorted(folder.name for folder in (ROOT / "samples").iterdir() if (folder / f"{folder.name}.room").exists())
SCHEMAS = Path(schemas.__file__).parent


@pytest.fixture(scope="module", params=SAMPLES)
def sample(request):
    """The name of a sample, its findings and its estimate, made once."""
    world: World = DiskWorld(ROOT)
    snapshot = Session(world).snapshot(f"samples/{request.param}/{request.param}.room")
    assert snapshot is not None
    return request.param, snapshot.findings, estimate_of(snapshot)


def compare(sample: str, name: str, text: str, update: bool) -> None:
    """Hold a text against a golden file, or write it with --update."""
    file = ROOT / "samples" / sample / "expected" / name
    if update:
        file.parent.mkdir(exist_ok=True)
        file.write_text(text, encoding="utf-8", newline="\n")
    assert file.read_text(encoding="utf-8") == text


def test_no_sample_has_an_error(sample):
    """Every sample checks without errors."""
    _, findings, _ = sample
    assert not [finding for finding in findings if finding.severity == "error"]


def test_findings_are_as_expected(sample, update):
    """What check prints as JSON."""
    name, findings, _ = sample
    compare(name, "findings.json", findings_json(findings), update)


def test_the_text_is_as_expected(sample, update):
    """What estimate prints when piped."""
    name, _, out = sample
    compare(name, "estimate.txt", estimate_text(out), update)


def test_the_json_is_as_expected_and_as_published(sample, update):
    """What estimate prints as JSON, valid against its published schema."""
    name, _, out = sample
    text = estimate_json(out)
    compare(name, "estimate.json", text, update)
    schema = json.loads((SCHEMAS / "estimate.schema.json").read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator(schema).validate(json.loads(text))


def test_the_order_is_proven(sample):
    """Every line that cutting decides is proven the least."""
    _, _, out = sample
    assert out.order
    assert all(line.proven and line.needed >= (line.bound or 0) for line in out.order if line.bound is not None)


def test_totals_are_sums_of_printed_lines(sample):
    """Material, labour and extras are their lines; the steps add up."""
    _, _, out = sample
    price = out.price
    assert price.material == sum(line.cost or 0 for line in out.order)
    assert price.labour == sum(line.cost or 0 for line in out.labour)
    assert price.extras == sum(line.cost for line in out.extras)
    assert price.cost == price.material + price.labour + price.extras
    assert price.net == price.cost + price.overhead + price.profit + price.contingency
    assert price.total == price.net + price.tax


def test_every_piece_is_cut_once(sample):
    """The cutting plans name each piece of each finish once, and no other."""
    _, _, out = sample
    cut = [name for plan in out.cutting if plan.kind == "panel" for pattern in plan.patterns for name in names(pattern)]
    assert len(cut) == len(set(cut))
    faces = [face for room in out.rooms for one in (*room.walls, *room.ceilings) for face in (one, *one.faces)]
    assert len(cut) == sum(finish.pieces for face in faces for finish in face.finishes)


def names(pattern):
    """The pieces that a cutting pattern gives, over all its panels."""
    return [name for piece in pattern.pieces for name in piece.of]


@pytest.mark.parametrize("width", [40, 80, 200])
def test_the_screen_holds_every_figure(sample, width):
    """Tables fold to the terminal's width; the proof and the total are there at any width."""
    _, _, out = sample
    text: str = estimate_screen(out, width, colour=False)
    assert max(map(len, text.split("\n"))) <= width
    assert "\x1b" not in text
    assert isinstance(out, EstimateOut)
