"""What is handed over, opened in the programs of those who get it: chromium with axe-core, poppler, LibreOffice.

axe-core stands below ROOMSPEC_NODE, where npm has put it.
"""

import json
import os
import re
import shutil
import subprocess
import zipfile
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path
from typing import Literal

import openpyxl
import pytest
from playwright.sync_api import Browser, sync_playwright

from roomspec.__main__ import main

SAMPLE = Path(__file__).parents[2] / "samples" / "kestrel-house"
PAGES = ("quotation.html", "order.html", "fitters.html", "survey.html", "comparison.html")
LONG = {
    "Kestrel House: ground floor": "Wm" * 60,
    "Accessible shower room": "Wm" * 60,
    '"Limestone print, long"': f'"{"x" * 120}"',
    "room g.05": f"room {'W' * 14}",
}
QUIET = (
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync",
)  # fmt: skip
ALWAYS_AGAIN = """\
<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load">
<prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
"""
"""LibreOffice's setting to calculate every workbook anew when it is opened."""


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """All that is handed over of the sample, and its comparison with a revision that has another room height."""
    place = tmp_path_factory.mktemp("handed-over")
    revised = shutil.copytree(SAMPLE, place / "revised")
    (rooms,) = revised.glob("rooms/0-*.room")
    text = rooms.read_text(encoding="utf-8")
    assert "height   2400" in text
    rooms.write_text(text.replace("height   2400", "height   2350", 1), encoding="utf-8")
    out = place / "documents"
    assert main(["hand-over", str(SAMPLE), "-o", str(out)]) == 0
    assert main(["compare", str(SAMPLE), str(revised), "--as", "html", "-o", str(out / "comparison.html")]) == 0
    return out


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    """Debian's chromium."""
    with sync_playwright() as play:
        one = play.chromium.launch(executable_path="/usr/bin/chromium", args=list(QUIET))
        yield one
        one.close()


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("name", PAGES)
def test_a_page_needs_nothing_and_is_for_everyone(
    folder: Path, browser: Browser, name: str, scheme: Literal["light", "dark"]
):
    """It fetches nothing, says nothing on the console, prints, and axe-core finds nothing serious or critical."""
    asked: list[str] = []
    said: list[str] = []
    page = browser.new_page(color_scheme=scheme)
    page.on("request", lambda request: asked.append(request.url))
    page.on("console", lambda message: said.append(message.text))
    address = (folder / name).as_uri()
    page.goto(address)
    assert page.pdf(format="A4", print_background=True).startswith(b"%PDF-")
    assert [url for url in asked if url != address and not url.startswith("data:")] == []
    assert said == []
    page.evaluate(Path(os.environ["ROOMSPEC_NODE"], "node_modules/axe-core/axe.min.js").read_text(encoding="utf-8"))
    found = page.evaluate("() => axe.run()")
    serious = [one for one in found["violations"] if one["impact"] in ("serious", "critical")]
    assert not serious, [(one["id"], [node["html"][:300] for node in one["nodes"]][:3]) for one in serious]
    page.close()


@pytest.mark.parametrize("name", ["quotation", "order", "fitters", "survey"])
def test_every_page_of_a_pdf_is_paper_with_something_on_it(folder: Path, tmp_path: Path, name: str):
    """Rendered by poppler: A4 or, for drawings, A3 (ISO 216), and every page has ink on it, more white than black."""
    file = folder / f"{name}.pdf"
    sizes = re.findall(r"Page +\d+ size: +([\d.]+) x ([\d.]+) pts", told("pdfinfo", "-l", "9999", file))
    assert sizes
    papers = {(210, 297), (297, 420)} if name == "fitters" else {(210, 297)}
    assert {tuple(sorted(round(float(side) / 72 * 25.4) for side in size)) for size in sizes} == papers
    told("pdftoppm", "-r", "30", "-gray", file, tmp_path / "page")
    pictures = sorted(tmp_path.glob("page-*.pgm"))
    assert len(pictures) == len(sizes)
    for picture in pictures:
        grey = picture.read_bytes().split(b"255\n", 1)[1]
        dark = sum(level < 160 for level in grey)
        assert 0.0005 < dark / len(grey) < 0.5, picture


@pytest.mark.parametrize("name", ["quotation", "order", "fitters", "survey"])
def test_no_heading_stands_alone_on_a_page(folder: Path, browser: Browser, tmp_path: Path, name: str):
    """In the PDF, and in the page as chromium prints it: under the last heading of a page something follows."""
    page = browser.new_page()
    page.goto((folder / f"{name}.html").as_uri())
    printed = tmp_path / "printed.pdf"
    page.pdf(path=printed, print_background=True, prefer_css_page_size=True)
    page.close()
    headings = {"Drawings", "Checks to tick", "Sequence of work", "What to cut", "Panels to cut", "Measured quantities"}
    for file in (folder / f"{name}.pdf", printed):
        for number, text in enumerate(told("pdftotext", "-layout", file, "-").split("\f")[:-1], start=1):
            lines = [line.strip() for line in text.splitlines() if line.strip()]
            assert lines[-2] not in headings, (file, number)
            assert not (lines[0].startswith("Drawings") and len(lines) < 6), (file, number)


