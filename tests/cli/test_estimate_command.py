"""`roomspec estimate`: the format's worked example, its keys, its forms and exit codes."""

import json
from decimal import Decimal
from pathlib import Path

import jsonschema
import pytest

from roomspec.reports import schemas

WALL = """\
job example "Worked example"
  date 2026-11-25
  currency EUR
  tax 20 %
  kerf 3
room 1 "Store"
  height 2400
  on plasterboard
  surface sound
  finish board by screwed vertical start left
  wall a 3000
"""
DOOR = "    door 900 x 2000 at 1000\n"
CATALOGUE = """\
panel board "Board"
  length 2600
  cover 250
  thick 10
  weighs 5.5 kg/m2
  pack 5
  price 31.50 each
  lay vertical
fixing panel-screw
  size 3.5 x 35
  pack 200
  price 11.40 per pack
method screwed "Screwed"
  screw panel-screw
"""
KEYS = {
    "job": {"name", "title", "currency", "date"},
    "rooms": {"name", "title", "level", "purpose", "pattern", "floor_area_m2", "closure_error_mm", "walls"},
    "order": {"kind", "item", "title", "needed", "bound", "proven", "spare", "pack", "packs", "ordered", "unit_price"}
    | {"cost"},
    "cutting": {"item", "pool", "panels", "bound", "patterns"},
    "measured": {"method", "walls"},
    "price": {"material", "labour", "overhead", "profit", "contingency", "net", "tax", "total"},
    "findings": {"error", "warning", "hint"},
}
"""What programs rely on in version 1 of the format."""
INNER = {
    "wall": {"name", "width_mm", "gross_area_m2", "net_area_m2", "substrate", "openings", "finishes"},
    "opening": {"kind", "label", "at_mm", "width_mm", "height_mm", "sill_mm"},
    "finish": {"panel", "method", "direction", "area_m2", "weight_kg", "load_kg_m2", "pieces", "first_strip_mm"}
    | {"last_strip_mm"},
    "pattern": {"count", "pieces", "offcut_mm"},
    "piece": {"length_mm", "width_mm", "of"},
    "measured wall": {"room", "wall", "quantity_m2", "lines"},
}


@pytest.fixture
def estimated(run, tmp_path):
    """The estimate, as JSON, of a job file with this text."""

    def estimate(text):
        (tmp_path / "job.room").write_text(text, encoding="utf-8")
        ended = run("estimate", "job.room", "--as", "json")
        assert ended.code == 0, ended.err
        out = json.loads(ended.out)
        schema = Path(schemas.__file__).with_name("estimate.schema.json").read_text(encoding="utf-8")
        jsonschema.validate(out, json.loads(schema))
        return out

    return estimate


def test_a_plain_wall(estimated):
    """Cover 250, panel 2600, wall 3000 x 2400: 12 pieces, needed 12, bound 12, 7.2 m2, 39.6 kg at 5.5 kg/m2."""
    out = estimated(WALL + CATALOGUE)
    finish = out["rooms"][0]["walls"][0]["finishes"][0]
    assert (finish["pieces"], finish["area_m2"], finish["weight_kg"], finish["load_kg_m2"]) == (12, 7.2, 39.6, 5.5)
    assert (finish["first_strip_mm"], finish["last_strip_mm"]) == (250, 250)
    panels = out["order"][0]
    assert (panels["item"], panels["needed"], panels["bound"], panels["proven"]) == ("board", 12, 12, True)
    assert (panels["packs"], panels["ordered"], panels["unit_price"], panels["cost"]) == (3, 15, "31.50", "472.50")


