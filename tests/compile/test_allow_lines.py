"""`allow` lines: what they wave off, and for which things."""

from read_job import compiled, told, words_at

TEXT = """job j
  allow no-labour because "by the client"
rooms 1 to 2 as p
  allow narrow-strip because "agreed"
  wall b 1900
pattern p
  height 2400
  allow no-gap because "short wall"
  wall a 2000
    allow narrow-strip because "behind the unit"
  wall b 1700
    allow narrow-row because "low"
  ceiling c
    allow no-gap because "floats"
panel lime
  length 2600
  cover 250
  thick 10
  allow heavy-pack because "two carry it"
"""


def test_an_allow_holds_for_each_thing_it_stands_in() -> None:
    """A pattern's for every room made from it, unless its wall is replaced."""
    job = compiled(TEXT)
    found = [(one.thing, one.allowed.check, one.allowed.path) for one in job.allowances]
    assert sorted(found) == sorted(
        [
            ("job j", "no-labour", ()),
            ("panel lime", "heavy-pack", ()),
            *(
                (f"room {name}", check, path)
                for name in "12"
                for check, path in (
                    ("narrow-strip", ()),
                    ("no-gap", ()),
                    ("narrow-strip", ("wall", "a")),
                    ("no-gap", ("ceiling", "c")),
                )
            ),
        ]
    )


def test_an_allow_knows_its_words_and_reason() -> None:
    """The line, the name in it, and why."""
    job = compiled(TEXT)
    allowed = next(one.allowed for one in job.allowances if one.allowed.path == ("wall", "a"))
    assert allowed.reason == "behind the unit"
    assert words_at(allowed.at, TEXT) == 'allow narrow-strip because "behind the unit"'
    assert words_at(allowed.name_at, TEXT) == "narrow-strip"


def test_a_reason_of_no_words_is_told() -> None:
    """The reason is required."""
    (problem,) = told(compiled('job j\n  allow no-labour because " "\n'))
    assert problem.name == "missing-line"
