"""What findings say of a job in feet and inches."""

import datetime

from roomspec.analysis.session import Session
from roomspec.analysis.world import MemoryWorld

JOB = """\
{units}job demo
panel stone
  length 96 in
  cover 12 in
  thick 1/2 in
  weighs 4 lb/ft2
  pack 5
  price 31.50 each
adhesive grab
  tube 290 ml
  price 6.20 each
sealant clear
  tube 310 ml
  price 5.10 each
method glued
  glue grab bead 8 mm every 100 mm
room 1
  height 96 in
  on plasterboard
  surface sound
  finish stone by glued vertical
  wall a 122 in
    fixture "rail" at 90 in up 33 in load 250 lb
    wet direct from 0 to 36 in up 0 to 60 in
"""


def messages(units: str) -> dict[str, str]:
    """The message of each finding, by its name."""
    world = MemoryWorld({"job.room": JOB.format(units=units)}, datetime.date(2026, 11, 25))
    snapshot = Session(world).snapshot("job.room")
    assert snapshot is not None
    return {found.name: found.message + " | " + found.help for found in snapshot.findings}


def test_sizes_weights_and_loads():
    """Each figure is in the units of the job's own file."""
    feet, metric = messages("units in\n"), messages("")
    assert 'the strip at the right is 2"; the narrowest wanted is 2 3/8"' in feet["narrow-strip"]
    assert "the strip at the right is 50.8 mm; the narrowest wanted is 60" in metric["narrow-strip"]
    assert "rail, 250 lb, has" in feet["nothing-behind-fixture"]
    assert "rail, 113.4 kg, has" in metric["nothing-behind-fixture"]
    assert "weighs 160 lb; over 55 it takes two" in feet["heavy-pack"]
    assert "weighs 72.57 kg; over 25 it takes two" in metric["heavy-pack"]
    assert "ends 5' up" in feet["wet-zone-too-low"]


def test_a_line_to_write_carries_its_unit():
    """What a mend writes means the same in a file of inches."""
    assert "bead 5 mm at" in messages("units in\n")["unsealed-wet-joint"]
