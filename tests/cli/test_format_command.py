"""`roomspec format`: only the named files, whole or not at all."""

import pytest

UNTIDY = b'job small "Small"\nuse   "catalogue.room"\n'


@pytest.fixture
def untidy(tmp_path):
    """A folder of two untidy files, one below it, and one that is no room file."""
    folder = tmp_path / "untidy"
    (folder / "rooms").mkdir(parents=True)
    (folder / "job.room").write_bytes(UNTIDY)
    (folder / "rooms" / "a.room").write_bytes(b"room 1\nwall a 2400\n")
    (folder / "notes.txt").write_bytes(b"room 1\nwall a 2400\n")
    return folder


def test_files_are_rewritten_once(run, untidy):
    """The first run changes both room files, the second none; other files stay."""
    assert run("format", untidy).code == 0
    assert (untidy / "job.room").read_bytes() != UNTIDY
    assert (untidy / "notes.txt").read_bytes() == b"room 1\nwall a 2400\n"
    again = run("format", untidy)
    assert (again.code, again.out) == (0, "")
    assert sorted(file.name for file in untidy.iterdir()) == ["job.room", "notes.txt", "rooms"]


def test_only_the_named_file_changes(run, untidy):
    """A file that is not named stays as it is."""
    run("format", untidy / "job.room")
    assert (untidy / "rooms" / "a.room").read_bytes() == b"room 1\nwall a 2400\n"


@pytest.mark.parametrize("option", ["--check", "--diff"])
def test_looking_changes_nothing(run, untidy, option):
    """--check and --diff leave the files alone and exit 1."""
    ended = run("format", untidy, option)
    assert ended.code == 1
    assert (untidy / "job.room").read_bytes() == UNTIDY
    run("format", untidy)
    assert run("format", untidy, option).code == 0


def test_diff_shows_the_lines(run, untidy):
    """--diff prints a unified diff."""
    ended = run("format", untidy / "job.room", "--diff")
    assert '-use   "catalogue.room"\n' in ended.out
    assert '+  use  "catalogue.room"\n' in ended.out


def test_standard_input_is_written_to_standard_output(run):
    """`-` formats what it reads."""
    ended = run("format", "-", stdin=UNTIDY)
    assert ended.code == 0
    assert ended.out.split("\n")[0] == 'job small "Small"'
    assert run("format", "-", "--check", stdin=UNTIDY).code == 1
    assert run("format", "-", "--check", stdin=ended.out.encode()).code == 0


def test_line_ends_are_kept(run, tmp_path):
    """A file with CRLF line ends keeps them."""
    file = tmp_path / "job.room"
    file.write_bytes(UNTIDY.replace(b"\n", b"\r\n"))
    assert run("format", file).code == 0
    written = file.read_bytes()
    assert written.count(b"\r\n") == written.count(b"\n") == 2


@pytest.mark.parametrize("data", [b"\0\1\2", b"job \xff\xfe", "job a\n".encode("utf-16")])
def test_what_is_no_text_is_left_alone(run, untidy, data):
    """A binary file is reported and kept; the others are still formatted."""
    (untidy / "bad.room").write_bytes(data)
    ended = run("format", untidy)
    assert ended.code == 2
    assert "bad.room" in ended.err
    assert (untidy / "bad.room").read_bytes() == data
    assert (untidy / "job.room").read_bytes() != UNTIDY


def test_a_missing_file_is_refused(run, tmp_path):
    """A file that is not there is exit 2."""
    ended = run("format", tmp_path / "none.room")
    assert ended.code == 2
    assert "none.room" in ended.err


def test_standard_input_stands_alone(run, untidy):
    """`-` together with files is a mistake."""
    assert run("format", "-", untidy).refused


def test_one_file_is_as_it_should_be(run, tmp_path):
    """One is, two are."""
    (tmp_path / "a.room").write_text("job a\n", encoding="utf-8")
    assert run("format", tmp_path).err == "0 changed, 1 is as it should be.\n"
    (tmp_path / "b.room").write_text("job b\n", encoding="utf-8")
    assert run("format", tmp_path).err == "0 changed, 2 are as they should be.\n"


def test_nothing_is_counted_where_no_file_is_read(run, tmp_path):
    """The error alone is said."""
    ended = run("format", tmp_path / "missing.room")
    assert ended.code == 2
    assert ended.err.count("\n") == 1 and "should be" not in ended.err


def test_a_link_out_of_the_repository_is_not_followed(run, untidy, tmp_path):
    """What it leads to stays as it is: it is somebody else's."""
    outside = tmp_path / "outside.room"
    outside.write_bytes(UNTIDY)
    (untidy / "link.room").symlink_to(outside)
    assert run("format", untidy).code == 0
    assert outside.read_bytes() == UNTIDY
    assert (untidy / "job.room").read_bytes() != UNTIDY