def test_long_words_stay_on_the_paper(browser: Browser, tmp_path: Path):
    """Titles of 120 letters without a space, a name of broad ones: no word leaves the paper or meets the next."""
    job = shutil.copytree(SAMPLE, tmp_path / "job")
    for file in job.rglob("*.room"):
        text = file.read_text(encoding="utf-8")
        for short, long in LONG.items():
            text = text.replace(short, long)
        file.write_text(text, encoding="utf-8")
    out = tmp_path / "out"
    assert main(["hand-over", str(job), "-o", str(out), "--as", "pdf", "--as", "html"]) == 0
    for name in ("quotation", "order", "survey", "fitters"):
        page = browser.new_page()
        page.goto((out / f"{name}.html").as_uri())
        page.pdf(path=out / f"{name}-printed.pdf", print_background=True, prefer_css_page_size=True)
        page.close()
        for file in (out / f"{name}.pdf", out / f"{name}-printed.pdf"):
            boxes = told("pdftotext", "-bbox", file, "-")
            for width, words in re.findall(r'<page width="([\d.]+)"[^>]*>(.*?)</page>', boxes, re.S):
                assert_apart(file, float(width), words)


def assert_apart(file: Path, width: float, words: str) -> None:
    """No word of the page is in its margins; none on an upright page lies on the next of its line."""
    lines: dict[str, list[tuple[float, float]]] = {}
    for left, line, right in re.findall(r'xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)"', words):
        lines.setdefault(line, []).append((float(left), float(right)))
        assert float(right) < width - 9 / 25.4 * 72, (file.name, right, width)
    for found in lines.values() if width < 600 else ():
        for (_, right), (left, _) in pairwise(sorted(found)):
            assert right < left + 0.5, (file.name, found)


def test_the_pdf_says_the_estimates_total(folder: Path):
    """As text that can be searched and read out, not as a picture."""
    total = json.loads((SAMPLE / "expected/estimate.json").read_text(encoding="utf-8"))["price"]["total"]
    words = told("pdftotext", "-layout", folder / "quotation.pdf", "-")
    assert total in re.sub(r"(?<=\d)[\s\u202f\u00a0](?=\d{3})", "", words)


def test_a_spreadsheet_program_comes_to_the_same_figures(folder: Path, tmp_path: Path):
    """Every formula, its kept value taken away, is calculated by LibreOffice as the estimate has it."""
    file = folder / "estimate.xlsx"
    kept, formulas = (openpyxl.load_workbook(file, data_only=values) for values in (True, False))
    blank = tmp_path / "blank.xlsx"
    with zipfile.ZipFile(file) as old, zipfile.ZipFile(blank, "w") as new:
        for part in old.namelist():
            new.writestr(part, re.sub(rb"(</f>)<v>[^<]*</v>", rb"\1", old.read(part)))
    found = calculated(blank, tmp_path)
    cells = [cell for sheet in formulas for row in sheet for cell in row if cell.data_type == "f"]
    assert len(cells) > 60
    for cell in cells:
        at = cell.parent.title, cell.coordinate
        value, expected = (book[at[0]][at[1]].value for book in (found, kept))
        assert isinstance(value, int | float) and abs(value - expected) < 1e-6, (at, cell.value, value, expected)


def test_another_price_in_the_workbook_is_another_total(folder: Path, tmp_path: Path):
    """The first panel at one more for each: the cost of the material and the total follow."""
    file, changed = folder / "estimate.xlsx", tmp_path / "changed.xlsx"
    before, book = openpyxl.load_workbook(file, data_only=True), openpyxl.load_workbook(file)
    order = book["Order"]
    heads = {cell.value: cell.column for cell in order[3]}
    order.cell(4, heads["Price"]).value += 1
    assert order.cell(4, heads["Per"]).value == "each"
    book.save(changed)
    after = calculated(changed, tmp_path)
    more = before["Order"].cell(4, heads["Ordered"]).value
    old, new = ({row[0].value: row[2].value for row in one["Price"]} for one in (before, after))
    assert new["Material"] == pytest.approx(old["Material"] + more, abs=0.001)
    assert new["Total"] > old["Total"] + more


def calculated(file: Path, place: Path) -> openpyxl.Workbook:
    """The values of a workbook when LibreOffice has calculated it."""
    profile = place / "profile"
    (profile / "user").mkdir(parents=True)
    (profile / "user" / "registrymodifications.xcu").write_text(ALWAYS_AGAIN, encoding="utf-8")
    out = place / "calculated"
    environment = f"-env:UserInstallation={profile.as_uri()}"
    told("soffice", environment, "--headless", "--convert-to", "xlsx", "--outdir", out, file)
    return openpyxl.load_workbook(out / file.name, data_only=True)


def told(*command: object) -> str:
    """What a program says when it does what it is asked."""
    run = subprocess.run(list(map(str, command)), capture_output=True, text=True, timeout=300, check=False)
    assert run.returncode == 0, run.stdout + run.stderr
    return run.stdout
