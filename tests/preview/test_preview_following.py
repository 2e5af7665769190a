"""The job of a preview through its changes: what is drawn, what is kept, what is estimated, who is told."""

import asyncio
import re
from collections.abc import Awaitable, Callable
from pathlib import Path

from two_rooms import CATALOGUE, JOB, ROOMS

from roomspec.cli.preview_follow import MOST_OPENED, Follower
from roomspec.cli.preview_job import PreviewJob, Shown

KEPT = "As it was last drawn"


def drawings(shown: Shown, room: int = 0) -> list[str]:
    """The names of a room's pictures."""
    return re.findall(r'src="picture/(\w+)', shown.rooms[room].html)


def with_text(path: str, text: str, old: str, new: str) -> dict[str, bytes]:
    """One file as an editor might have it."""
    assert old in text
    return {path: text.replace(old, new).encode()}


def test_a_room_with_a_mistake_keeps_its_last_good_drawings(job: PreviewJob) -> None:
    """The other room follows; mended, it is drawn anew; typed words win over the disk's."""
    good = job.read({})
    text = ROOMS.replace("wall a 2000", "wall a 2500")
    broken = job.read(with_text("rooms.room", text, "wall a 3000", "wall a 3o00"))
    assert (broken.late, broken.rooms[0].old, broken.rooms[1].old) == (True, True, False)
    assert "3o00" in broken.pieces[0].html
    assert drawings(broken) == drawings(good)
    assert KEPT in broken.rooms[0].html
    assert drawings(broken, 1) != drawings(good, 1)
    assert set(drawings(broken)) <= set(broken.pictures)
    mended = job.read({"rooms.room": ROOMS.encode()})
    assert (mended.rooms, mended.late) == (good.rooms, False)


def test_a_mistake_in_the_catalogue_keeps_the_rooms_that_use_it(job: PreviewJob) -> None:
    """A panel's cover, the method's heading, the adhesive that the method names; a room without them follows."""
    good = job.read({})
    for old, new in (("cover 250", "cover 2s0"), ("method glued", "methd glued"), ("adhesive grab", "adhesiv grab")):
        now = job.read(with_text("catalogue.room", CATALOGUE, old, new))
        assert drawings(now) == drawings(good), old
        assert (now.rooms[0].old, now.rooms[1].old) == (True, False), old
    assert job.read({}).rooms == good.rooms


def test_a_room_whose_heading_cannot_be_read_stays_in_its_place(job: PreviewJob) -> None:
    """The first of two rooms; and all of them where the job's `use` cannot be read."""
    good = job.read({})
    for path, text, old, new in (
        ("rooms.room", ROOMS, 'room 1 "Store"', 'rom 1 "Store"'),
        ("job.room", JOB, 'use "rooms.room"', 'us "rooms.room"'),
    ):
        now = job.read(with_text(path, text, old, new))
        assert [room.told for room in now.rooms] == ["1 Store", "2 Hall"]
        assert now.rooms[0].old
        assert drawings(now) == drawings(good)


def test_a_room_that_is_taken_out_is_gone(job: PreviewJob) -> None:
    """Nothing is wrong with the text, so nothing is kept."""
    job.read({})
    now = job.read({"rooms.room": ROOMS[: ROOMS.index("room 2")].encode()})
    assert [room.told for room in now.rooms] == ["1 Store"]


def test_a_job_that_is_gone_leaves_what_was_shown(job: PreviewJob) -> None:
    """Empty, no text, or without its job line; back again, all is well."""
    good = job.read({})
    for text in (b"", b"\xff\xfe\x00", b"room 9\n"):
        now = job.read({"job.room": text})
        assert (now.late, now.holds) == (True, False)
        assert [drawings(now, at) for at in (0, 1)] == [drawings(good, at) for at in (0, 1)]
        assert all(room.old for room in now.rooms)
    (job.root / "job.room").unlink()
    assert "cannot be read" in job.read({}).state
    (job.root / "job.room").write_text(JOB, encoding="utf-8")
    assert job.read({}).rooms == good.rooms


