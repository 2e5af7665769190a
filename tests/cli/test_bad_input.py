"""Whatever a file holds: findings at their places or one line with exit 2, never a traceback, never a wrong figure."""

import json

import pytest

JOB = """\
job small "Small"
  date 2026-11-25
  currency EUR
"""
CATALOGUE = """\
panel board "Board"
  length 2600
  cover 250
  thick 10
  weighs 5.5 kg/m2
  price 31.50 each
  lay vertical
adhesive grab
  tube 290 ml
  price 6.20 each
method glued "Glued"
  glue grab bead 8 every 300
"""
ROOM = """\
room 1 "Store"
  height 2400
  on plasterboard
  surface sound
  finish board by glued vertical
  wall a 3000
"""
WHOLE = JOB + CATALOGUE + ROOM


@pytest.fixture
def both(run, tmp_path):
    """Check and estimate a job of these bytes: the findings, and what both commands printed."""

    def run_both(data):
        (tmp_path / "job.room").write_bytes(data if isinstance(data, bytes) else data.encode())
        checked = run("check", "job.room", "--as", "json")
        estimated = run("estimate", "job.room", "--as", "json")
        for ended in (checked, estimated):
            assert ended.code in (0, 1, 2)
            assert ended.refused or ended.code != 2
            assert "Traceback" not in ended.out + ended.err
        run("check", "job.room")
        run("estimate", "job.room")
        findings = [] if checked.refused else json.loads(checked.out)["findings"]
        return findings, checked, estimated

    return run_both


def needed(estimated):
    """The panels that an estimate orders."""
    return [line["needed"] for line in json.loads(estimated.out)["order"] if line["kind"] == "panel"]


def test_the_plain_job_is_what_the_others_are_held_against(both):
    """3000 x 2400 upright at 250: 12 panels (the worked example of the estimate's format)."""
    _, checked, estimated = both(WHOLE)
    assert checked.code == 0
    assert needed(estimated) == [12]


@pytest.mark.parametrize(
    "data",
    [
        pytest.param(WHOLE.replace("\n", "\r\n"), id="CRLF"),
        pytest.param("\ufeff" + WHOLE, id="BOM"),
        pytest.param(WHOLE.replace("  ", "\t"), id="tabs"),
        pytest.param(WHOLE.rstrip("\n"), id="no final newline"),
        pytest.param(WHOLE.replace(" board ", " дошка_板-1 ").replace('"Board"', '"लकड़ी"'), id="names in any script"),
        pytest.param(WHOLE.replace(" ", "\u00a0"), id="no-break spaces"),
        pytest.param(WHOLE.replace("\n", "   \n\n\n"), id="blank lines and trailing spaces"),
    ],
)
def test_the_same_job_in_other_clothes(both, data):
    """The way of writing the text changes no figure."""
    findings, checked, estimated = both(data)
    assert checked.code == 0, findings
    assert needed(estimated) == [12]


@pytest.mark.parametrize(
    "data",
    [
        pytest.param(b"", id="empty"),
        pytest.param(b"\n\n# nothing\n", id="comments alone"),
        pytest.param(CATALOGUE, id="no job"),
    ],
)
def test_where_no_job_stands(both, data):
    """A check says so at the file's beginning; an estimate, of which there is none, in one line."""
    findings, checked, estimated = both(data)
    assert checked.code == 1
    assert [finding["line"] for finding in findings if finding["name"] == "missing-line"] == [1]
    assert estimated.refused


@pytest.mark.parametrize(
    "data",
    [
        pytest.param(bytes(range(256)) * 40, id="binary"),
        pytest.param(WHOLE.encode("utf-16"), id="UTF-16"),
        pytest.param(WHOLE.replace("Board", "Bräd").encode("latin-1"), id="Latin-1"),
        pytest.param(b"job \0 x\n", id="a zero byte"),
    ],
)
def test_what_is_no_utf8_text_is_said_at_the_file(both, data):
    """One finding at the file's first line, or one line with exit 2."""
    findings, checked, _ = both(data)
    assert checked.refused or [finding for finding in findings if finding["line"] == 1]
    assert checked.code != 0


@pytest.mark.parametrize("cut", range(0, len(WHOLE), 7))
def test_a_half_typed_job_never_breaks(both, cut):
    """Any beginning of a job is checked and estimated as far as it goes."""
    both(WHOLE[:cut])


