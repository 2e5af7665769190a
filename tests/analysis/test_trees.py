"""Files read again: the same as read anew, and the very same where nothing changed."""

from hypothesis import given, settings
from hypothesis import strategies as some

from roomspec.analysis.trees import Trees
from roomspec.syntax.assemble import read_file

TEXTS = some.sampled_from(
    (
        "",
        "room 1\n",
        "room 2\n  wall a\nroom 1\n",
        "room 1\nroom 1\n  height 2400\n",
        "units in\nroom 3\n",
        "wall a 1\n",
    )
)
FILES = some.lists(some.tuples(some.sampled_from(("a.room", "b.room", "c.room")), TEXTS), max_size=5)


@given(some.lists(FILES, min_size=1, max_size=4))
@settings(max_examples=100, deadline=None)
def test_files_kept_are_as_files_read_anew(jobs: list[list[tuple[str, str]]]):
    """Whatever other files a job has, and however often a name occurs in them."""
    trees = Trees()
    for files in jobs:
        kept: dict[str, int] = {}
        anew: dict[str, int] = {}
        for path, text in files:
            assert trees.read(path, text, kept) == read_file(path, text, anew)
            assert kept == anew


def test_a_file_that_is_as_it_was_has_the_very_same_tree():
    """Also where another file has changed; not where another now has a name of its own."""
    trees = Trees()
    one, two = "room 1\n", "room 2\n"
    tree = trees.read("one.room", one, {})
    seen: dict[str, int] = {}
    trees.read("two.room", two, seen)
    assert trees.read("one.room", one, seen) is tree
    assert trees.read("one.room", one, {"room 1": 1}) is not tree
