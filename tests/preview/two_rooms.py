"""A small job of two rooms, one of them lined, as files of three kinds."""

JOB = """\
job j "Job <b>"
  use "rooms.room"
  use "catalogue.room"
  currency EUR
  labour two
"""
ROOMS = """\
room 1 "Store"
  height 2400
  on plaster
  surface sound
  wall a 3000
    finish board by glued vertical

room 2 "Hall"
  height 2400
  wall a 2000
"""
CATALOGUE = """\
panel board "Board"
  length 2600
  cover 250
  thick 10
  weighs 5.5 kg/m2
  price 31.50 each

method glued
  glue grab bead 8 every 100

adhesive grab
  tube 290 ml
  price 6.20 each

gang two
  rate 50.00 per h
  takes 0.30 h/m2 for panels vertical
"""
