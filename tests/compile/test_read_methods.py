"""What the lines of methods and gangs say, with the products put in."""

from decimal import Decimal

import pytest
from read_job import compiled, told, words_at

from roomspec.model.method import Battens, Gang, Gap, Glue, Method, More, Seal, Takes
from roomspec.quantities.length import MM

PRODUCTS = """
adhesive grab
  tube 290 ml
sealant clear
  tube 310 ml
support sw
  section 25 x 50
  length 2400
fixing screw-a
  size 3.5 x 35
sheet foil
  roll 1200 x 50 m
trim edge-a
  role edge
  length 2600
"""


def method(*lines: str) -> tuple[Method, dict[str, object]]:
    """The method of these lines, and the products by name."""
    text = "\n".join(("job j", "method m", *lines))
    job = compiled(text + PRODUCTS)
    assert not told(job), job.problems
    return job.catalogue.methods["m"], {name: value for (_, name), value in job.catalogue.products.items()}


def test_each_line_of_a_method_is_read() -> None:
    """Every line but the trims', with its product in it."""
    found, products = method(
        "glue grab bead 8 first every 100",
        "more 25 % on tile",
        "more 10 % on plaster",
        "seal clear bead 5 at joints corners",
        "seal clear fillet 6 x 8 at rims",
        "seal clear joint 4 x 10 at floor",
        "battens sw every 400 over sw every 600 horizontal",
        "screw screw-a",
        "fix screw-a every 600",
        "behind foil",
        "scribe 10",
        "gap 5 at ceiling ends",
        'note "Two coats."',
    )
    assert found == Method(
        "m",
        glue=Glue(products["grab"], 8 * MM, 100 * MM, True),  # type: ignore[arg-type]
        more=(More(Decimal(25), "tile"), More(Decimal(10), "plaster")),
        seals=(
            Seal(products["clear"], "bead", 5 * MM, 5 * MM, ("joints", "corners")),  # type: ignore[arg-type]
            Seal(products["clear"], "fillet", 6 * MM, 8 * MM, ("rims",)),  # type: ignore[arg-type]
            Seal(products["clear"], "joint", 4 * MM, 10 * MM, ("floor",)),  # type: ignore[arg-type]
        ),
        battens=(
            Battens(products["sw"], 400 * MM),  # type: ignore[arg-type]
            Battens(products["sw"], 600 * MM, "horizontal"),  # type: ignore[arg-type]
        ),
        screw=products["screw-a"],  # type: ignore[arg-type]
        fix=products["screw-a"],  # type: ignore[arg-type]
        fix_every=600 * MM,
        behind=products["foil"],  # type: ignore[arg-type]
        scribe=10 * MM,
        gaps=(Gap(5 * MM, "ceiling"), Gap(5 * MM, "ends")),
        notes=("Two coats.",),
    )


def test_parallel_beads_are_no_first_ones() -> None:
    """`glue` without `first`."""
    found, products = method("glue grab bead 8 every 100")
    assert found.glue == Glue(products["grab"], 8 * MM, 100 * MM, False)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    "role",
    ["start", "inside-corner", "outside-corner", "edge", "top", "joint", "skirting", "cap", "cornice", "architrave"],
)
def test_every_place_takes_a_trim(role: str) -> None:
    """The place is the method's field of that name."""
    found, products = method(f"{role} edge-a")
    assert getattr(found, role.replace("-", "_")) == products["edge-a"]


def test_corners_go_without_trim() -> None:
    """`mitred` and `butted` stand for themselves."""
    found, _ = method("inside-corner butted", "outside-corner mitred")
    assert (found.inside_corner, found.outside_corner) == ("butted", "mitred")


@pytest.mark.parametrize(
    ("line", "words", "message"),
    [
        ("start mitred", "mitred", "only a corner is mitred"),
        ("glue grab bead 0 every 100", "0", "a bead of 0 mm"),
        ("glue grab bead 80 every 100", "80", "a bead of 80 mm"),
        ("battens sw every 0", "0", "a spacing of battens of 0 mm"),
        ("battens sw every 1", "1", "a spacing of battens of 1 mm"),
        ("glue grab bead 8 every 0.000001", "0.000001", "a spacing of beads of 0.000001 mm"),
        ("glue grab bead 0.1 every 100", "0.1", "a bead of 0.1 mm"),
        ("seal clear bead 0 at joints", "0", "a bead of 0 mm"),
        ("more -1 % on tile", "-1 %", "a percentage of -1 %"),
        ("gap -5 at ceiling", "-5", "a gap of -5 mm"),
        ("scribe 2 m", "2 m", "a scribe of 2000 mm"),
    ],
)
def test_a_method_that_cannot_be_is_told_at_its_words(line: str, words: str, message: str) -> None:
    """Each is one `impossible-value`, and its line counts for nothing."""
    text = f"job j\nmethod m\n  {line}\n{PRODUCTS}"
    job = compiled(text)
    (problem,) = told(job)
    assert problem.name == "impossible-value"
    assert message in problem.message
    assert words_at(problem.at, text) == words
    assert job.catalogue.methods["m"] == Method("m")


