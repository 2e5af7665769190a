"""The live preview in Debian's chromium: it follows its files, and fetches nothing from anywhere else."""

import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Literal

import pytest
from playwright.sync_api import ConsoleMessage, Page, Request, sync_playwright

SAMPLE = Path(__file__).parents[2] / "samples" / "kestrel-house"
QUIET = (
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync",
)  # fmt: skip
LIMIT = 60_000
"""Milliseconds that a change may take on a busy machine."""


class Shown:
    """A preview of a copy of the sample, open in the browser."""

    def __init__(self, folder: Path, page: Page) -> None:
        """`folder` holds the job."""
        self.folder, self.page = folder, page
        self.said: list[str] = []
        self.asked: list[str] = []
        page.on("console", self._said)
        page.on("request", self._asked)

    def replace(self, file: str, old: str, new: str) -> None:
        """Save a file with other words in it."""
        path = self.folder / file
        text = path.read_text(encoding="utf-8")
        assert old in text
        path.write_text(text.replace(old, new), encoding="utf-8")

    def has(self, selector: str, text: str) -> None:
        """Wait until an element holds the text."""
        self.page.locator(selector).filter(has_text=text).first.wait_for(state="attached", timeout=LIMIT)

    def pictures(self) -> list[str]:
        """The names of all drawings."""
        return [str(one.get_attribute("src")) for one in self.page.locator("#rooms img").all()]

    def _said(self, message: ConsoleMessage) -> None:
        self.said.append(message.text)

    def _asked(self, request: Request) -> None:
        self.asked.append(request.url)


@pytest.fixture
def shown(tmp_path: Path) -> Iterator[Shown]:
    """Start `roomspec preview` and a browser."""
    folder = tmp_path / "job"
    shutil.copytree(SAMPLE, folder)
    command = [sys.executable, "-m", "roomspec", "preview", str(folder)]
    with (
        subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as process,
        sync_playwright() as play,
    ):
        assert process.stdout is not None
        address = process.stdout.readline().strip()
        browser = play.chromium.launch(executable_path="/usr/bin/chromium", args=list(QUIET))
        try:
            one = Shown(folder, browser.new_page(viewport={"width": 1200, "height": 800}))
            one.page.goto(address)
            one.has("#price", "Total")
            yield one
            origin = address.split("/", 3)
            assert all(url.startswith(("/".join(origin[:3]), "data:")) for url in one.asked)
            assert one.said == []
        finally:
            browser.close()
            process.terminate()


def test_a_save_changes_one_drawing_the_price_and_what_changed(shown: Shown) -> None:
    """All other drawings stay the very same."""
    before = shown.pictures()
    shown.replace("rooms/1-first.room", "wall a 2004", "wall a 2504")
    other = "was => [...document.querySelectorAll('#rooms img')].some(one => !was.includes(one.getAttribute('src')))"
    shown.page.wait_for_function(other, arg=before, timeout=LIMIT)
    assert len(set(shown.pictures()) - set(before)) == 2
    shown.has("#changes", "1.01")
    shown.has("#changes", "Price")


def test_the_reader_stays_where_the_reader_is(shown: Shown) -> None:
    """What is opened stays open, what has focus keeps it, and what is seen does not move."""
    face = shown.page.locator("section[id^=room-2] .face").first
    face.locator("summary").click()
    name = str(face.get_attribute("id"))
    shown.page.evaluate("name => document.getElementById(name).scrollIntoView()", name)
    before = shown.page.evaluate("name => document.getElementById(name).getBoundingClientRect().top", name)
    shown.replace("rooms/0-ground.room", "height   2400", "height   2,4 m")
    shown.has("#findings", "decimal comma")
    after = shown.page.evaluate("name => document.getElementById(name).getBoundingClientRect().top", name)
    assert abs(after - before) < 2
    assert shown.page.evaluate("name => document.getElementById(name).open", name)
    assert shown.page.evaluate("name => document.getElementById(name).contains(document.activeElement)", name)


def test_a_broken_file_keeps_the_last_good_drawings(shown: Shown) -> None:
    """The finding shows; the rooms of the file say that they are drawn as before; mended, they no longer do."""
    before = shown.pictures()
    shown.replace("rooms/1-first.room", "wall a 2004", "wall a 2o04")
    shown.has("#findings", "2o04")
    shown.has("#rooms", "As it was last drawn")
    assert shown.pictures() == before
    shown.replace("rooms/1-first.room", "wall a 2o04", "wall a 2004")
    shown.page.wait_for_function("() => !document.querySelector('#rooms .note')", timeout=LIMIT)
    assert shown.pictures() == before


def test_a_job_that_goes_and_comes_again(shown: Shown) -> None:
    """Without its file the page keeps what it showed last."""
    before = shown.pictures()
    job = shown.folder / "kestrel-house.room"
    text = job.read_bytes()
    job.unlink()
    shown.has("#state", "cannot be read")
    assert shown.pictures() == before
    job.write_bytes(text)
    shown.has("#state", "No errors.")


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_serious(shown: Shown, scheme: Literal["light", "dark"]) -> None:
    """axe-core 4, put below ROOMSPEC_NODE by npm: nothing serious or critical, with findings and changes shown."""
    shown.replace("rooms/1-first.room", "wall a 2004", "wall a 2504")
    shown.has("#changes", "Price")
    shown.page.evaluate("() => document.querySelectorAll('details').forEach(one => { one.open = true; })")
    shown.page.emulate_media(color_scheme=scheme)
    shown.page.evaluate(
        Path(os.environ["ROOMSPEC_NODE"], "node_modules/axe-core/axe.min.js").read_text(encoding="utf-8")
    )
    found = shown.page.evaluate("() => axe.run()")
    serious = [one for one in found["violations"] if one["impact"] in ("serious", "critical")]
    assert not serious, [(one["id"], [node["html"] for node in one["nodes"]][:3]) for one in serious]


def test_a_room_called_script_is_a_room_called_script(shown: Shown) -> None:
    """Names and texts are text."""
    shown.replace("rooms/1-first.room", "Heron: bed wall", "<script>alert(1)</script><img src=x onerror=alert(2)>")
    shown.has("#rooms h2", "<script>alert(1)</script><img src=x")
    assert shown.page.locator("#rooms script").count() == 0