def test_the_same_wall_with_a_door(estimated):
    """Columns 5 to 7 become 400 mm above the door, column 8 is notched: 12 pieces, needed 10, bound 10."""
    out = estimated(WALL + DOOR + CATALOGUE)
    wall = out["rooms"][0]["walls"][0]
    assert wall["finishes"][0]["pieces"] == 12
    assert wall["openings"] == [
        {"kind": "door", "label": "", "at_mm": 1000, "width_mm": 900, "height_mm": 2000, "sill_mm": 0}
    ]
    assert (out["order"][0]["needed"], out["order"][0]["bound"]) == (10, 10)
    lengths = sorted(
        (piece["length_mm"], piece["width_mm"])
        for pattern in out["cutting"][0]["patterns"]
        for piece in pattern["pieces"]
        for _ in piece["of"]
    )
    assert lengths == [(400, 250)] * 3 + [(2400, 250)] * 9


def test_every_key_is_there(estimated):
    """The keys of version 1 of the format, at every level."""
    out = estimated(WALL + DOOR + CATALOGUE)
    assert (out["format"], out["version"]) == ("roomspec/estimate", 1)
    assert {"labour", "assumptions", "exclusions", "cautions"} <= set(out)
    for key, wanted in KEYS.items():
        for value in out[key] if isinstance(out[key], list) else [out[key]]:
            assert wanted <= set(value), key
    wall, plan = out["rooms"][0]["walls"][0], out["cutting"][0]["patterns"][0]
    found = {
        "wall": wall,
        "opening": wall["openings"][0],
        "finish": wall["finishes"][0],
        "pattern": plan,
        "piece": plan["pieces"][0],
        "measured wall": out["measured"]["walls"][0],
    }
    assert all(INNER[kind] <= set(value) for kind, value in found.items())


def test_money_is_a_decimal_string(estimated):
    """Every figure of the price is a string that adds up exactly."""
    price = estimated(WALL + CATALOGUE)["price"]
    figures = {name: Decimal(price[name]) for name in KEYS["price"]}
    assert all(price[name][-3] == "." for name in KEYS["price"])
    assert figures["total"] == figures["net"] + figures["tax"]


def test_errors_are_told_at_the_top(run, tmp_path):
    """With errors it still prints, says at the top how many and what they leave out, and exits 1."""
    (tmp_path / "job.room").write_text(WALL + "  wall b 2,4 m\n    windw 600 x 900 at 100\n" + CATALOGUE)
    ended = run("estimate", "job.room")
    assert ended.code == 1
    top = ended.out[: ended.out.index("Order\n")]
    assert "2 errors" in top
    assert "job.room, line 12:" in top
    assert "job.room, line 13:" in top
    assert "Total" in ended.out


def test_output_goes_to_a_file(run, small, tmp_path):
    """-o writes the same bytes to a file, whole."""
    for form in ("text", "json"):
        printed = run("estimate", small, "--as", form).out
        ended = run("estimate", small, "--as", form, "-o", tmp_path / "out")
        assert (ended.code, ended.out) == (0, "")
        assert (tmp_path / "out").read_text(encoding="utf-8") == printed
    assert run("estimate", small, "-o", tmp_path / "none" / "out").refused


def test_several_jobs_are_listed(run, small):
    """A folder of two jobs is refused with their names."""
    (small / "other.room").write_text((small / "job.room").read_text().replace("job small", "job other"))
    ended = run("estimate", small)
    assert ended.refused
    assert "job.room, other.room" in ended.err


def test_the_same_input_gives_the_same_bytes(run, small):
    """Two runs print the same."""
    assert run("estimate", small, "--as", "json") == run("estimate", small, "--as", "json")


@pytest.mark.parametrize(("no_colour", "coloured"), [("", True), ("1", False)])
def test_a_terminal_gets_tables(run, small, monkeypatch, no_colour, coloured):
    """On a terminal the tables fold to its width; NO_COLOR takes the colours away, not the tables."""
    monkeypatch.setattr("roomspec.cli.screen.is_terminal", lambda: True)
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setenv("NO_COLOR", no_colour)
    ended = run("estimate", small)
    assert "─" in ended.out
    assert ("\x1b[" in ended.out) == coloured
    assert ("\x1b[" in run("explain", "narrow-strip").out) == coloured
