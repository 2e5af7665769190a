"""Two jobs with one catalogue in one session: whatever is edited, each is what a fresh session makes of it."""

import datetime

from hypothesis import given, settings
from hypothesis import strategies as st

from roomspec.analysis.found import Found
from roomspec.analysis.session import Session
from roomspec.analysis.world import MemoryWorld
from roomspec.pricing.estimate import Estimate

TODAY = datetime.date(2026, 11, 25)
CATALOGUE = """\
panel long
  length 2600
  cover 250
  thick 10
  price 31.50 each

adhesive grab
  tube 290 ml
  price 6.20 each

method glued
  glue grab bead 8 every 300
"""
ROOM = """\
  use "catalogue.room"
  date 2026-11-25

pattern bath
  height 2400
  finish long by glued vertical
  wall a 3010
  wall b 2000
    door 826 x 2040 at 900

"""
FILES = {
    "a.room": "job a\n" + ROOM + "rooms 1 to 3 as bath\n",
    "b.room": "job b\n" + ROOM + "room 1 as bath mirrored\n",
    "catalogue.room": CATALOGUE,
}
EDITS = (
    ("a.room", "wall a 3010", "wall a 3110"),
    ("a.room", "rooms 1 to 3 as bath", "rooms 1 to 3 as bath mirrored"),
    ("a.room", "pattern bath", "panel long\n  length 2000\n  cover 200\n  thick 10\n  lay vertical\n\npattern bath"),
    ("a.room", 'use "catalogue.room"', 'use "nowhere.room"'),
    ("b.room", "by glued", "by glued-twice"),
    ("b.room", "room 1 as bath", "room 1 as bath\n  finish long by glued vertical start balanced"),
    ("catalogue.room", "31.50", "32.50"),
    ("catalogue.room", "cover 250", "cover 240"),
    ("catalogue.room", "bead 8", "bead 9"),
    ("catalogue.room", "panel long", "# moved down\n\npanel long"),
    ("catalogue.room", "method glued", "method glued-twice\n  glue grab bead 12 every 200\n\nmethod glued"),
)


def seen(session: Session, files: dict[str, str]) -> list[tuple[tuple[Found, ...], Estimate]]:
    """What is found in each job, and what it comes to."""
    session.world = MemoryWorld(files, TODAY)
    jobs = [session.snapshot(path) for path in ("a.room", "b.room")]
    return [(job.findings, job.estimate().priced) for job in jobs if job is not None]


@given(st.lists(st.sampled_from(EDITS), min_size=1, max_size=6))
@settings(max_examples=25, deadline=None)
def test_two_jobs_that_share_a_catalogue_do_not_touch_each_other(edits: list[tuple[str, str, str]]) -> None:
    """Each edit is made, or taken back where it was made before."""
    session, made = Session(MemoryWorld({}, TODAY)), set[tuple[str, str, str]]()
    first = seen(session, FILES)
    for edit in edits:
        made ^= {edit}
        files = dict(FILES)
        for path, old, new in sorted(made):
            files[path] = files[path].replace(old, new, 1)
        found = seen(session, files)
        assert found == seen(Session(MemoryWorld({}, TODAY)), files)
        for at, path in enumerate(("a.room", "b.room")):
            if files[path] == FILES[path] and files["catalogue.room"] == CATALOGUE:
                assert found[at] == first[at]
