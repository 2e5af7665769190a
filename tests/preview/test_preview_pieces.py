"""What stands on the page: values, places, and every text of a file as text."""

from pathlib import Path

from read_pieces import read
from two_rooms import CATALOGUE, JOB, ROOMS

from roomspec.analysis.session import Session
from roomspec.analysis.world import MemoryWorld
from roomspec.cli.preview_job import PreviewJob
from roomspec.files.disk import DiskWorld
from roomspec.reports.comparison.side import Side, side_of
from roomspec.reports.preview.cost import cost_pieces, waiting_pieces
from roomspec.reports.preview.shell import shell

SAMPLES = Path(__file__).parents[2] / "samples"
EVIL = "<script>alert(1)</script><img src=x onerror=alert(2)>&amp;'"


def side(**files: str) -> Side:
    """The estimate of the job with some of its files in other words."""
    texts = {"job.room": JOB, "rooms.room": ROOMS, "catalogue.room": CATALOGUE}
    texts |= {f"{name}.room": text for name, text in files.items()}
    snapshot = Session(MemoryWorld(texts, DiskWorld(SAMPLES).today())).snapshot("job.room")
    assert snapshot is not None
    return side_of(snapshot, "now")


def test_each_wall_leads_to_its_text(job: PreviewJob) -> None:
    """File and line, the lines themselves, and a picture of the wall with its name for those who cannot see it."""
    shown = job.read({})
    page = read(shown.rooms[0].html)
    faces = [dict(attributes) for tag, attributes in page.tags if tag == "details"]
    assert len(faces) == len({face["id"] for face in faces}) == 2
    assert [a["data-text"] for t, a in page.tags if a.get("class") == "copy"] == ["rooms.room:1", "rooms.room:5"]
    (own,) = [text for text in page.texts if "wall a 3000" in text and "room 1" not in text]
    assert own == "  wall a 3000\n    finish board by glued vertical"
    assert [a["alt"] for t, a in page.tags if t == "img"] == ["Plan: 1 Store, plan", "Elevation: 1 Store, wall a"]


def test_findings_stand_with_their_line_and_beside_their_room(job: PreviewJob) -> None:
    """The worst first."""
    shown = job.read({"rooms.room": ROOMS.replace("wall a 2000", "wall a 2o00").encode()})
    listed = read(shown.pieces[0].html)
    assert next(a["class"] for t, a in listed.tags if t == "li") == "error"
    assert "wall a 2o00" in listed.texts
    assert shown.pieces[0].told.startswith("1 error")
    assert "2o00" in shown.rooms[1].html
    assert "2o00" not in shown.rooms[0].html


def test_every_text_of_a_file_is_text(job: PreviewJob) -> None:
    """A room, a panel, a job, a note, a file's own line that say `<script>`."""
    title = EVIL.replace('"', "")
    rooms = ROOMS.replace("Store", title).replace("wall a 2000", f"wall a {title}")
    catalogue, text = CATALOGUE.replace('"Board"', f'"{title}"'), JOB.replace("Job <b>", title)
    shown = job.read({"rooms.room": rooms.encode(), "catalogue.room": catalogue.encode(), "job.room": text.encode()})
    now = side(rooms=rooms.replace(f"wall a {title}", "wall a 2000"), catalogue=catalogue, job=text)
    pieces = (*shown.pieces, *shown.rooms, *cost_pieces(side(), now, False))
    for html in (shell(shown.title, False), *(part for piece in pieces for part in (piece.html, piece.told))):
        page = read(html)
        assert not [tag for tag, a in page.tags if tag == "script" and "src" not in a]
        assert not [a for _, a in page.tags if a.get("src") == "x" or any(key.startswith("on") for key in a)]
        assert not page.faults
    assert any("<script>alert(1)</script>" in one for one in read("".join(room.told for room in shown.rooms)).texts)
    assert all("<script" not in svg for svg in shown.pictures.values())


def test_order_and_price_say_what_the_estimate_says() -> None:
    """The same figures, in a line and in full."""
    now = side()
    changes, price, order = cost_pieces(now, now, False)
    assert (changes.told, changes.old) == ("nothing", False)
    assert price.told == f"{now.out.price.total} EUR with tax, {now.out.price.net} without"
    assert read(order.html).rows[1][:7] == ["Board", "12 panels", "12, proven", "12", "31.50 each", "378.00", "8.3 %"]
    assert read(price.html).rows[-1][0] == "Total"
    assert str(now.out.price.total) in read(price.html).rows[-1]


def test_what_has_changed_is_told_with_its_price() -> None:
    """Half a metre more: two panels."""
    first, now = side(), side(rooms=ROOMS.replace("wall a 3000", "wall a 3500"))
    changes, *_ = cost_pieces(first, now, True)
    difference = now.out.price.total - first.out.price.total
    assert changes.told == f"+{difference} EUR, 1 room"
    assert changes.old
    assert ["wall a: width", "3000", "3500"] in read(changes.html).rows
    back = cost_pieces(now, first, False)[0]
    assert back.told == f"-{difference} EUR, 1 room"


def test_figures_of_a_job_with_mistakes_say_so() -> None:
    """Nobody takes them for the price."""
    now = side(rooms=ROOMS.replace("wall a 3000", "wall a 3o00"))
    for piece in cost_pieces(now, now, False)[1:]:
        assert "The job has 1 error" in piece.html
    assert all("estimating" in piece.told for piece in waiting_pieces("estimating ..."))


def test_a_job_of_another_currency_has_no_difference() -> None:
    """Two currencies are not taken from one another."""
    changes = cost_pieces(side(), side(job=JOB.replace("EUR", "USD")), False)[0]
    assert changes.told == "another currency"


def test_rooms_that_are_alike_are_drawn_once() -> None:
    """120 rooms from four patterns, two with a wall of their own: the page says which room stands for which."""
    shown = PreviewJob(SAMPLES.parent, "samples/harbour-hotel/harbour-hotel.room").read({})
    assert len(shown.rooms) < 20
    assert "Drawn for" in shown.rooms[0].html
    assert read(shown.pieces[1].html).tags.count(("li", {})) == len(shown.rooms)


def test_the_same_job_gives_the_same_page(root: Path) -> None:
    """To the letter, in two programs."""
    assert PreviewJob(root, "job.room").read({}) == PreviewJob(root, "job.room").read({})
