"""Cases worked by hand."""

import subprocess
import sys
from decimal import Decimal

from recount import recount

from roomspec.cutting.demand import Blank, PanelStock, StockLength
from roomspec.cutting.plan import CuttingPlan, plan_lengths, plan_panels
from roomspec.quantities.length import MM, mm

COVER = 250 * MM
KERF = 3 * MM
STOCK = PanelStock((StockLength(2600 * MM),), COVER)
EXACT = PanelStock((StockLength(2600 * MM),), COVER, all_edges=True)


def full(length: int | str, count: int, name: str = "a", ends: str = "none", number: int = 0) -> list[Blank]:
    """Full-width blanks that are alike."""
    return [Blank(f"{name}/{place}", mm(length), COVER, "both", ends, number) for place in range(count)]


def rip(name: str, length: int | str, width: int | str, edges: str, ends: str = "none") -> Blank:
    """One blank narrower than the panel."""
    return Blank(name, mm(length), mm(width), edges, ends)


def plan_of(blanks: list[Blank], stock: PanelStock = STOCK, kerf: int = KERF) -> CuttingPlan:
    """The plan, recounted."""
    plan = plan_panels(blanks, stock, kerf)
    recount(blanks, stock, kerf, plan)
    return plan


def test_wall_without_offcuts_to_use() -> None:
    """Twelve pieces of 2400 from panels of 2600 need twelve panels: 200 is left of each."""
    plan = plan_of(full(2400, 12))
    assert (plan.panels, plan.bound, plan.proven) == (12, 12, True)
    assert [pattern.offcut for pattern in plan.patterns] == [197 * MM]


def test_wall_with_a_door() -> None:
    """Nine pieces of 2400 and three of 400 above the door need ten panels: the three come from one."""
    plan = plan_of(full(2400, 9) + full(400, 3, "door"))
    assert (plan.panels, plan.bound, plan.proven) == (10, 10, True)


def test_pieces_that_fit_to_the_nanometre() -> None:
    """Two pieces and the kerf between them fill a panel exactly; the last cut needs no kerf."""
    assert plan_of(full("1298.5", 2)).panels == 1
    assert plan_of(full("1298.500001", 2)).panels == 2
    assert plan_of([*full("1298.500001", 1), *full("1298.499999", 1, "b")]).panels == 1


def test_whole_panel_and_one_nanometre_more() -> None:
    """A piece as long as the panel needs no cut; one a nanometre longer cannot be had, and says so exactly."""
    plan = plan_of(full(2600, 1) + full("2600.000001", 1, "long"))
    assert plan.panels == 1
    assert plan.impossible == (("long/0", "2600.000001 long; the longest panel is 2600"),)


def test_impossible_blanks_are_values() -> None:
    """What fits no stock is reported with its reason, in the names' natural order, and the rest is planned."""
    blanks = [*full(2700, 1, "b/10"), *full(2700, 1, "b/2"), rip("wide", 100, 251, "none"), rip("flat", 0, 10, "none")]
    plan = plan_of([*blanks, *full(2400, 1)])
    assert plan.impossible == (
        ("b/2/0", "2700 long; the longest panel is 2600"),
        ("b/10/0", "2700 long; the longest panel is 2600"),
        ("flat", "it has no length or no width"),
        ("wide", "251 wide; the panel covers 250"),
    )
    assert (plan.pieces, plan.panels) == (1, 1)


def test_nothing_to_cut() -> None:
    """No blanks need no panels, and that is proven; without any stock every blank is impossible."""
    plan = plan_of([])
    assert (plan.pieces, plan.panels, plan.bound, plan.proven, plan.patterns) == (0, 0, 0, True, ())
    nothing = plan_of(full(2400, 1), PanelStock((), COVER))
    assert nothing.impossible == (("a/0", "nothing to cut it from: no length is given"),)


def test_left_and_right_rips_share_a_strip() -> None:
    """A left rip of 100 and a right rip of 120 share a panel of 250 with the kerf between them."""
    plan = plan_of([rip("l", 2400, 100, "left"), rip("r", 2300, 120, "right")])
    assert (plan.panels, plan.bound, plan.proven) == (1, 1, True)
    strip = plan.patterns[0].strips[0]
    assert strip.length == 2400 * MM
    assert [(one.names, one.length) for one in strip.rips] == [(("l",), 2400 * MM), (("r",), 2300 * MM)]