def test_a_change_is_seen_where_something_depends_on_it(job: PreviewJob, root: Path) -> None:
    """A file that is read, one that a `use` finds, the settings; not a file of another job."""
    job.read({})
    assert not job.changed()
    (root / "other.room").write_text("room 9\n", encoding="utf-8")
    assert not job.changed()
    (root / "rooms.room").write_text(ROOMS + "\n", encoding="utf-8")
    assert job.changed()
    job.read({})
    (root / "roomspec.toml").write_text("[checks]\n", encoding="utf-8")
    assert job.changed()
    job.read({})
    (root / "catalogue.room").unlink()
    assert job.changed()


def followed(job: PreviewJob, watch: Callable[[Follower], Awaitable[None]]) -> None:
    """Run a follower while it is watched."""

    async def run() -> None:
        follower = Follower(job)
        following = asyncio.create_task(follower.follow())
        await watch(follower)
        following.cancel()

    asyncio.run(asyncio.wait_for(run(), 120))


async def until(follower: Follower, holds: Callable[[], bool]) -> None:
    """Wait until something holds of what is shown."""
    while follower.shown is None or not holds():
        await follower.next(follower.version, 0.2)


def told(follower: Follower, name: str, since: int | None = None) -> str:
    """What stands beside the heading of a piece."""
    pieces = follower.page(since)["pieces"]
    assert isinstance(pieces, list)
    return next(str(piece["told"]) for piece in pieces if piece["name"] == name)


def test_drawings_and_findings_come_before_the_estimate(job: PreviewJob) -> None:
    """Cutting holds up nothing; then order and price come, and what changed is nothing yet."""

    async def watch(follower: Follower) -> None:
        await follower.next(0, 60)
        assert follower.shown is not None
        assert follower.costing
        assert told(follower, "price") == "estimating ..."
        await until(follower, lambda: not follower.costing)
        assert told(follower, "price").endswith("without")
        assert told(follower, "order") == "2 items, 471.00 EUR"  # 12 panels at 31.50, 15 tubes at 6.20
        assert told(follower, "changes") == "nothing"

    followed(job, watch)


def test_what_is_superseded_is_dropped(job: PreviewJob) -> None:
    """Two changes, one after the other, give the figures of the second alone; each page has its own beginning."""

    async def watch(follower: Follower) -> None:
        await until(follower, lambda: follower.last == 1)
        follower.feed({"rooms.room": ROOMS.replace("wall a 3000", "wall a 9000")})
        await until(follower, lambda: "9000" in str(follower.page(None)["rooms"]))
        follower.feed({"rooms.room": ROOMS.replace("wall a 3000", "wall a 3500")})
        await until(follower, lambda: follower.last == 2)
        nets = {number: side.out.price.net for number, side in follower.costs.items()}
        assert nets.keys() == {1, 2}
        assert nets[1] < nets[2] < 2 * nets[1]
        assert told(follower, "changes", 1).endswith("1 room")
        assert told(follower, "changes", 2) == "nothing"

    followed(job, watch)


def test_what_open_pages_began_with_is_kept(job: PreviewJob) -> None:
    """However many estimates come after it; those that no page asks for are let go."""

    async def watch(follower: Follower) -> None:
        await until(follower, lambda: follower.last == 1)
        first = follower.costs[1]
        for number in range(2, 3 * MOST_OPENED):
            follower.add(first)
            follower.page(1)
            assert 1 in follower.costs, number
        assert len(follower.costs) == MOST_OPENED
        assert told(follower, "changes", 2) == "nothing"

    followed(job, watch)


def test_a_fault_of_ours_ends_nothing(job: PreviewJob, monkeypatch) -> None:
    """It is said on the page, which lives on with the next change."""

    async def watch(follower: Follower) -> None:
        await until(follower, lambda: follower.last == 1)
        with monkeypatch.context() as broken:
            broken.setattr(PreviewJob, "read", lambda *_: 1 // 0)
            follower.feed({"rooms.room": ROOMS})
            await until(follower, lambda: "a fault of roomspec itself" in str(follower.page(None)["state"]))
        follower.feed({"rooms.room": ROOMS})
        await until(follower, lambda: follower.page(None)["state"] == "No errors.")

    followed(job, watch)


def test_a_save_is_seen_on_disk(job: PreviewJob, root: Path) -> None:
    """Without anybody feeding."""

    async def watch(follower: Follower) -> None:
        await until(follower, lambda: True)
        (root / "rooms.room").write_text(ROOMS.replace("3000", "3333"), encoding="utf-8")
        await until(follower, lambda: "3333" in str(follower.page(None)["rooms"]))

    followed(job, watch)
