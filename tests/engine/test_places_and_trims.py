"""Labour by place, stripping out, extras in patterns, and trims that stand in for one another."""

from decimal import Decimal

import pytest
from jobs import CATALOGUE, estimate, task, wall_of

from roomspec.analysis.engine import Estimated
from roomspec.quantities.length import MM

GANG = """
gang g
  rate 60 per h
  takes 0.3 h/m2 for panels vertical
  takes 0.6 h/m2 for panels on stairs
  takes 0.25 h/m2 for removing tile
  takes 0.10 h/m for removing skirting
"""
TRIMS = """
method whole
  glue grab bead 8 every 100
  edge ed
  top tp
  cap cp
  cornice co
  architrave ar
  start st
trim ed
  role edge
  length 2600
  allows 5
trim tp
  role top
  length 2600
trim cp
  role cap
  length 2600
trim co
  role cornice
  length 2600
trim ar
  role architrave
  length 2600
trim st
  role start
  length 2600
  allows 2
"""


def roles(made: Estimated) -> dict[str, list[float]]:
    """The lengths of each role's trims on the first wall, in millimetres."""
    found: dict[str, list[float]] = {}
    for run in made.taken.rooms[0].walls[0].linings[0].trims:
        found.setdefault(run.role, []).append(run.length / MM)
    return found


@pytest.mark.parametrize(
    ("floor", "named"),
    [
        ("floor 0 to 2700", "panels on stairs"),
        ("floor 0 to 700", "panels vertical"),
        ("floor 0 to 13", "panels vertical"),
        ("floor 0 to 721", "panels on stairs"),
        ("floor 0 to 0 from 0 to 1800\n    floor 180 to 180 from 1800 to 3600", "panels on stairs"),
    ],
)
def test_a_floor_that_rises_as_stairs_do_is_a_stair(floor: str, named: str) -> None:
    """Steeper than 1 in 5 (720 over 3600) or in steps; a ramp and a floor out of level are none."""
    made = estimate(
        f"  labour g\nroom r\n  height 2400\n  wall a 3600\n    {floor}\n"
        "    finish board by plain vertical up 0 to 900\n",
        CATALOGUE + GANG,
    )
    assert task(made, named) == (3.24, "m2")


def test_stripping_out_is_priced_by_its_own_constants() -> None:
    """3000 x 2400 of tile less a door; the skirting less its width."""
    made = estimate(
        "  labour g\nroom r\n  height 2400\n  wall a 3000\n    on tile over plaster\n    door 900 x 2000 at 0\n"
        "    remove tile\n    remove skirting 120\n    finish board by plain vertical\n",
        CATALOGUE + GANG,
    )
    assert task(made, "removing tile") == (5.4, "m2")
    assert task(made, "removing skirting") == (2.1, "m")
    hours = {line.task: line.hours for line in made.priced.labour}
    assert (hours["removing tile"], hours["removing skirting"]) == (Decimal("1.35"), Decimal("0.21"))


def test_extras_of_a_pattern_repeat_with_its_rooms() -> None:
    """A skip for each of five rooms, mirrored or not; so the extras of its walls."""
    made = estimate(
        'pattern p\n  height 2400\n  extra "Skip" 240.00 each\n  wall a 3000\n'
        '    extra "Hack off" 6.5 m2 at 22.00 per m2\n'
        "    finish board by plain vertical\nrooms 101 to 103 as p\nrooms 104 to 105 as p mirrored\n"
    )
    extras = {line.text: (line.quantity, line.cost) for line in made.priced.extras}
    assert extras == {"Skip": (5, Decimal("1200.00")), "Hack off": (Decimal("32.5"), Decimal("715.00"))}


def test_a_dado_takes_its_cap_and_no_edge_trim_over_it() -> None:
    """The edge trim stays at the free ends."""
    made = estimate(
        "room r\n  height 2400\n  wall a 3000\n    finish board by whole vertical up 0 to 1000\n", CATALOGUE + TRIMS
    )
    assert roles(made) == {"start": [2990], "cap": [2990], "edge": [998, 998]}


def test_a_cornice_stands_in_for_the_top_trim() -> None:
    """Along the wall's top the cornice alone."""
    made = estimate("room r\n  height 2400\n  wall a 3000\n    finish board by whole vertical\n", CATALOGUE + TRIMS)
    assert roles(made) == {"start": [2990], "cornice": [2990], "edge": [2398, 2398]}


