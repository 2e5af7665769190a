"""What is made again after an edit, and that any sequence of edits gives what a fresh session gives."""

import datetime

import pytest
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule

from roomspec.analysis.found import Found
from roomspec.analysis.session import Session
from roomspec.analysis.world import MemoryWorld

TODAY = datetime.date(2026, 11, 25)
JOB = """\
job one "One"
  use "catalogue.room"
  use "rooms.room"
  date 2026-11-25
  narrowest 60
"""
CATALOGUE = """\
panel long "Long"
  length 2600
  cover 250
  thick 10
  weighs 5.5 kg/m2
  price 31.50 each

panel short "Short"
  length 900
  cover 250
  thick 10
  weighs 5.5 kg/m2
  lay horizontal
  price 11.80 each

trim rim
  role edge
  fits 10
  length 2600
  price 9.40 each

adhesive grab
  tube 290 ml
  price 6.20 each

method glued
  glue grab bead 8 every 300

method trimmed
  glue grab bead 8 every 300
  edge rim
"""
ROOMS = """\
# Two rooms of long panels, one of short ones.
room 1 "Store"
  height 2400
  surface sound
  finish long by glued vertical
  wall a 3010
    on plaster
    door 826 x 2040 at 900
  wall b 2000

room 2 "Hall"
  height 2400
  surface sound
  finish long by trimmed vertical
  wall a 3000
    on plaster

room 3 "Bar"
  height 2400
  on plaster
  surface sound
  finish short by glued horizontal
  wall a 2700
"""
FILES = {"job.room": JOB, "catalogue.room": CATALOGUE, "rooms.room": ROOMS}
IN_A_ROW = {"stretch", "compile", "judge", "say of rooms"}
"""Stages that look at some rooms in a row, and find those that are as they were."""
WHERE = {"place", "place rooms", "stand", "join"}
"""Stages that ask where in the files things stand."""


def findings(session: Session, files: dict[str, str]) -> tuple[Found, ...]:
    """What is found in the files as they are now."""
    session.world = MemoryWorld(files, TODAY)
    snapshot = session.snapshot("job.room")
    assert snapshot is not None
    return snapshot.findings


def after(old: str, new: str, file: str) -> tuple[set[tuple[str, str]], tuple[Found, ...], tuple[Found, ...]]:
    """What was made again when `old` became `new` in a file, and the findings before and after."""
    session = Session(MemoryWorld(FILES, TODAY))
    before = findings(session, FILES)
    assert FILES[file].count(old) == 1
    session.memo.ran.clear()
    now = findings(session, FILES | {file: FILES[file].replace(old, new)})
    assert now == findings(Session(MemoryWorld({}, TODAY)), FILES | {file: FILES[file].replace(old, new)})
    return set(session.memo.ran), before, now


def alone(ran: set[tuple[str, str]]) -> set[str]:
    """What was made again of things by themselves."""
    return {label for stage, label in ran if stage not in IN_A_ROW | WHERE}


def test_everything_is_made_once() -> None:
    """Each room is checked once; a second look makes nothing."""
    session = Session(MemoryWorld(FILES, TODAY))
    findings(session, FILES)
    assert sorted(label for stage, label in session.memo.ran if stage == "check") == ["room 1", "room 2", "room 3"]
    session.memo.ran.clear()
    findings(session, FILES)
    assert not session.memo.ran


def test_an_edited_wall_checks_its_room_only() -> None:
    """Its plan, its runs and its checks."""
    ran, _, _ = after("wall a 3010", "wall a 3020", "rooms.room")
    assert alone(ran) == {"1", "room 1"}
    assert ("check", "room 1") in ran
    assert ("runs", "1") in ran


def test_an_edited_door_leaves_other_rooms() -> None:
    """An opening is of its wall."""
    ran, _, _ = after("at 900", "at 100", "rooms.room")
    assert alone(ran) == {"1", "room 1"}


@pytest.mark.parametrize(
    ("old", "new", "rooms"),
    [
        ('panel long "Long"\n  length 2600', 'panel long "Long"\n  length 2500', {"room 1", "room 2"}),
        ('panel short "Short"\n  length 900', 'panel short "Short"\n  length 910', {"room 3"}),
        ("  edge rim", "  edge rim\n  gap 5 at floor", {"room 2"}),
        ("  fits 10", "  fits 9", {"room 2"}),
        ("method glued\n  glue grab bead 8", "method glued\n  glue grab bead 9", {"room 1", "room 3"}),
    ],
)
def test_an_edited_entry_checks_the_rooms_that_use_it(old: str, new: str, rooms: set[str]) -> None:
    """A panel, a method, and a trim that a method names; no other room."""
    ran, _, _ = after(old, new, "catalogue.room")
    assert {label for stage, label in ran if stage == "check"} == rooms


def test_an_edited_price_leaves_the_methods() -> None:
    """The rooms that the panel lines are checked again, and their methods' other rooms are not."""
    ran, _, _ = after("price 31.50 each", "price 32.00 each", "catalogue.room")
    assert {label for stage, label in ran if stage == "check"} == {"room 1", "room 2"}


def test_terms_check_all() -> None:
    """The narrowest strip is read by the checks of every room."""
    ran, _, _ = after("narrowest 60", "narrowest 80", "job.room")
    assert {label for stage, label in ran if stage == "check"} >= {"room 1", "room 2", "room 3"}
    assert not any(stage in ("plan", "runs") for stage, _ in ran)


