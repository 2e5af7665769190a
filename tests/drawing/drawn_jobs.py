"""Jobs drawn once for all tests: the samples, and a small one that has what they lack."""

import datetime
from functools import lru_cache
from pathlib import Path

from roomspec.analysis.engine import Estimated
from roomspec.analysis.session import Session, Snapshot
from roomspec.analysis.world import MemoryWorld, World
from roomspec.files.disk import DiskWorld
from roomspec.reports.drawing.job_drawings import Drawing, draw_job

ROOT = Path(__file__).parents[2]
TODAY = datetime.date(2026, 11, 25)
CATALOGUE = "".join(
    file.read_text(encoding="utf-8") for file in sorted((ROOT / "samples/kestrel-house/catalogue").glob("*.room"))
)
ODD = """\
job odd "Odds & ends <every kind of face>"
  use       "catalogue.room"
  currency  EUR
  labour    two-fitters
room r1 "Boxes & <niches>"
  height   2400
  on       masonry
  surface  sound
  finish   limestone-long by glued-wet vertical
  wall a 4000
    boxing  "cistern" 900 x 1150 at 1200 deep 200
    niche   600 x 300 at 2600 sill 1100 deep 90 lined
    hatch   "Stopcock" 400 x 500 at 400 sill 300 panelled
    units   "vanity" 700 x 850 at 3250 sill 200
    socket  at 100 up 300
    socket  at 160 up 300
    socket  at 220 up 300
    switch  at 280 up 300
  wall b 3000
    bath    1700 x 560 to 572 at 0
    wet     direct
    wet     splash from 0 to 400 up 2000 to 2400
    pipe    at 500 up 1000
    finish  limestone-short by on-levelled-battens horizontal bond run-on
  wall c 4000
    boxing  300 x 2400 at 3700 deep 250
    floor   0 to 30
    door    900 x 2050 at 1500 reveal 100 lined
  wall d 3000
    window  300 x 300 at 40 sill 1500 reveal 400 lined head jambs sill
    finish  ash-plank by on-battens horizontal bond third
  ceiling over 4000 x 3000
    on       timber-frame
    surface  sound
    studs    every 400
    finish   ash-plank by on-battens lengthwise
    hatch    600 x 600 at 300 up 400
    socket   at 1200 up 900
room r2 "A long wall"
  height   2600
  on       masonry
  surface  sound
  wall a 31000
    finish  chalk-brick by glued-dado horizontal bond half up 0 to 1100
    window  1200 x 1000 at 400 sill 1300
    window  1200 x 1000 at 9400 sill 1300
"""


def snapshot_of(text: str, **files: str) -> Snapshot:
    """A job in memory, with the catalogue of the first sample."""
    world: World = MemoryWorld({"job.room": text, "catalogue.room": CATALOGUE, **files}, TODAY)
    snapshot = Session(world).snapshot("job.room")
    assert snapshot is not None
    return snapshot


def sample_of(name: str) -> Snapshot:
    """A sample as it stands on disk, or the odd job."""
    if name == "odd":
        return snapshot_of(ODD)
    snapshot = Session(DiskWorld(ROOT)).snapshot(f"samples/{name}/{name}.room")
    assert snapshot is not None
    return snapshot


@lru_cache
def made_of(name: str) -> Estimated:
    """The job laid, taken off and cut."""
    return sample_of(name).estimate()


@lru_cache
def drawings_of(name: str) -> tuple[Drawing, ...]:
    """Its drawings."""
    return draw_job(made_of(name), 0)


JOBS = ("kestrel-house", "loft-inches", "harbour-hotel", "odd")
