"""The texts of the job that `roomspec new` writes."""

from datetime import date

JOB = """\
job {name} "{title}"
  use        "catalogue.room"
  use        "rooms/*.room"
  date       {today}
  currency   EUR
  tax        20 %
  overhead   8 %
  profit     10 %
  labour     two-fitters
  narrowest  60
  exclude    "New sanitary ware."
"""

ROOM = """\
room 1.01 "Shower room"
  level    first
  purpose  bathroom
  height   2400
  on       plasterboard
  surface  sound
  finish   stone-long by glued vertical start balanced

  wall a 2400
    wet   splash
    note  "A wall's width runs from its left end, seen from inside the room."
  wall b 1800
    window  600 x 900 at 600 sill 1100
  wall c 2400
  wall d 1800
    door  800 x 2040 at 500
"""

CATALOGUE = """\
# Invented products: put your supplier's here.

panel stone-long "Stone print panel, long"
  length    2600
  cover     250
  thick     10
  tongue    8
  weighs    5.5 kg/m2
  pack      5
  price     31.50 each
  lay       vertical overhead
  reaction  B-s2,d0
  wet       direct

trim edge-10 "Edge trim"
  role    edge
  fits    10
  length  2600
  allows  2
  price   9.80 each
trim inside-10 "Inside corner"
  role    inside-corner
  fits    10
  length  2600
  allows  3
  price   8.40 each
trim start-10 "Start trim"
  role    start
  fits    10
  length  2600
  allows  2
  price   7.90 each
trim top-10 "Top trim"
  role    top
  fits    10
  length  2600
  allows  2
  price   7.90 each

adhesive grab "Grab adhesive"
  tube   290 ml
  price  6.20 each
sealant clear "Clear sealant"
  tube   310 ml
  price  5.10 each

method glued "Glued, trimmed and sealed"
  glue           grab bead 8 every 300
  seal           clear bead 5 at joints trims corners floor ceiling edges rims
  start          start-10
  inside-corner  inside-10
  edge           edge-10
  top            top-10

gang two-fitters "Two fitters"
  rate   62.00 per h
  takes  0.30 h/m2 for panels vertical
  takes  0.06 h/m for trims
  takes  0.04 h/m for seals
  takes  0.40 h each for openings
  takes  0.50 h each for rooms
"""


def job_files(name: str, title: str, today: date) -> dict[str, str]:
    """The files of a new job: path within its folder -> text."""
    return {
        "job.room": JOB.format(name=name, title=title, today=today.isoformat()),
        "rooms/shower-room.room": ROOM,
        "catalogue.room": CATALOGUE,
    }
