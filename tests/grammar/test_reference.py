"""The language reference: its examples are read, and no statement is missing from it."""

import re
from pathlib import Path

import pytest

from roomspec.syntax.assemble import read_file
from roomspec.syntax.format import format_text
from roomspec.syntax.line import Line, read_line
from roomspec.syntax.quantity import Trap, read_length
from roomspec.syntax.tables import tables
from roomspec.syntax.tree import Block

PAGE = (Path(__file__).parents[2] / "grammar" / "README.md").read_text("utf-8")
BLOCKS = re.findall(r"```room\n(.*?)```", PAGE, re.DOTALL)


def kinds(block: Block) -> set[str]:
    """The statements in a block."""
    found = {block.head.node.kind, *(line.node.kind for line in block.lines)}
    return found.union(*(kinds(part) for part in block.parts))


@pytest.mark.parametrize("text", BLOCKS, ids=lambda text: text.split("\n")[0])
def test_an_example_is_read_without_a_problem(text: str) -> None:
    """Each block on the page is a valid text."""
    tree = read_file("README.md", text)
    found = [*tree.problems]
    for placed in tree.blocks:
        for block in (placed.block, *placed.block.parts):
            found.extend(block.problems)
    assert not found
    assert tree.blocks
    assert format_text(text).split() == format_text(format_text(text)).split()


def test_every_statement_is_on_the_page() -> None:
    """In a block, and in a table's first column, but for openings and the finish, whose parts have tables."""
    shown = {kind for text in BLOCKS for placed in read_file("", text).blocks for kind in kinds(placed.block)}
    units = {"units_in" for text in BLOCKS if text.startswith("units ")}
    first_cells = re.findall(r"^\| `([^`]+)`", PAGE, re.MULTILINE)
    told = {read.node.kind for line in first_cells if isinstance(read := read_line(line), Line)}
    assert set(tables().words) - shown - units == {"margin"}
    openings = {"door", "window", "hatch", "void", "niche", "finish"}
    assert set(tables().words) - told == openings | {"units_in"}


def test_the_lengths_on_the_page_are_right() -> None:
    """The table of lengths, and the one of traps."""
    for row in re.findall(r"^\| (`.*`) \| ([\d.]+) mm \|$", PAGE, re.MULTILINE):
        for text in re.findall(r"`([^`]+)`", row[0]):
            assert read_length(text) == round(float(row[1]) * 1_000_000), text
    refused = PAGE[PAGE.index("| refused |") :].split("\n\n")[0]
    for text in ("2,4 m", "2,400", "2 400", "2'400", "10.6 ft", "8' 14\"", ".5"):
        assert f"`{text}`" in refused and isinstance(read_length(text), Trap)


def test_links_on_the_page_lead_to_its_headings() -> None:
    """Every `#...` link names a heading."""
    titles = re.findall(r"^#+ (.*)$", PAGE, re.MULTILINE)
    headings = {re.sub(r"[^\w -]", "", title).strip().lower().replace(" ", "-") for title in titles}
    assert set(re.findall(r"\]\(#([^)]+)\)", PAGE)) <= headings