def test_an_architrave_stands_in_for_the_edge_trim_round_a_door() -> None:
    """Both jambs and the head, mitred; a void without a frame keeps the edge trim."""
    made = estimate(
        "room r\n  height 2400\n  wall a 4000\n    door 900 x 2000 at 500\n    void 900 x 2000 at 2500\n"
        "    finish board by whole vertical\n",
        CATALOGUE + TRIMS,
    )
    found = roles(made)
    assert sorted(found["architrave"]) == [900, 1998, 1998]
    assert sorted(found["edge"]) == [910, 2003, 2003, 2398, 2398]


@pytest.mark.parametrize(
    ("line", "bottom", "trims"),
    [("upstand 100 lap 50", 50, {}), ("upstand 100 butt", 102, {"start": [2990]}), ("keep skirting 120", 120, {})],
)
def test_what_stays_at_the_floor(line: str, bottom: int, trims: dict[str, list[float]]) -> None:
    """Panels lap an upstand without trim, butt against it on the start trim, stop at a kept skirting without one."""
    made = estimate(
        f"room r\n  height 2400\n  wall a 3000\n    {line}\n    finish board by whole vertical\n", CATALOGUE + TRIMS
    )
    (lining,) = wall_of(made).linings
    assert (lining.region.bottom or 0) // MM == bottom
    assert {role: lengths for role, lengths in roles(made).items() if role == "start"} == trims


def test_a_layer_taken_off_for_the_room_comes_off_the_walls_that_have_it() -> None:
    """Walls a and b are tiled to 1400, c says plaster alone, d says nothing: 3 x 1.4 + 2 x 1.4 + 2 x 2.4 m2."""
    made = estimate(
        "  labour g\nroom r\n  height 2400\n  remove tile\n  surface sound\n"
        "  wall a 3000\n    on plaster\n    on tile over plaster up 0 to 1400\n    finish board by plain vertical\n"
        "  wall b 2000\n    on plaster\n    on tile over plaster up 0 to 1400\n    bare\n"
        "  wall c 3000\n    on plaster\n    finish board by plain vertical\n  wall d 2000\n    bare\n",
        CATALOGUE + GANG,
    )
    assert task(made, "removing tile") == (11.8, "m2")


def test_a_layer_taken_off_one_wall_is_as_written() -> None:
    """The wall's own line holds, whatever its substrate is said to be."""
    made = estimate(
        "  labour g\nroom r\n  height 2400\n  wall a 3000\n    on plaster\n    surface sound\n    remove tile\n"
        "    finish board by plain vertical\n",
        CATALOGUE + GANG,
    )
    assert task(made, "removing tile") == (7.2, "m2")


ROOM_SAYS = (
    "  height 2400\n  on plaster\n  remove tile\n  surface sound\n  wall a 3000\n{}    finish board by plain vertical\n"
    "  wall b 2000\n    bare\n  wall c 3000\n    bare\n  wall d 2000\n    bare\n"
)


def test_a_rooms_own_substrate_holds_for_the_walls_that_say_nothing() -> None:
    """The room is plaster, wall a is tiled to 1400: 3 x 1.4 m2, and nothing of b, c and d."""
    tiled = ROOM_SAYS.format("    on tile over plaster up 0 to 1400\n")
    made = estimate(f"  labour g\nroom r\n{tiled}", CATALOGUE + GANG)
    assert task(made, "removing tile") == (4.2, "m2")


def test_where_no_wall_records_the_layer_the_rooms_line_is_as_written() -> None:
    """The room is plaster once its tiles are off, all round: 10 x 2.4 m2, as of a wall with these two lines."""
    made = estimate(f"  labour g\nroom r\n{ROOM_SAYS.format('')}", CATALOGUE + GANG)
    assert task(made, "removing tile") == (24, "m2")


def test_a_patterns_walls_keep_their_layers_under_a_rooms_own_substrate() -> None:
    """A room of the pattern says that it is plaster; wall a is tiled still, so its tiles come off: 3 x 1.4 m2."""
    tiled = ROOM_SAYS.format("    on tile over plaster up 0 to 1400\n").replace("  on plaster\n", "", 1)
    made = estimate(f"  labour g\npattern p\n{tiled}room r as p\n  on plaster\n", CATALOGUE + GANG)
    assert task(made, "removing tile") == (4.2, "m2")