@pytest.mark.parametrize(
    ("line", "instead"),
    [
        pytest.param("wall a 3000", "wall a 1234567890123456789012345678901234567890", id="forty digits"),
        pytest.param("wall a 3000", "wall a 0." + "0" * 40 + "1", id="forty decimals"),
        pytest.param("wall a 3000", "wall a 1 km", id="a kilometre"),
        pytest.param("wall a 3000", "wall a 0", id="nothing"),
        pytest.param("wall a 3000", "wall a -3000", id="less than nothing"),
        pytest.param("height 2400", "height 24000", id="a tower"),
        pytest.param("price 31.50 each", "price " + "9" * 40 + " each", id="a price of forty digits"),
        pytest.param("pack 5", "pack 0", id="a pack of none"),
    ],
)
def test_absurd_figures_are_findings(both, line, instead):
    """A figure out of all measure is an error at its place, and no figure rests on it."""
    text = WHOLE.replace("  lay vertical\n", "  lay vertical\n  pack 5\n").replace(line, instead)
    findings, checked, _ = both(text)
    assert checked.code == 1
    at = text[: text.index(instead)].count("\n") + 1
    assert [finding for finding in findings if finding["severity"] == "error" and finding["line"] == at], findings


@pytest.mark.parametrize(
    ("line", "instead"),
    [
        pytest.param("cover 250", "cover 0.000001", id="a cover of a nanometre"),
        pytest.param("length 2600", "length 1", id="panels of a millimetre"),
        pytest.param("thick 10", "thick 10000", id="panels ten metres thick"),
        pytest.param("bead 8", "bead 8000", id="a bead of eight metres"),
    ],
)
def test_absurd_products_are_findings_and_no_hang(both, line, instead):
    """Products out of all measure are errors, and the commands end."""
    _, checked, _ = both(WHOLE.replace(line, instead))
    assert checked.code == 1


def test_a_job_that_uses_itself(both):
    """A `use` that finds its own file reads it once."""
    _, checked, estimated = both(WHOLE.replace("  date", '  use "*.room"\n  use "job.room"\n  date', 1))
    assert checked.code == 0
    assert needed(estimated) == [12]


@pytest.mark.parametrize("use", ["../other.room", "/etc/*.room", "../../../../*.room", "C:\\rooms\\*.room"])
def test_a_use_that_leads_outside(both, use):
    """Nothing outside the repository is read, and the line says so."""
    findings, checked, _ = both(WHOLE.replace("  date", f'  use "{use}"\n  date', 1))
    assert checked.code == 1
    assert ("use-outside-repository", 2) in [(finding["name"], finding["line"]) for finding in findings]


def test_a_use_that_finds_nothing(both):
    """A `use` that matches no file is a warning at its words."""
    findings, _, estimated = both(WHOLE.replace("  date", '  use "rooms/*.room"\n  date', 1))
    assert ("use-finds-nothing", "warning", 2) in [(f["name"], f["severity"], f["line"]) for f in findings]
    assert needed(estimated) == [12]


def test_a_hundred_thousand_openings(both):
    """Openings without number on one wall are findings, not a hang."""
    openings = "".join(f"    window 1 x 1 at {at % 2990} sill {1000 + at // 2990}\n" for at in range(2_000))
    both(WHOLE + openings)


def test_a_catalogue_without_what_a_room_needs(both):
    """A panel without a cover, and a method that is not there, are errors at their places."""
    findings, checked, estimated = both(WHOLE.replace("  cover 250\n", "").replace("by glued", "by screwed"))
    assert checked.code == 1
    assert {"missing-line", "unknown-name"} <= {finding["name"] for finding in findings}
    assert json.loads(estimated.out)["findings"]["error"] >= 2
    assert estimated.code == 1


def test_a_folder_in_place_of_a_file(run, tmp_path):
    """A folder called like a room file is no file."""
    (tmp_path / "job.room").mkdir()
    assert run("check", tmp_path).refused
    assert run("check", tmp_path / "job.room").refused


def test_a_link_out_of_the_repository_is_not_followed(run, tmp_path):
    """A job file that is a link to outside is refused."""
    outside = tmp_path / "outside.room"
    outside.write_text(WHOLE)
    folder = tmp_path / "inside"
    folder.mkdir()
    (folder / "job.room").symlink_to(outside)
    assert run("check", folder).refused


@pytest.mark.parametrize(
    ("data", "said"), [(b"\x00\xff\xfe\x01", "this is not a text file."), (b"# a\n" * 4_200_000, "at most 16 MB.")]
)
def test_an_estimate_says_why_a_file_cannot_be_read(run, tmp_path, data, said):
    """One line that names the file and the reason, not that it holds no job."""
    (tmp_path / "job.room").write_bytes(data)
    ended = run("estimate", "job.room")
    assert ended.code == 2
    assert ended.err.count("\n") == 1
    assert ended.err.strip().startswith("roomspec: job.room: ")
    assert ended.err.strip().endswith(said)
