"""What the examples of several checks share: an invented catalogue, as short as a job can do with."""

PANEL = """\
panel limestone-long "Limestone print, long"
  length 2600
  cover  250
  thick  10
  price  31.50 each
"""
SHORT_PANEL = """\
panel limestone-short "Limestone print, short"
  length 900
  cover  250
  thick  10
  price  11.80 each
  joined all edges
"""
GLUED = """\
adhesive grab
  tube  290 ml
  price 6.20 each
method glued
  glue grab bead 8 every 100
"""
BATTENED = """\
support sw-25x50 "Softwood batten"
  section 25 x 50
  length  2400
  price   3.20 each
fixing panel-screw
  size  3.5 x 35
  price 11.40 per pack
method on-battens
  battens sw-25x50 every 400
  screw   panel-screw
"""
