"""Stripping out, cut-outs and openings, worked by hand."""

from fractions import Fraction

import pytest
from sample_walls import TERMS, finish, glued, one_wall, opening, region, wall

from roomspec.model.wall import Layer, Obstacle, Removal, Substrate, Wall, WallPoint
from roomspec.quantities.length import MM
from roomspec.takeoff.room import take_off_room
from roomspec.takeoff.strip_out import strip_out
from roomspec.takeoff.work import Work

DOOR = opening("door", 900, 2000, 1000)
WINDOW = opening("window", 1000, 900, 1000, sill=900)
TILED = (Substrate((Layer("plaster"),)), Substrate((Layer("tile"), Layer("plaster")), region(bottom=0, top=1400)))


def removed(*removals: Removal, **changed: object) -> list[tuple[str, str, Fraction]]:
    """What comes off a wall 3000 x 2400: what, unit, how much."""
    return [(work.where[0], *work.amounts[0]) for work in strip_out(wall(3000, 2400, removals=removals, **changed))]


def work_of(one: Wall) -> dict[str, Work]:
    """A feature wall's work by task."""
    room, laid = one_wall(one)
    return {work.task: work for work in take_off_room(room, laid, TERMS).work}


def test_skirting_less_doors() -> None:
    """3000 less a door of 900; a window does not interrupt it."""
    assert removed(Removal("skirting", 120 * MM), openings=(DOOR,)) == [("skirting", "m", Fraction("2.1"))]
    assert removed(Removal("skirting"), openings=(WINDOW,)) == [("skirting", "m", 3)]


def test_cornice_and_architrave() -> None:
    """A cornice runs over the door; the architrave is 2000 + 900 + 2000."""
    found = removed(Removal("cornice"), Removal("architrave"), openings=(DOOR,))
    assert found == [("cornice", "m", 3), ("architrave", "m", Fraction("4.9"))]


def test_a_layer_where_it_is() -> None:
    """Tile to 1400 on 3000: 4.2 m2, less the window's 1.0 x 0.5 in it; with a region to 1200 across, 1.68 m2."""
    assert removed(Removal("tile"), substrates=TILED) == [("tile", "m2", Fraction("4.2"))]
    assert removed(Removal("tile"), substrates=TILED, openings=(WINDOW,)) == [("tile", "m2", Fraction("3.7"))]
    part = Removal("tile", region=region(0, 1200))
    assert removed(part, substrates=TILED) == [("tile", "m2", Fraction("1.68"))]


def test_a_layer_that_is_not_recorded_comes_off_its_region() -> None:
    """Wallpaper from all of 3000 x 2400, less a bath of 1700 x 560: 7.2 - 0.952 m2."""
    bath = Obstacle("bath", 0, 1700 * MM, 560 * MM)
    assert removed(Removal("wallpaper")) == [("wallpaper", "m2", Fraction("7.2"))]
    assert removed(Removal("wallpaper"), obstacles=(bath,)) == [("wallpaper", "m2", Fraction("6.248"))]


def test_things_are_counted() -> None:
    """Radiators and other things by number."""
    assert removed(Removal("radiator", x=500 * MM), Removal("radiator")) == [("radiator", "each", 1)] * 2


@pytest.mark.parametrize(("at", "up", "expected"), [(500, 450, 1), (1500, 1000, 0), (500, 1200, 0)])
def test_a_cut_out_for_each_point_that_is_covered(at: int, up: int, expected: int) -> None:
    """On a dado of 1200 less a door: a socket on it, one in the door, one on its very edge (which is covered)."""
    socket = WallPoint("socket", at * MM, up * MM + (1 if up == 1200 else 0))
    work = work_of(wall(3000, 2400, finish(glued(), region=region(top=1200)), openings=(DOOR,), points=(socket,)))
    assert ("cut-outs" in work) == bool(expected)


def test_openings_that_a_lining_is_cut_round() -> None:
    """A dado of 900 meets the door and not the window that begins at 900."""
    high = opening("window", 500, 900, 2200, sill=900)
    work = work_of(wall(3000, 2400, finish(glued(), region=region(top=900)), openings=(DOOR, high)))
    assert work["openings"].amounts == (("each", 1),)


def test_an_opening_in_two_linings_is_one_opening() -> None:
    """A door through a dado and the lining above it counts once."""
    low, high = finish(glued(), region=region(top=900)), finish(glued(), "horizontal", region=region(bottom=900))
    assert work_of(wall(3000, 2400, low, high, openings=(DOOR,)))["openings"].amounts == (("each", 1),)
