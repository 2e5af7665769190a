"""Rooms that nobody has, or that are mistyped: still sheets whose texts neither overlap nor leave the frame."""

import pytest
from drawn_jobs import snapshot_of
from read_svg import parsed, texts_of
from test_drawn_labels import overlaps

from roomspec.reports.drawing.job_drawings import draw_job

HEAD = 'job x "X"\n  use "catalogue.room"\n  currency EUR\n'
ROOM = "  on masonry\n  surface sound\n  finish limestone-long by glued-wet vertical\n"
JOBS = {
    "a face lower than a number": "room r\n  height 60\n" + ROOM + "  wall a 9000\n",
    "a face narrower than a number": "room r\n  height 5200\n" + ROOM + "  wall a 100\n",
    "seventy sockets": "room r\n  height 2400\n" + ROOM + "  wall a 3000\n"
    + "".join(f"    socket at {100 + 37 * at} up {300 + at % 5 * 40}\n" for at in range(70)),
    "twenty slits with lined reveals": "room r\n  height 2400\n" + ROOM + "  wall a 3000\n"
    + "".join(f"    window 90 x 200 at {50 + 130 * at} sill {300 + at % 7 * 200} reveal 99 lined\n"
              for at in range(20)),
    "long names and notes": "room " + "r" * 200 + ' "' + "Très long – 浴室 " * 30 + '"\n  height 2400\n' + ROOM
    + "  wall " + "w" * 60 + ' 3000\n    note "' + "word " * 300 + '"\n    note "' + "x" * 400 + '"\n',
    "forty corners": "room r\n  height 2400\n" + ROOM
    + "".join(f"  wall a{at} {300 + at}\n    corner {('inside', 'outside')[at % 2]}\n" for at in range(40)),
    "a hill under the wall": "room r\n  height 2400\n" + ROOM
    + "  wall a 3000\n    floor 0 to 900\n    floor 900 to 0 from 1500 to 3000\n",
    "places off the wall": "room r\n  height 2400\n" + ROOM
    + "  wall a 3000\n    socket at 5000 up 9000\n    window 500 x 500 at 9000 sill 9000\n"
    "    bath 1700 x 560 at 2500\n",
    "three hundred rooms": "".join(
        f'room r{2 * at} "T"\n  height 2400\n{ROOM}  wall a 3000\n' for at in range(300)),
}  # fmt: skip


@pytest.mark.parametrize("name", JOBS)
def test_every_sheet_is_readable(name):
    """No text over another, none outside the frame."""
    drawings = draw_job(snapshot_of(HEAD + JOBS[name]).estimate(), 1)
    assert [one for one in drawings if one.kind == "elevation"]
    for drawing in drawings:
        texts = list(texts_of(parsed(drawing.svg)))
        wide, high = {"A4": (297, 210), "A3": (420, 297)}[drawing.paper]
        assert overlaps(texts) == []
        assert all(20 <= x <= wide - 10 and 10 <= y <= high - 10 for text in texts for x, y in text.corners)


def test_a_room_too_small_for_any_panel_has_a_plan():
    """Or nothing at all; never a fault."""
    made = snapshot_of(HEAD + "room r\n  height 20\n" + ROOM + "  wall a 30\n  wall b 30\n").estimate()
    assert {one.kind for one in draw_job(made, 1)} <= {"plan", "elevation", "cutting"}
