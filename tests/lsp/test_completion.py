"""What is offered while writing: all that the grammar takes there, and nothing else."""

import pytest
from viewing import CATALOGUE, marked, samples, view_of

from roomspec.syntax.assemble import read_file
from roomspec.syntax.examples import EXAMPLES
from roomspec.syntax.line import Line, read_line
from roomspec.syntax.parser import Misfit, begin_line
from roomspec.syntax.statements import placing, words_of
from roomspec.syntax.tables import tables
from roomspec_lsp.features.completion import SNIPPET, Offer, first_words, offers
from roomspec_lsp.features.view import View

SAMPLES = samples()
IDS = [f"{job}/{path}" for job, files in SAMPLES.items() for path in files]
FILES = [(job, path) for job, files in SAMPLES.items() for path in files]


def offered(text: str, path: str = "job.room") -> dict[str, Offer]:
    """What is offered at `$0`, by label."""
    text, line, column = marked(text)
    view = view_of({path: text, "catalogue.room": f'job x\n  use "*.room"\n{CATALOGUE}'}, path)
    return {offer.label: offer for offer in offers(view, line, column)}


def test_names_of_the_right_kind_are_offered_with_what_tells_them_apart():
    """A finish names a panel first, then a method."""
    panels = offered("room 1\n  finish $0\n")
    assert set(panels) == {"board"}
    assert panels["board"].detail == "length 2600, cover 250, thick 10"
    assert set(offered("room 1\n  finish board by gl$0\n")) == {"glued"}


def test_a_line_may_begin_with_what_its_heading_holds():
    """A wall's lines under a wall; a job's lines under a job."""
    under_wall = offered("room 1\n  wall a 2400\n    $0\n")
    assert {"door", "socket", "wall", "room", "ceiling"} <= set(under_wall)
    assert "purpose" not in under_wall
    assert "kerf" not in under_wall
    assert "units" in offered("$0\nroom 1\n")


@pytest.mark.parametrize(
    ("text", "units"),
    [
        ("wall a 2400$0", {" mm", " cm", " m", " in", " ft"}),
        ("wall a 2400 $0", {"mm", "cm", "m", "in", "ft"}),
        ("wall a 2400m$0", {" mm", " cm", " m", " in", " ft"}),
        ("  weighs 5.5 k$0", {"kg/m2", "lb/ft2"}),
        ("  tube 290 $0", {"ml", "l"}),
    ],
)
def test_units_are_offered_after_a_number(text: str, units: set[str]):
    """Of the measure that belongs there, with the blank that is wanted."""
    found = offered(f"panel x\n{text}\n")
    assert {offer.text for offer in found.values() if offer.kind == "unit"} == units


def test_checks_and_walls_are_offered_by_name():
    """In an `allow`, and in a diagonal."""
    assert "narrow-strip" in offered("room 1\n  allow nar$0\n")
    assert set(offered("room 1\n  wall a 2400\n  wall b 1800\n  diagonal a $0\n")) == {"b"}


def test_nothing_is_offered_in_comments_and_texts():
    """They are the writer's own."""
    assert offered("room 1 # $0\n") == {}
    assert offered('room 1\n  note "key at $0\n') == {}
    assert offered("room 1\n  # $0\n") == {}


def test_whole_walls_and_rooms_are_offered_with_holes():
    """With names that the job has."""
    assert "${5:board}" in offered("$0\n")["room with four walls"].text
    assert offered("room 1\n  $0\n")["wall with its substrate"].kind == SNIPPET


@pytest.mark.parametrize(("job", "path"), FILES, ids=IDS)
def test_at_every_word_of_every_sample_what_is_offered_parses_and_what_parses_is_offered(job: str, path: str):
    """Walked token by token, and at the end of every line."""
    view = view_of(SAMPLES[job], path)
    known: set[tuple[int, ...]] = set()
    for number in range(len(view.lines.starts)):
        text = view.lines.line(number)
        read = read_line(text)
        words = words_of(read.node) if isinstance(read, Line) else ()
        places = [word.start for word in words]
        for column in (*places, *([words[-1].end] if words and "#" not in text else [])):
            _hold(view, number, column, known)


def _hold(view: View, number: int, column: int, known: set[tuple[int, ...]]) -> None:
    text = view.lines.line(number)
    found = [offer for offer in offers(view, number, column) if offer.kind != SNIPPET]
    labels = {offer.label for offer in found}
    begun = begin_line(text[:column])
    assert not isinstance(begun, Misfit)
    stack, read = begun
    for offer in found:
        if not read and offer.label not in first_words(view, number)[0]:
            pytest.fail(f"{offer.label} cannot begin a line")
        tried = begin_line(text[: offer.start] + offer.text)
        assert not isinstance(tried, Misfit), (text, offer)
    whole = read_line(text)
    assert isinstance(whole, Line)
    word = next((word for word in words_of(whole.node) if word.start == column), None)
    named = word is not None and word.type.endswith("_NAME") and word.type != "LEVEL_NAME"
    if word is not None and (named or word.type in tables().keywords):
        assert word.text in labels, (text, word)
    if not read or tuple(stack.states) in known or column != len(text[:column].rstrip()) + 1:
        return
    known.add(tuple(stack.states))
    for kind, keyword in tables().keywords.items():
        tried = begin_line(f"{text[:column]}{keyword}")
        if not isinstance(tried, Misfit) and tried[1][-1].type == kind:
            assert keyword in labels, (text[:column], keyword)


@pytest.mark.parametrize(("job", "path"), FILES, ids=IDS)
def test_a_line_that_begins_with_what_is_offered_is_in_its_place(job: str, path: str):
    """And one that would be in its place is offered: tried once in every kind of surroundings."""
    view = view_of(SAMPLES[job], path)
    tried = set()
    for number in range(len(view.lines.starts)):
        words, holder = first_words(view, number)
        top = next((one.block.kind for one in reversed(view.tree.blocks) if one.line <= number - 1), "")
        around = (top, holder.kind if holder is not None else "")
        if around in tried:
            continue
        tried.add(around)
        above = "".join(view.lines.line(at) + "\n" for at in range(number))
        for kind, example in EXAMPLES.items():
            if "units_in" in placing().by_word[example.split()[0]]:
                continue
            tree = read_file("x", above + example)
            problems = [*tree.problems, *(problem for one in tree.blocks for problem in one.block.problems)]
            misplaced = any(problem.name == "misplaced-line" for problem in problems)
            assert misplaced == (example.split()[0] not in words), (around, kind)
