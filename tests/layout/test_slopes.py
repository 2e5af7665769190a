"""Raked, gabled and stepped ceilings, rising floors, walls out of plumb: worked by hand."""

from walls import blanks, finish, gap, laid, only, opening, outline, region, trim, wall, widths

from roomspec.layout.laid import Lining
from roomspec.model.method import Method
from roomspec.model.shape import Profile
from roomspec.quantities.length import MM

SQUARE_MM = MM * MM


def line(*points: tuple[int, int]) -> Profile:
    """A profile in millimetres."""
    return tuple((x * MM, y * MM) for x, y in points)


def borders(lining: Lining, kind: str) -> list[tuple[int, ...]]:
    """The lines of one kind in millimetres."""
    lines = [border.line for border in lining.borders if border.kind == kind]
    return [tuple(value // MM for value in (at.x0, at.y0, at.x1, at.y1)) for at in lines]


def test_raked_wall() -> None:
    """1000 wide, 2000 to 2400: each column rises by 100 and its blank is its taller side; the top is one border."""
    face = laid(wall(1000, 2400, finish(), top=line((0, 2000), (1000, 2400))))
    (lining,) = face.linings
    assert blanks(lining) == [(2100, 250), (2200, 250), (2300, 250), (2400, 250)]
    assert lining.pieces[0].outline == outline((0, 0), (250, 0), (250, 2100), (0, 2000))
    assert lining.area == face.gross == 2_200_000 * SQUARE_MM
    assert borders(lining, "top") == [(0, 2000, 1000, 2400)]


def test_spandrel() -> None:
    """Height 0 at one end: the first piece is a triangle."""
    lining = only(wall(500, 1000, finish(), top=line((0, 0), (500, 1000))))
    assert lining.pieces[0].outline == outline((0, 0), (250, 0), (250, 500))
    assert blanks(lining) == [(500, 250), (1000, 250)]


def test_gable() -> None:
    """Peak 3000 at 500, eaves 2000: two borders at the top, the pieces beside the peak are stacked at 2600."""
    lining = only(wall(1000, 3000, finish(), top=line((0, 2000), (500, 3000), (1000, 2000))))
    assert blanks(lining) == [(2500, 250), (2600, 250), (400, 200), (2600, 250), (400, 200), (2500, 250)]
    assert lining.pieces[2].outline == outline((300, 2600), (500, 2600), (500, 3000))
    assert borders(lining, "top") == [(0, 2000, 500, 3000), (500, 3000, 1000, 2000)]


def test_gable_laid_flat() -> None:
    """Rows under a gable are cut by both slopes: the second of two is 250 high and tapers to the peak."""
    lining = only(wall(1000, 500, finish(direction="horizontal"), top=line((0, 250), (500, 500), (1000, 250))))
    assert blanks(lining) == [(1000, 250), (1000, 250)]
    assert lining.pieces[1].outline == outline((0, 250), (1000, 250), (500, 500))


def test_a_step_in_the_ceiling() -> None:
    """1200 to 500, then 2300: the taller side ends against the step; a gap of 10 is left there too."""
    stepped = line((0, 1200), (500, 1200), (500, 2300), (1000, 2300))
    lining = only(wall(1000, 2300, finish(Method("m", gaps=(gap(10, "ceiling"),))), top=stepped))
    assert blanks(lining) == [(1190, 250), (1190, 250), (2290, 250), (2290, 250)]
    assert lining.pieces[2].outline == outline((500, 0), (750, 0), (750, 2290), (510, 2290), (510, 1190), (500, 1190))
    assert borders(lining, "top") == [(0, 1190, 510, 1190), (510, 2290, 1000, 2290), (510, 1190, 510, 2290)]


def test_a_region_higher_than_a_raked_wall() -> None:
    """`up 0 to 2200` under a ceiling from 2000 to 2400: the slope to 500, then the region's own edge."""
    lining = only(wall(1000, 2400, finish(region=region(top=2200)), top=line((0, 2000), (1000, 2400))))
    assert borders(lining, "top") == [(0, 2000, 500, 2200)]
    assert (500, 2200, 1000, 2200) in borders(lining, "edge")


def test_a_trim_under_a_slope_is_taken_square_to_it() -> None:
    """A slope of 5 in 12 is 13 long: a top trim of 12 lowers it by 12 x 13 / 12."""
    lining = only(wall(600, 2400, finish(Method("m", top=trim("top", 12))), top=line((0, 2000), (600, 2250))))
    assert borders(lining, "top") == [(0, 1987, 600, 2237)]


def test_dado_up_a_stair() -> None:
    """Issue's example, wall 3600, floor 0 to 2700, up 0 to 900: 14 blanks of 1087.5 and one of 975; 3.24 m2."""
    lining = only(wall(3600, 4800, finish(region=region(top=900)), floor=line((0, 0), (3600, 2700))))
    assert blanks(lining) == [(1087.5, 250)] * 14 + [(975, 100)]
    assert lining.area == 3_240_000 * SQUARE_MM
    assert borders(lining, "start") == [(0, 0, 3600, 2700)]
    assert (0, 900, 3600, 3600) in borders(lining, "edge")


def test_a_landing() -> None:
    """Rising 0 to 500, then level: columns on the landing are square."""
    lining = only(wall(1000, 2000, finish(region=region(top=900)), floor=line((0, 0), (500, 250), (1000, 250))))
    assert blanks(lining) == [(1025, 250), (1025, 250), (900, 250), (900, 250)]


def test_a_tall_wall_on_a_stair_is_stacked_from_each_columns_floor() -> None:
    """Each column of 2900 begins a panel at its own lowest point."""
    lining = only(wall(500, 2900, finish(), floor=line((0, 0), (500, 200))))
    assert blanks(lining) == [(2600, 250), (400, 250)] * 2


def test_a_floor_out_of_level() -> None:
    """Bottom pieces follow the floor line; a door without a sill reaches it."""
    face = wall(1000, 2400, finish(), floor=line((0, 0), (1000, 10)), openings=(opening("door", 250, 500, 2000),))
    lining = only(face)
    # The door's head is 2000 above the floor at its middle, which has risen by 5.
    assert blanks(lining) == [(2402.5, 250), (400, 250), (402.5, 250), (2402.5, 250)]
    assert borders(lining, "start") == [(0, 0, 250, 2), (750, 7, 1000, 10)]


def test_a_wall_out_of_plumb() -> None:
    """990 at the floor, 1040 at the ceiling: set out on 1040; what leans takes the scribe."""
    leaning = wall(990, 2400, finish(Method("m", scribe=10 * MM)), width_top=1040 * MM)
    face = laid(leaning)
    (lining,) = face.linings
    assert widths(lining) == [250, 250, 250, 250, 40]
    assert blanks(lining)[:4] == [(2400, 250)] * 4
    assert blanks(lining)[4] == (1920, 50)
    assert lining.area == face.gross == 1015 * 2400 * SQUARE_MM
    assert (990, 0, 1040, 2400) in borders(lining, "edge")


def test_a_wall_that_leans_in() -> None:
    """1040 at the floor, 990 at the ceiling."""
    face = laid(wall(1040, 2400, finish(), width_top=990 * MM))
    assert widths(face.linings[0]) == [250, 250, 250, 250, 40]
    assert face.linings[0].area == face.gross == 1015 * 2400 * SQUARE_MM