@pytest.mark.parametrize(
    ("old", "new", "file", "moves"),
    [
        ("# Two rooms", "# Measured twice.\n\n# Two rooms", "rooms.room", {"rooms.room": 2}),
        ("panel long", "\n\n\npanel long", "catalogue.room", {"catalogue.room": 3}),
        ('room 1 "Store"', '\n  # a remark\nroom 1 "Store"', "rooms.room", {"rooms.room": 2}),
    ],
)
def test_blank_lines_and_comments_between_blocks_move_findings_and_nothing_else(
    old: str, new: str, file: str, moves: dict[str, int]
) -> None:
    """Places are counted from their block: only what is shown of them is made again."""
    ran, before, now = after(old, new, file)
    assert "place" in {stage for stage, _ in ran} <= WHERE
    assert [(f.name, f.message, f.place.path, f.place.line + moves.get(f.place.path, 0)) for f in before] == [
        (f.name, f.message, f.place.path, f.place.line) for f in now
    ]
    assert {found.place.path for found in before} & set(moves) or moves.keys() == {"catalogue.room"}


def test_a_comment_at_the_end_of_a_line_makes_nothing_of_the_model_again() -> None:
    """The room is read again, and is the same: neither plan nor runs are made."""
    ran, before, now = after("wall b 2000", "wall b 2000  # behind the boiler", "rooms.room")
    assert {stage for stage, _ in ran} <= {"room", "check", "wave off", "say"} | IN_A_ROW | WHERE
    assert alone(ran) <= {"room 1"}
    assert before == now


def test_a_renamed_room_is_laid_as_before() -> None:
    """Its name is no part of its plan."""
    ran, _, _ = after("room 2 ", "room 22 ", "rooms.room")
    assert alone(ran) == {"room 22"}


def test_an_edit_leaves_the_other_stretches_of_rooms() -> None:
    """Of 100 rooms in two files an edited wall has the rooms beside it looked at, and joins one file's findings."""
    rooms = [
        f"room {n}\n  height 2400\n  surface sound\n  finish long by glued vertical\n  wall a 30{n}\n"
        for n in range(10, 99)
    ]
    files = {
        **FILES,
        "job.room": JOB.replace("rooms.room", "*.room"),
        "more.room": "".join(rooms).replace("room ", "room m"),
    }
    files["rooms.room"] = "".join(rooms)
    session = Session(MemoryWorld(files, TODAY))
    findings(session, files)
    session.memo.ran.clear()
    changed = files | {"rooms.room": files["rooms.room"].replace("wall a 3060", "wall a 3061")}
    now = findings(session, changed)
    ran = sorted((stage, label) for stage, label in session.memo.ran if stage in IN_A_ROW | {"join"})
    assert ran == [
        ("compile", "rooms from 42"), ("join", "rooms.room"), ("judge", "rooms from 42"),
        ("say of rooms", "rooms from 42"), ("stretch", "rooms from 42"),
    ]  # fmt: skip
    assert now == findings(Session(MemoryWorld({}, TODAY)), changed)


EDITS = {
    "job.room": (
        "narrowest 60", "narrowest 200", 'use "rooms.room"', 'use "none.room"', "date 2026-11-25",
        'allow narrow-strip because "agreed"',
    ),
    "catalogue.room": (
        "cover 250", "cover 200", "thick 10", "thick 12", "edge rim", "lay horizontal", "weighs 5.5 kg/m2",
        "panel long", "panel other",
    ),
    "rooms.room": (
        "wall a 3000", "wall a 3010", "wall a 2700", "about 3000", "finish long by glued vertical", "height 2400",
        "height 2800", "on tile over plaster", "on plaster", "wet direct", "socket at 500 up 300", "room 1", "room 2",
        "room 2 as 1", "corner outside", "surface loose", "door 826 x 2040 at 900", "@@@", "wall",
    ),
}  # fmt: skip


class Editing(RuleBasedStateMachine):
    """Lines are added, removed, replaced and moved in the three files, in any order."""

    @initialize()
    def begin(self) -> None:
        """The files as they stand above, in a session that lives on."""
        self.files = {path: text.split("\n") for path, text in FILES.items()}
        self.session = Session(MemoryWorld(FILES, TODAY))

    @rule(data=st.data(), path=st.sampled_from(sorted(EDITS)))
    def write(self, data: st.DataObject, path: str) -> None:
        """A line of those that may stand there, or a blank one, anywhere."""
        at = data.draw(st.integers(0, len(self.files[path])))
        line = data.draw(st.sampled_from((*EDITS[path], "", "# a remark")))
        self.files[path].insert(at, data.draw(st.sampled_from(("", "  ", "    "))) + line)

    @rule(data=st.data(), path=st.sampled_from(sorted(EDITS)))
    def remove(self, data: st.DataObject, path: str) -> None:
        """Any line."""
        if self.files[path]:
            del self.files[path][data.draw(st.integers(0, len(self.files[path]) - 1))]

    @rule(data=st.data())
    def number(self, data: st.DataObject) -> None:
        """Another number in a line of a room."""
        lines = self.files["rooms.room"]
        at = data.draw(st.sampled_from(range(len(lines)))) if lines else None
        if at is not None:
            lines[at] = lines[at].replace("00", str(data.draw(st.integers(10, 99))), 1)

    @rule(path=st.sampled_from(sorted(EDITS)))
    def restore(self, path: str) -> None:
        """A file as it was at first, which the session has seen."""
        self.files[path] = FILES[path].split("\n")

    @invariant()
    def a_fresh_session_finds_the_same(self) -> None:
        """After every edit, to the last column."""
        files = {path: "\n".join(lines) for path, lines in self.files.items()}
        assert findings(self.session, files) == findings(Session(MemoryWorld({}, TODAY)), files)


TestEditing = Editing.TestCase
TestEditing.settings = settings(max_examples=15, stateful_step_count=12, deadline=None)
