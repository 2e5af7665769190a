"""The library's face: views with units over one sample, and what open says where there is no job."""

import json
from pathlib import Path

import pytest

import roomspec

ROOT = Path(__file__).parents[1]


@pytest.fixture(scope="module")
def job():
    """The first sample, opened."""
    return roomspec.open(str(ROOT / "samples" / "kestrel-house"))


def test_walls_have_widths_with_units(job):
    """A wall's width is a quantity in millimetres and converts."""
    wall = job.rooms[0].walls[0]
    assert wall.width.magnitude == wall.model.width / 1_000_000
    assert wall.width.to("m").magnitude == pytest.approx(wall.width.magnitude / 1000)


def test_pieces_add_up_to_their_finish(job):
    """The areas of a finish's pieces are the finish's area, on plain walls without lined reveals."""
    for room in job.rooms:
        for wall in room.walls:
            for finish in wall.finishes:
                pieces = sum(piece.laid.area for piece in finish.pieces if piece.laid.where == "wall")
                assert pieces == finish.laid.area or finish.laid.troubles


def test_a_pieces_name_says_where_it_goes(job):
    """Room, wall and number."""
    room, wall = job.rooms[0], job.rooms[0].walls[0]
    assert wall.finishes[0].pieces[0].name == f"{room.name}/{wall.name}/1"


def test_areas_and_strips(job):
    """Net is not more than gross; a finish's strips are as many as its first row needs."""
    for room in job.rooms:
        for wall in room.walls:
            assert wall.net_area <= wall.gross_area
            assert all(strip.magnitude > 0 for finish in wall.finishes for strip in finish.strips)


def test_json_is_what_the_command_prints(job):
    """to_json holds the same rooms and the same total as the values."""
    out = json.loads(job.to_json())
    assert [room["name"] for room in out["rooms"]] == [room.name for room in job.rooms]
    assert out["price"]["total"] == str(job.estimate().price.total)


def test_boxes_and_ceilings(tmp_path):
    """The faces of a box go on numbering along their wall; a ceiling's pieces are its own."""
    (tmp_path / "job.room").write_text(
        "job j\nroom r\n  height 2400\n  wall a 3000\n    boxing 500 x 900 at 1000 deep 200\n"
        "    finish board by plain vertical\n  ceiling a 3000 x 2000\n    finish board by plain crosswise\n"
        "panel board\n  length 2600\n  cover 250\n  thick 10\nmethod plain\n",
        encoding="utf-8",
    )
    (room,) = roomspec.open(str(tmp_path / "job.room")).rooms
    (wall,), (ceiling,) = room.walls, room.ceilings
    assert [face.where for face in wall.faces] == ["boxing front", "boxing left end", "boxing right end", "boxing top"]
    assert wall.faces[0].finishes[0].pieces[0].name == "r/a/13"
    assert wall.faces[0].gross_area.to("m**2").magnitude == pytest.approx(0.45)
    assert ceiling.finishes[0].pieces[0].name == "r/ceiling-a/1"
    assert (ceiling.gross_area, ceiling.faces) == (ceiling.net_area, ())


def test_nothing_to_open():
    """A path without a job raises LookupError with one line."""
    with pytest.raises(LookupError, match="cannot be read"):
        roomspec.open("nowhere/at/all")


def test_unknown_attributes():
    """The module has no others."""
    with pytest.raises(AttributeError, match="nonsense"):
        roomspec.nonsense  # noqa: B018 - the look-up is the test
