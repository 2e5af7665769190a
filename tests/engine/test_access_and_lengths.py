"""Which delivered lengths are chosen, and what `access` leaves to choose from."""

from decimal import Decimal

from jobs import CATALOGUE, estimate, ordered, wall_of

from roomspec.quantities.length import MM

TWO = (
    CATALOGUE
    + """
panel two
  length 2400 at 20.00 each
  length 4200 at 36.00 each
  cover 250
  thick 10
  lay vertical horizontal
  supports every 600
support lath
  section 25 x 50
  length 2400 at 3.00 each
  length 4800 at 5.00 each
method battened
  battens lath every 600
  screw screw
fixing screw
  size 3.5 x 45
trim rail
  role start
  length 2400 at 5.00 each
  length 3600 at 7.00 each
method railed
  glue grab bead 8 every 100
  start rail
"""
)


def test_access_leaves_the_short_lengths() -> None:
    """21 pieces of 2090: with 3000 to get in, 21 of 2400 at 20.00 instead of ten of 4200 and one of 2400."""
    room = "room r\n  height 2090\n{}  wall a 5250\n    finish two by plain vertical\n"
    free, tight = (estimate(room.format(line), TWO) for line in ("", "  access 3000\n"))
    assert ordered(free, "two").by_stock == ((4200 * MM, 10), (2400 * MM, 1))
    assert ordered(tight, "two").by_stock == ((2400 * MM, 21),)
    assert next(line.cost for line in tight.priced.order if line.item == "two") == Decimal("420.00")
    assert [ordered(made, "two").cost_bound for made in (free, tight)] == [Decimal("380.00"), Decimal("420.00")]


def test_access_limits_how_long_a_piece_is() -> None:
    """A row 4200 long is one panel where it can be got in, 2400 and 1800 where it cannot."""
    room = "room r\n  height 250\n{}  wall a 4200\n    finish two by plain horizontal\n"
    free, tight = (estimate(room.format(line), TWO) for line in ("", "  access 3000\n"))
    assert [piece.length // MM for piece in wall_of(free).linings[0].pieces] == [4200]
    assert [piece.length // MM for piece in wall_of(tight).linings[0].pieces] == [2400, 1800]


def test_where_nothing_can_be_got_in_the_shortest_is_taken() -> None:
    """Panels of 2400 and 4200 and an access of 2000: the check tells, the figures rest on 2400."""
    made = estimate("room r\n  height 2090\n  access 2000\n  wall a 500\n    finish two by plain vertical\n", TWO)
    assert ordered(made, "two").by_stock == ((2400 * MM, 2),)


def test_rooms_are_pooled_by_what_can_be_got_into_them() -> None:
    """Two rooms of one pool, one of them tight: each is cut from its own lengths, and the order adds them up."""
    wall = "  height 2090\n  wall a 1250\n    finish two by plain vertical\n"
    made = estimate(f"room 1\n{wall}room 2\n  access 3000\n{wall}", TWO)
    assert [plan.pool for plan in made.taken.plans if plan.item == "two"] == ["job", "job, lengths to 2400"]
    assert ordered(made, "two").by_stock == ((4200 * MM, 2), (2400 * MM, 6))
    assert ordered(made, "two").needed == 8


def test_trims_and_battens_too() -> None:
    """A start trim 3000 long: one of 3600, or 2400 and 600 out of two; battens likewise."""
    text = "room r\n  height 1000\n{}  wall a 3000\n    on masonry\n    finish two by {} vertical\n"
    rails = [estimate(text.format(line, "railed"), TWO) for line in ("", "  access 3000\n")]
    assert [ordered(made, "rail").by_stock for made in rails] == [((3600 * MM, 1),), ((2400 * MM, 2),)]
    laths = [estimate(text.format(line, "battened"), TWO) for line in ("", "  access 3000\n")]
    # Rows at the foot, in the middle and at the head, 3000 each: 4800 holds one, 2400 and 600 are two pieces.
    assert [ordered(made, "lath").by_stock for made in laths] == [((4800 * MM, 3),), ((2400 * MM, 4),)]


def test_rows_longer_than_the_longest_length_say_what_they_were_set_out_for() -> None:
    """The proof is of these pieces; other joints, of shorter panels, may do for less."""
    two = CATALOGUE.replace("  length 2600\n", "  length 2400 at 20.00 each\n  length 3600 at 31.00 each\n").replace(
        "  price 30.00 each\n", ""
    )
    for width, said in ((4200, True), (3600, False)):
        made = estimate(f"room r\n  height 1000\n  wall a {width}\n    finish board by plain horizontal\n", two)
        told = "End joints on wall a of room r are set out for the longest board, 3600 mm."
        assert (told in made.priced.assumptions) == said, made.priced.assumptions


def test_lengths_without_prices_are_proven_by_number_only() -> None:
    """24 of 2400 are the least stock, but fewer of 3600 would do, so nothing is proven; 6 of one length are."""
    free = CATALOGUE.replace("  length 2600\n", "  length 2400\n  length 3600\n").replace("  price 30.00 each\n", "")
    dado = "    finish board by plain vertical up 0 to "
    mixed = ordered(
        estimate(
            f"room r\n  height 2400\n  wall a 6000\n{dado}1100\n    corner open\n  wall b 6000\n{dado}1250\n", free
        )
    )
    assert (mixed.needed, mixed.bound, mixed.proven, mixed.cost_bound) == (24, 17, False, None)
    whole = ordered(estimate(f"room r\n  height 3000\n  wall a 1500\n{dado}2500\n", free))
    assert (whole.needed, whole.bound, whole.proven) == (6, 6, True)