def test_rips_that_leave_no_kerf_do_not_share() -> None:
    """Rips of 125 and 122 fill 250 with the kerf; a nanometre more does not go."""
    assert plan_of([rip("l", 2400, 125, "left"), rip("r", 2400, 122, "right")]).panels == 1
    assert plan_of([rip("l", 2400, 125, "left"), rip("r", 2400, "122.000001", "right")]).panels == 2


def test_factory_edge_is_given_once() -> None:
    """Two left rips need two panels however narrow, and that is proven; any number needs neither edge."""
    plan = plan_of([rip("l/1", 2400, 50, "left"), rip("l/2", 2400, 50, "left")])
    assert (plan.panels, plan.bound, plan.proven) == (2, 2, True)
    narrow = [rip(f"n/{place}", 2400, 59, "none") for place in range(2)]
    plan = plan_of([*narrow, rip("l", 2400, 59, "left"), rip("r", 2400, 60, "right")])
    assert (plan.panels, plan.bound) == (1, 1)


def test_rip_with_both_edges_is_a_full_piece() -> None:
    """A blank that needs both factory edges takes its strip for itself, whatever its width."""
    assert plan_of([rip("b", 2400, 100, "both"), rip("r", 2400, 50, "right")]).panels == 2


def test_short_rips_go_beside_and_behind() -> None:
    """A left rip of 2400, a right one of 1200 beside it and a full 190 behind them are one panel."""
    plan = plan_of([rip("l", 2400, 80, "left"), rip("r", 1200, 80, "right"), *full(190, 1, "short")])
    assert (plan.panels, plan.bound) == (1, 1)


def test_ends_where_panels_are_joined_all_round() -> None:
    """A panel gives one left end and one right; between them stands what needs neither."""
    plan = plan_of(full(800, 1, "l", "left") + full(800, 1, "n") + full(800, 1, "r", "right"), EXACT)
    assert (plan.panels, plan.bound) == (1, 1)
    assert [strip.rips[0].names for strip in plan.patterns[0].strips] == [("l/0",), ("n/0",), ("r/0",)]
    plan = plan_of(full(800, 3, "l", "left"), EXACT)
    assert (plan.panels, plan.bound, plan.proven) == (3, 3, True)
    assert plan_of(full(800, 3, "l", "left"), STOCK).panels == 1


def test_both_ends_need_a_whole_panel() -> None:
    """A blank with both factory ends is a panel's length or impossible."""
    plan = plan_of(full(2600, 2, "whole", "both") + full(2400, 1, "cut", "both"), EXACT)
    assert plan.panels == 2
    assert plan.impossible == (("cut/0", "2400 long with both factory ends; no panel is that long"),)


def test_rips_share_the_ends_of_a_whole_panel() -> None:
    """Two rips in one strip may need opposite ends if the strip is the whole panel."""
    plan = plan_of([rip("l", 2000, 100, "left", "left"), rip("r", 2000, 100, "right", "right")], EXACT)
    assert (plan.panels, plan.patterns[0].strips[0].length) == (1, 2600 * MM)


def test_numbered_sets() -> None:
    """Four numbers: three panels of the first, one of each other make three whole sets, twelve panels, proven."""
    stock = PanelStock((StockLength(2600 * MM),), COVER, sequence=4)
    blanks = [
        blank for number in range(4) for blank in full(2400, 3 if number == 0 else 1, f"n{number}", number=number)
    ]
    plan = plan_of(blanks, stock)
    assert (plan.sets, plan.panels, plan.bound, plan.proven) == (3, 6, 12, True)
    assert plan.by_stock == ((2600 * MM, 12),)
    assert [pattern.number for pattern in plan.patterns] == [0, 1, 2, 3]


def test_offcut_serves_its_own_number() -> None:
    """Two short pieces of different numbers do not share a panel, of the same number they do."""
    stock = PanelStock((StockLength(2600 * MM),), COVER, sequence=2)
    assert plan_of(full(1000, 1, "x") + full(1000, 1, "y", number=1), stock).panels == 2
    plan = plan_of(full(1000, 2, "x"), stock)
    assert (plan.panels, plan.sets, plan.bound) == (1, 1, 2)
    outside = plan_of(full(1000, 1, "x", number=2), stock)
    assert outside.impossible == (("x/0", "panel 3 of a set of 2"),)


