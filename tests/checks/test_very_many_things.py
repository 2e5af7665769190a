"""What is written on one wall more often than any survey has it is asked all the same."""

from datetime import date

from roomspec.analysis.session import Session
from roomspec.analysis.world import MemoryWorld

COUNT = 600


def said(name: str, *lines: str) -> int:
    """How many findings of a name stand for a long wall with the lines; those beyond the first 20 are one finding."""
    text = "\n".join(["job test", 'room 1 "Hall"', "  height 2400", f"  wall a {COUNT * 100}", *lines])
    snapshot = Session(MemoryWorld({"job.room": text}, date(2026, 11, 25))).snapshot("job.room")
    assert snapshot is not None
    found = [one for one in snapshot.findings if one.name == name]
    more = [int(one.message.split()[1]) for one in found if one.message.startswith("and ")]
    return len(found) - len(more) + sum(more)


def test_every_unit_in_a_doorway_is_told_among_hundreds() -> None:
    """Each unit stands in its own door; a tray may."""
    lines = [f"door 90 x 2040 at {at * 100}\n units 60 x 900 at {at * 100 + 5}" for at in range(COUNT)]
    trays = [f"door 90 x 2040 at {at * 100}\n tray 60 x 50 at {at * 100 + 5}" for at in range(COUNT)]
    assert said("obstacles-overlap", *lines) == COUNT
    assert said("obstacles-overlap", *trays) == 0


def test_baths_that_lie_over_one_another_are_told_among_hundreds() -> None:
    """Each lies over the one before it; side by side none does."""
    assert said("obstacles-overlap", *(f"bath 101 x 560 at {at * 100}" for at in range(COUNT - 1))) == COUNT - 2
    assert said("obstacles-overlap", *(f"bath 100 x 560 at {at * 100}" for at in range(COUNT))) == 0


def test_boxes_across_openings_are_told_among_hundreds() -> None:
    """A box cuts each window; a window wholly in a box's front is left alone."""
    windows = [f"window 60 x 900 at {at * 100} sill 1000" for at in range(COUNT)]
    cut = [f"boxing 10 x 2400 at {at * 100 + 30} deep 200" for at in range(COUNT)]
    around = [f"boxing 70 x 2400 at {at * 100} deep 200" for at in range(COUNT)]
    assert said("boxes-overlap", *windows, *cut) == COUNT
    assert said("boxes-overlap", *windows, *around) == 0
