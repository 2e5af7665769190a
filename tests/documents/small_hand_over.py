"""Small jobs for the documents, and what they hand over."""

import datetime

from roomspec.analysis.session import Session
from roomspec.analysis.world import MemoryWorld
from roomspec.reports.hand_over.given import HandOver, hand_over_of

JOB = """\
job {name} "{title}"
  date 2026-11-25
  fit on 2027-03-08
  currency EUR
  tax 20 %
  overhead 8 %
  profit 10 %
  measured nrm2
  labour gang
  spare 5 %
  built 1962
{more}
  extra "Skip, 6 yd" 240.00 each
  assume "Power is isolated by others."
  exclude "Painting."
room 1.01 "{room}"
  height 2400
  on plasterboard over masonry
  finish board by glued vertical start balanced
  wall a 3000
    socket at 700 up 450
  wall b about 2000
    window 600 x 900 at 700 sill 1100
    wet direct from 0 to 900 up 0 to 2000
  wall c 3000
    fixture "rail" at 900 up 900 load 30 kg
  wall d 2000
    door 800 x 2040 at 500
panel board "Board, long"
  length 2600
  cover 250
  thick 10
  tongue 8
  weighs 5.5 kg/m2
  pack 5
  price 31.50 each
  lay vertical
  acclimatise 40 h
  valid until 2027-01-31
trim edge "Edge trim"
  role edge
  fits 10
  length 2600
  length 3000 at 11.00 each
  allows 2
  price 3.90 per m
adhesive grab
  tube 290 ml
  price 6.20 each
sealant clear
  tube 310 ml
  price 5.10 each
method glued "Glued and sealed"
  glue grab bead 8 every 300
  seal clear bead 5 at joints corners floor
  edge edge
gang gang
  rate 62.00 per h
  takes 0.31 h/m2 for panels vertical
  takes 0.06 h/m for trims
"""


def handed_over(
    title: str = "Small", room: str = "Shower room", more: str = "", name: str = "small", text: str = JOB
) -> HandOver:
    """The small job, with another title, another room's title, more terms."""
    whole = text.format(name=name, title=title, room=room, more=more)
    snapshot = Session(MemoryWorld({"job.room": whole}, datetime.date(2026, 11, 25))).snapshot("job.room")
    assert snapshot is not None and snapshot.job is not None
    return hand_over_of(snapshot)
