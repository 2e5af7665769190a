"""Trims by length, worked by hand."""

from collections import Counter

import pytest
from msgspec.structs import replace
from sample_walls import OPEN, TERMS, battened, finish, glued, one_wall, opening, panel, region, square_room, trim, wall

from roomspec.layout.lay_room import lay_room
from roomspec.model.product import Stock
from roomspec.model.wall import Corner, Keep, Wall
from roomspec.quantities.length import MM
from roomspec.takeoff.lengths import joint_moves, lengths_of_run
from roomspec.takeoff.room import take_off_lining, take_off_room

DOOR = opening("door", 900, 2000, 1000)
WINDOW = opening("window", 1000, 900, 1000, sill=900)


def runs(one: Wall) -> Counter[tuple[str, int, int]]:
    """Role, length in mm and mitred ends of each run of a wall's only lining."""
    _, laid = one_wall(one)
    return Counter(
        (run.role, run.length // MM, run.mitres) for run in take_off_lining(one, laid.walls[0].linings[0]).trims
    )


def test_start_top_and_ends() -> None:
    """3000 x 2400: start and top along the width, edge trims on both free ends between them."""
    method = glued(start=trim("start"), top=trim("top"), edge=trim("edge"))
    assert runs(wall(3000, 2400, finish(method))) == {
        ("start", 3000, 0): 1,
        ("top", 3000, 0): 1,
        ("edge", 2400, 0): 2,
    }


def test_edges_round_a_door_are_mitred_at_its_head() -> None:
    """Door 900 x 2000: start 1000 and 1100, jambs 2000 with one mitre each, head 900 with two."""
    found = runs(wall(3000, 2400, finish(glued(start=trim("start"), edge=trim("edge"))), openings=(DOOR,)))
    assert found == {
        ("start", 1000, 0): 1,
        ("start", 1100, 0): 1,
        ("edge", 2400, 0): 2,
        ("edge", 2000, 1): 2,
        ("edge", 900, 2): 1,
    }


def test_no_trim_on_what_is_kept() -> None:
    """A kept skirting and cornice take neither start nor top trim."""
    keeps = (Keep("skirting", 100 * MM), Keep("cornice", 90 * MM))
    assert runs(wall(3000, 2400, finish(glued(start=trim("start"), top=trim("top"))), keeps=keeps)) == {}


@pytest.mark.parametrize(
    ("role", "expected"),
    [
        ("skirting", {("skirting", 1000, 0): 1, ("skirting", 1100, 0): 1}),
        ("cornice", {("cornice", 3000, 0): 1}),
        ("cap", {}),
        ("architrave", {("architrave", 2000, 1): 2, ("architrave", 900, 2): 1}),
    ],
)
def test_planted_trims_at_a_door(role: str, expected: dict[tuple[str, int, int], int]) -> None:
    """A skirting less the door, a cornice along the top, an architrave on three sides; no cap on a full wall."""
    assert runs(wall(3000, 2400, finish(glued(**{role: trim(role)})), openings=(DOOR,))) == expected


def test_an_architrave_round_a_window() -> None:
    """Four sides, eight mitred ends."""
    found = runs(wall(3000, 2400, finish(glued(architrave=trim("architrave"))), openings=(WINDOW,)))
    assert found == {("architrave", 1000, 2): 2, ("architrave", 900, 2): 2}


def test_a_cap_on_a_dado() -> None:
    """A dado 900 high takes a cap of 3000 and, not reaching the top, no cornice."""
    method = glued(cap=trim("cap"), cornice=trim("cornice"))
    assert runs(wall(3000, 2400, finish(method, region=region(top=900)))) == {("cap", 3000, 0): 1}


def test_the_lower_edge_of_an_upper_lining_takes_no_cap() -> None:
    """A lining from 900 up has its cap nowhere and its cornice at the top."""
    method = glued(cap=trim("cap"), cornice=trim("cornice"))
    assert runs(wall(3000, 2400, finish(method, region=region(bottom=900)))) == {("cornice", 3000, 0): 1}


def test_top_trim_on_a_slope_counts_along_it() -> None:
    """Raked from 1200 to 2700 over 2000: 2500 along the slope."""
    one = wall(2000, ((0, 1200 * MM), (2000 * MM, 2700 * MM)), finish(glued(top=trim("top"))))
    assert runs(one) == {("top", 2500, 0): 1}


def test_a_joint_trim_covers_each_line_of_end_joints() -> None:
    """3000 high in panels of 2600: one joint trim of 3000."""
    assert runs(wall(3000, 3000, finish(glued(joint=trim("joint"))))) == {("joint", 3000, 0): 1}


def test_panels_joined_on_all_edges_take_no_joint_trim() -> None:
    """Their ends are tongued: rows of 3000 in panels of 2600 have end joints, and no strip over them."""
    one = finish(glued(joint=trim("joint")), "horizontal", panel(joined="all edges"))
    assert runs(wall(3000, 2400, one)) == {}


def test_a_joint_trim_is_used_on_battens_too() -> None:
    """Battens carry the panels, the strip covers the joint that is seen: one of 3000."""
    assert runs(wall(3000, 3000, finish(battened(joint=trim("joint", 3))))) == {("joint", 3000, 0): 1}


def test_corner_trims_are_counted_once() -> None:
    """A closed room of four walls has four inside corners, 2400 each, and no mitre."""
    method = glued(inside_corner=trim("inside-corner"))
    walls = [wall(2000, 2400, finish(method), name=name) for name in "abcd"]
    room = square_room(*walls)
    taken = take_off_room(room, lay_room(room, TERMS), TERMS)
    found = [
        (run.role, run.length // MM, run.mitres) for part in taken.walls for line in part.linings for run in line.trims
    ]
    assert found == [("inside-corner", 2400, 0)] * 4


def test_a_skirting_is_mitred_at_corners() -> None:
    """Two walls round an outside corner: each skirting has one mitred end, at the corner."""
    method = glued(skirting=trim("skirting"), outside_corner="mitred")
    walls = [
        wall(2000, 2400, finish(method), name="a", corner=Corner("outside")),
        wall(1000, 2400, finish(method), name="b", corner=OPEN),
    ]
    room = square_room(*walls)
    taken = take_off_room(room, lay_room(room, TERMS), TERMS)
    assert [run.mitres for part in taken.walls for line in part.linings for run in line.trims] == [1, 1]
    mitres = {work.where: dict(work.amounts) for work in taken.work if work.task == "mitres"}
    assert mitres == {("panels",): {"m": pytest.approx(2.4)}, ("trims",): {"each": 2}}


def test_a_run_longer_than_the_stock() -> None:
    """6000 from lengths of 2600 is two whole ones and 800; 2600 is one; 2599 is never pieced."""
    start = trim("start")
    assert lengths_of_run(6000 * MM, start) == (2600 * MM, 2600 * MM, 800 * MM)
    assert lengths_of_run(2600 * MM, start) == (2600 * MM,)
    assert lengths_of_run(2599 * MM, start) == (2599 * MM,)


@pytest.mark.parametrize(
    ("length", "cut"),
    [
        (2603, (2503, 100)),
        (5299, (2600, 2599, 100)),
        (5300, (2600, 2600, 100)),
        (2699, (2599, 100)),
        (5200, (2600, 2600)),
        (3, (3,)),
    ],
)
def test_no_piece_of_a_joined_trim_is_shorter_than_100(length: int, cut: tuple[int, ...]) -> None:
    """Lengths of 2600: what would be pieced out with 3 or 99 has its last joint moved. Common practice, no source."""
    assert lengths_of_run(length * MM, trim("start")) == tuple(part * MM for part in cut)
    assert joint_moves(length * MM, trim("start")) == (length in (2603, 5299, 2699))


def test_a_stock_hardly_longer_than_the_least_piece_is_halved() -> None:
    """Lengths of 150: 160 is 85 and 75, both no shorter than half of one."""
    short = replace(trim("start"), stocks=(Stock(150 * MM),))
    assert lengths_of_run(160 * MM, short) == (85 * MM, 75 * MM)