@pytest.mark.parametrize(
    ("line", "kind"),
    [
        ("glue nope bead 8 every 100", "adhesive"),
        ("seal nope bead 5 at joints", "sealant"),
        ("battens nope every 400", "support"),
        ("battens sw every 400 over nope every 600", "support"),
        ("screw nope", "fixing"),
        ("fix nope every 600", "fixing"),
        ("behind nope", "sheet"),
        ("start nope", "trim"),
    ],
)
def test_a_line_of_an_unknown_product_counts_for_nothing(line: str, kind: str) -> None:
    """One `unknown-name` at the name; a second layer of battens falls with the first."""
    text = f"job j\nmethod m\n  {line}\n{PRODUCTS}"
    job = compiled(text)
    (problem,) = told(job)
    assert (problem.name, words_at(problem.at, text)) == ("unknown-name", "nope")
    assert problem.message.startswith(f"no {kind} is called nope")
    assert job.catalogue.methods["m"] == Method("m")


def test_a_product_of_another_kind_is_named() -> None:
    """A sealant that is glued with is no unknown thing."""
    (problem,) = told(compiled(f"job j\nmethod m\n  glue clear bead 8 every 100\n{PRODUCTS}"))
    assert problem.help == "clear is a sealant"


@pytest.mark.parametrize(
    ("line", "takes"),
    [
        ("0.30 h/m2 for panels", Takes(Decimal("0.30"), "m2", "panels")),
        ("0.30 h/m2 for panels vertical", Takes(Decimal("0.30"), "m2", "panels", "vertical")),
        ("0.60 h/m2 for panels on stairs", Takes(Decimal("0.60"), "m2", "panels", "stairs")),
        ("0.70 h/m2 for panels in reveals", Takes(Decimal("0.70"), "m2", "panels", "reveals")),
        ("0.06 h/m for trims", Takes(Decimal("0.06"), "m", "trims")),
        ("0.15 h each for cut-outs", Takes(Decimal("0.15"), "each", "cut-outs")),
        ("0.25 h/m2 for removing tile", Takes(Decimal("0.25"), "m2", "removing", "tile")),
        ("0.1 h/m for removing skirting", Takes(Decimal("0.1"), "m", "removing", "skirting")),
        ('2 h each for removing "old bar"', Takes(Decimal(2), "each", "removing", "old bar")),
    ],
)
def test_each_labour_constant_is_read(line: str, takes: Takes) -> None:
    """Hours, what they are for, the task and where."""
    job = compiled(f"job j\n  labour g\ngang g\n  rate 62.00 per h\n  takes {line}\n")
    assert not told(job)
    assert job.job.gang == Gang("g", "", Decimal("62.00"), (takes,))


def test_a_gang_without_rate_is_told() -> None:
    """Its constants are kept; its hours have no price."""
    text = "job j\n  labour g\ngang g\n  takes 0.3 h/m2 for panels\n"
    job = compiled(text)
    (problem,) = told(job)
    assert (problem.name, words_at(problem.at, text)) == ("missing-line", "g")
    assert job.job.gang is not None and job.job.gang.rate is None


def test_a_constant_of_two_units_is_refused() -> None:
    """`0.30 h/m2 each`."""
    (problem,) = told(compiled("job j\n  labour g\ngang g\n  rate 1 per h\n  takes 0.3 h/m2 each for panels\n"))
    assert problem.name == "wrong-unit"


@pytest.mark.parametrize(
    ("takes", "mended"),
    [
        ("0.30 h/m for panels", ["0.30 h/m2"]),
        ("0.30 h/ft for panels", ["0.30 h/ft2"]),
        ("0.30 h/m2 for trims", ["0.30 h/m"]),
        ("0.30 h each for seals", []),
        ("0.30 h/m for rooms", []),
    ],
)
def test_a_constant_by_what_the_task_is_not_counted_in_is_refused(takes: str, mended: list[str]) -> None:
    """It would never be used; the same figure by the right unit is offered where it was a length or an area."""
    (problem,) = told(compiled(f"job j\n  labour g\ngang g\n  rate 1 per h\n  takes {takes}\n"))
    assert problem.name == "wrong-unit"
    assert [edit.text for fix in problem.fixes for edit in fix.edits] == mended


@pytest.mark.parametrize("takes", ["0.30 h/m2 for panels", "0.3 h each for panels", "0.3 h/m for mitres"])
def test_a_constant_by_what_the_task_is_counted_in_is_kept(takes: str) -> None:
    """Panels go by area or number, mitres by number or length."""
    job = compiled(f"job j\n  labour g\ngang g\n  rate 1 per h\n  takes {takes}\n")
    assert not told(job) and job.job.gang is not None and len(job.job.gang.takes) == 1