def test_numbered_sets_in_the_cheapest_length() -> None:
    """Sets are ordered in one length: two sets of 3000 at 25 each beat four of 2400 at 20."""
    lengths = (StockLength(2400 * MM, Decimal(20)), StockLength(3000 * MM, Decimal(25)))
    stock = PanelStock(lengths, COVER, sequence=2)
    blanks = full(1300, 4, "x") + full(1300, 4, "y", number=1)
    plan = plan_of(blanks, stock)
    assert (plan.sets, plan.cost, plan.cost_bound, plan.proven) == (2, Decimal(100), Decimal(100), True)
    assert plan.by_stock == ((3000 * MM, 4),)


def test_least_money_from_two_lengths() -> None:
    """21 pieces of 2090 from 2400 at 20.00 and 4200 at 36.00: ten of 4200 and one of 2400, 380.00."""
    lengths = (StockLength(2400 * MM, Decimal("20.00")), StockLength(4200 * MM, Decimal("36.00")))
    for plan in (plan_of(full(2090, 21), PanelStock(lengths, COVER)), plan_lengths(full(2090, 21), lengths, KERF)):
        assert plan.by_stock == ((4200 * MM, 10), (2400 * MM, 1))
        assert (plan.cost, plan.cost_bound, plan.proven) == (Decimal("380.00"), Decimal("380.00"), True)
        assert (plan.panels, plan.bound) == (11, 11)


def test_fewest_panels_among_the_cheapest() -> None:
    """Priced by the metre, two pieces of 1500 come from one length of 3003 rather than from two."""
    lengths = (StockLength(3003 * MM, Decimal("30.03")), StockLength(mm("1501.5"), Decimal("15.015")))
    plan = plan_lengths(full(1500, 4), lengths, KERF)
    assert (plan.panels, plan.cost, plan.proven) == (2, Decimal("60.060"), True)


def test_least_stock_where_no_price_is_known() -> None:
    """Without a price for each length the plan uses the least length of stock, and no money is given."""
    lengths = (StockLength(2400 * MM, Decimal(1)), StockLength(4200 * MM))
    plan = plan_lengths(full(2090, 3), lengths, KERF)
    assert plan.by_stock == ((4200 * MM, 1), (2400 * MM, 1))
    assert (plan.cost, plan.cost_bound, plan.proven) == (None, None, True)


def test_length_listed_twice_counts_at_its_lower_price() -> None:
    """The same length twice is one length."""
    lengths = (
        StockLength(2400 * MM, Decimal(9)),
        StockLength(2400 * MM, Decimal(8)),
        StockLength(1200 * MM, Decimal(7)),
    )
    assert plan_lengths(full(2000, 2), lengths, KERF).cost == Decimal(16)


def test_names_go_out_in_natural_order() -> None:
    """Names are given to the patterns in natural order: a/2 before a/10."""
    plan = plan_of(full(2400, 11))
    assert plan.patterns[0].strips[0].rips[0].names == tuple(f"a/{place}" for place in range(11))


def test_simple_plans_need_no_solver() -> None:
    """Where first-fit meets a simple bound the solver is not even imported."""
    code = (
        "import sys; from roomspec.cutting.demand import *; from roomspec.cutting.plan import *;"
        "p = plan_panels([Blank(str(i), 2400, 250) for i in range(9)] + [Blank('d', 400, 250)],"
        "PanelStock((StockLength(2600),), 250), 3); assert p.proven;"
        "assert not {'highspy', 'numpy'} & set(sys.modules)"
    )
    subprocess.run([sys.executable, "-c", code], check=True)


def test_solver_writes_nothing() -> None:
    """A plan that needs the solver leaves standard output empty."""
    code = (
        "from roomspec.cutting.demand import *; from roomspec.cutting.plan import *;"
        "p = plan_lengths([Blank(f'{n}/{i}', n, 1) for n, c in ((50, 40), (40, 30), (30, 20)) for i in range(c)],"
        "(StockLength(100),), 0); assert p.proven; import sys; assert 'highspy' in sys.modules"
    )
    done = subprocess.run([sys.executable, "-c", code], check=True, capture_output=True)
    assert (done.stdout, done.stderr) == (b"", b"")


def test_out_of_time_the_gap_is_reported() -> None:
    """Without any time the plan is first-fit's (42 where 40 is possible), the bound holds, and nothing is claimed."""
    sizes = [size for size, count in ((50, 40), (40, 30), (30, 20)) for _ in range(count)]
    blanks = [Blank(f"p/{place}", size, 1) for place, size in enumerate(sizes)]
    plan = plan_lengths(blanks, (StockLength(100),), 0, seconds=0)
    assert (plan.panels, plan.proven) == (42, False)
    assert plan.bound <= 40
    assert plan_lengths(blanks, (StockLength(100),), 0).panels == 40
