"""What is true of several walls is said once, and a mend says whom it touches besides."""

import datetime

from roomspec.analysis.found import Found
from roomspec.analysis.session import Session
from roomspec.analysis.world import MemoryWorld

CATALOGUE = """\
panel limestone-long
  length 2600
  cover  250
  thick  10
  price  31.50 each
  lay    vertical
adhesive grab
  tube  290 ml
  price 6.20 each
sealant clear
  tube  310 ml
  price 5.10 each
method glued
  glue grab bead 8 every 100
"""
ROOM = """\
job test
room 1
  height 2400
  {finish}
  wall a 3020
{more}  wall b 2000
  wall c 3020
  wall d 2000
"""


def told(name: str, finish: str, more: str = "") -> list[Found]:
    """The findings of one check in a room whose finish stands before its walls."""
    world = MemoryWorld({"job.room": ROOM.format(finish=finish, more=more) + CATALOGUE}, datetime.date(2026, 11, 25))
    snapshot = Session(world).snapshot("job.room")
    assert snapshot is not None
    return [found for found in snapshot.findings if found.name == name]


def test_a_room_laid_wrong_is_told_once():
    """One finding names the walls, and its mend turns them all."""
    (found,) = told("panel-laid-wrong-way", "finish limestone-long by glued horizontal")
    assert found.message == "walls a, b, c and d: limestone-long is laid horizontal; its `lay` says vertical"
    assert [fix.title for fix in found.fixes] == ["turn it: vertical, on every wall of the room that this line covers"]


def test_a_finish_of_one_wall_is_turned_alone():
    """Where the wall has its own finish nothing else changes."""
    (found,) = told("panel-laid-wrong-way", "on plaster", "    finish limestone-long by glued horizontal\n")
    assert [fix.title for fix in found.fixes] == ["turn it: vertical"]


def test_the_walls_of_a_narrow_strip_are_shown():
    """A finding on the room's line leads to the walls that it names, and its mend says that it moves the others."""
    (found,) = told("narrow-strip", "finish limestone-long by glued vertical")
    assert found.message.startswith("walls a and c: the strip at the right is")
    assert [(other.message, other.place.line) for other in found.related] == [("wall a", 5), ("wall c", 7)]
    assert found.fixes[0].title == "start balanced, on every wall of the room that this line covers"


def test_a_seal_in_a_shared_method_says_so():
    """The mend of one shower changes every room that uses the method."""
    (found,) = told("unsealed-wet-joint", "finish limestone-long by glued vertical", "    wet direct up 0 to 2100\n")
    assert found.fixes[0].title.endswith(" in method glued, for every room that uses it")
    assert found.fixes[0].title in found.help
