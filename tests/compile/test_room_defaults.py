"""A room's lines under its walls' own."""

from read_job import mm, room_with

from roomspec.model.shape import Region
from roomspec.model.wall import Keep, Layer, Removal, Substrate, Surface, Upstand, Wet
from roomspec.quantities.length import MM

ROOM = """room r
  height 2400
  on plaster
  surface sound
  wet splash
  keep cornice 90
  keep skirting 120
  remove skirting 120
  remove wallpaper
  upstand 100 butt
  finish lime by glued vertical
"""


def test_a_wall_that_says_nothing_takes_all() -> None:
    """Every line of the room holds for it."""
    (wall,) = room_with(f"{ROOM}  wall a 3000").walls
    assert wall.top == ((0, 2400 * MM), mm(3000, 2400))
    assert wall.substrates == (Substrate((Layer("plaster"),)),)
    assert wall.surfaces == (Surface("sound"),)
    assert wall.wet == (Wet("splash"),)
    assert wall.keeps == (Keep("cornice", 90 * MM), Keep("skirting", 120 * MM))
    assert wall.removals == (Removal("skirting", 120 * MM), Removal("wallpaper"))
    assert wall.upstand == Upstand(100 * MM)
    assert [finish.panel.name for finish in wall.finishes] == ["lime"]


def test_a_line_for_the_whole_wall_hides_the_rooms() -> None:
    """And a line for a part lies over it."""
    wall, other = room_with(
        f"{ROOM}  wall a 3000\n    on masonry\n    wet direct from 0 to 900\n"
        "  wall b 3000\n    on tile over plaster up 0 to 900"
    ).walls
    assert wall.substrates == (Substrate((Layer("masonry"),)),)
    assert wall.wet == (Wet("splash"), Wet("direct", Region(*mm(0, 900))))
    part = Region(None, None, *mm(0, 900))
    assert other.substrates == (Substrate((Layer("plaster"),)), Substrate((Layer("tile"), Layer("plaster")), part))


def test_a_finish_of_its_own_or_none_keeps_the_rooms_away() -> None:
    """A room's finish lies where there is neither finish nor `bare`."""
    walls = room_with(
        f"{ROOM}  wall a 3000\n    finish oak by glued horizontal up 0 to 900\n  wall b 3000\n    bare\n  wall c 3000"
    ).walls
    assert [[finish.panel.name for finish in wall.finishes] for wall in walls] == [["oak"], [], ["lime"]]


def test_what_is_kept_and_removed_is_replaced_by_its_kind() -> None:
    """A skirting of 90 takes the place of the room's of 120; the rest stays."""
    (wall,) = room_with(f"{ROOM}  wall a 3000\n    keep skirting 90\n    remove skirting 90").walls
    assert wall.keeps == (Keep("cornice", 90 * MM), Keep("skirting", 90 * MM))
    assert wall.removals == (Removal("wallpaper"), Removal("skirting", 90 * MM))


def test_extras_and_notes_of_a_room_are_priced_once() -> None:
    """They are the room's, not each wall's."""
    room = room_with(f'{ROOM}  extra "Skip" 20.00 each\n  note "Ask."\n  wall a 3000\n  wall b 3000')
    assert len(room.extras) == 1
    assert not any(wall.extras or wall.notes for wall in room.walls)
