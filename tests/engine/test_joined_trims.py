"""Trims longer than their stock, from a job's text to its order: edge trims in lengths of 2600 on a wall 2603 high."""

from jobs import CATALOGUE, estimate

from roomspec.quantities.length import MM

EDGED = (
    CATALOGUE.replace("length 2600", "length 3000")
    + """
method edged "Glued, with edge trims"
  glue grab bead 8 every 100
  edge ed
trim ed
  role edge
  length 2600
"""
)
SAID = "Where whole lengths of trim ed leave less than 100 mm, the last joint is moved to leave that."


def test_a_trim_is_not_pieced_out_with_three_millimetres() -> None:
    """Two ends of 2603: each 2503 and 100, which need three lengths (2503 leaves 94), and the quotation says so."""
    text = "room r\n  height 2603\n  wall a 3000\n    finish board by edged vertical\n"
    made = estimate(text, EDGED)
    lengths = dict(made.taken.rooms[0].lengths)
    (blanks,) = (blanks for product, blanks in lengths.items() if product.name == "ed")
    assert sorted(blank.length // MM for blank in blanks) == [100, 100, 2503, 2503]
    needed = next(quantity for quantity in made.taken.quantities if quantity.product.name == "ed").needed
    assert needed == 3
    assert SAID in made.priced.assumptions


def test_one_that_whole_lengths_serve_is_cut_as_before() -> None:
    """Ends of 2700 are 2600 and 100; of 2600 one length. Nothing is said."""
    for height, cut in ((2700, [100, 100, 2600, 2600]), (2600, [2600, 2600])):
        text = f"room r\n  height {height}\n  wall a 3000\n    finish board by edged vertical\n"
        made = estimate(text, EDGED)
        lengths = dict(made.taken.rooms[0].lengths)
        (blanks,) = (blanks for product, blanks in lengths.items() if product.name == "ed")
        assert sorted(blank.length // MM for blank in blanks) == cut
        assert SAID not in made.priced.assumptions
