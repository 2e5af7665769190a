"""An edit redoes what it touches and no more; results are what a fresh run gives."""

from collections.abc import Callable
from typing import Any

from read_job import CATALOGUE, compiled

from roomspec.compile.job import Compiled
from roomspec.compile.methods import make_gang, make_method
from roomspec.compile.products import make_product
from roomspec.compile.readers import read
from roomspec.compile.rooms import make_room
from roomspec.compile.terms import make_terms

STAGES: dict[str, Callable[..., Any]] = {
    "statement": read,
    "product": make_product,
    "method": make_method,
    "gang": make_gang,
    "room": make_room,
    "terms": make_terms,
}
ROOMS = "".join(
    f"room {name}\n  height 2400\n  finish {panel} by glued {way}\n  wall a {width}\n  wall b 2000\n"
    for name, panel, way, width in (
        ("x1", "lime", "vertical", 3111),
        ("x2", "lime", "vertical", 3112),
        ("x3", "oak", "horizontal", 3113),
    )
)
JOB = "job again\n  tax 19.77 %\n  labour g\ngang g\n  rate 61.77 per h\n" + ROOMS + CATALOGUE


def made_by(before: str, after: str) -> tuple[dict[str, int], Compiled, Compiled]:
    """How often each stage ran for the second text after the first, and both results."""
    first = compiled(before)
    counts = {name: stage.cache_info().misses for name, stage in STAGES.items()}  # type: ignore[attr-defined]
    second = compiled(after)
    ran = {name: stage.cache_info().misses - counts[name] for name, stage in STAGES.items()}  # type: ignore[attr-defined]
    return {name: count for name, count in ran.items() if count}, first, second


def test_the_same_text_again_runs_nothing() -> None:
    """And gives the same values."""
    ran, first, second = made_by(JOB, JOB)
    assert ran == {}
    assert first == second
    assert all(one is two for one, two in zip(first.job.rooms, second.job.rooms, strict=True))


def test_an_edited_wall_makes_its_room_again_from_one_statement() -> None:
    """The other rooms are the same objects."""
    ran, first, second = made_by(JOB, JOB.replace("wall a 3112", "wall a 3212"))
    assert ran == {"statement": 1, "room": 1}
    assert [one is two for one, two in zip(first.job.rooms, second.job.rooms, strict=True)] == [True, False, True]


def test_lines_put_in_above_make_nothing_again() -> None:
    """Places are relative to their blocks."""
    ran, first, second = made_by(JOB, "# a word\n\n" + JOB)
    assert ran == {}
    assert first.origins == second.origins


def test_a_changed_product_makes_the_rooms_that_name_it() -> None:
    """And no other; the method that does not name it stays."""
    ran, first, second = made_by(JOB, JOB.replace("cover 250", "cover 251"))
    assert ran == {"statement": 1, "product": 1, "room": 2}
    assert [one is two for one, two in zip(first.job.rooms, second.job.rooms, strict=True)] == [False, False, True]


def test_a_changed_method_makes_the_rooms_that_name_it() -> None:
    """All three, here."""
    ran, _, _ = made_by(JOB, JOB.replace("method glued", "method glued\n  scribe 11.77"))
    assert ran == {"statement": 1, "method": 1, "room": 3}


def test_changed_terms_make_no_room() -> None:
    """Nor does a gang's rate."""
    ran, _, second = made_by(JOB, JOB.replace("tax 19.77", "tax 18.77").replace("61.77", "62.77"))
    assert ran == {"statement": 2, "terms": 1, "gang": 1}
    assert str(second.job.terms.tax) == "18.77"


def test_a_changed_pattern_makes_its_rooms_and_no_other() -> None:
    """One making for each heading that names it, however many rooms it stands for."""
    text = "job j\nrooms 1 to 50 as p1\nrooms 51 to 99 as p1 mirrored\nroom 100 as p2\n"
    text += "pattern p1\n  height 2411\n  wall a 3000\n  wall b 2000\npattern p2\n  height 2412\n  wall a 3000\n"
    ran, _, second = made_by(text, text.replace("2411", "2413"))
    assert ran == {"statement": 1, "room": 2}
    assert len(second.job.rooms) == 100


def test_units_of_a_file_are_part_of_what_is_read() -> None:
    """The same words in inches are other values."""
    text = "job j\nroom r\n  height 97\n  wall a 121\n"
    millimetres, inches = compiled(text), compiled("units in\n" + text)
    assert inches.job.rooms[0].walls[0].width * 10 == millimetres.job.rooms[0].walls[0].width * 254
