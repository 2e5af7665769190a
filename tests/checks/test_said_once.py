"""What holds for several faces is said once, after the allows."""

from roomspec.checks.allowing import Allow, Scope, apply_allows
from roomspec.checks.finding import Raised
from roomspec.checks.said_once import said_once
from roomspec.diagnostics.diagnostic import Diagnostic, Edit, Fix, Origin, Related


def raised(face: str, line: int, message: str = "glued on a painted surface", block: str = "room 1") -> Raised:
    """A finding on some face, with a mend at its line."""
    at = Origin(block, line, 2, 8)
    fix = Fix("mend it", (Edit(at, "mended"),))
    return Raised(Diagnostic("narrow-strip", "error", message, at, "strip it", fixes=(fix,)), (face,), face)


def test_the_faces_are_named_and_the_others_related() -> None:
    """It stands at the first place; a place that several faces share is told once; the mends are made together."""
    (said,) = said_once([raised("wall a", 3), raised("wall b", 3), raised("wall c", 7), raised("ceiling over", 9)])
    assert said.message == "walls a, b and c and ceiling over: glued on a painted surface"
    assert said.at == Origin("room 1", 3, 2, 8)
    assert said.related == (
        Related("wall c", Origin("room 1", 7, 2, 8)),
        Related("ceiling over", Origin("room 1", 9, 2, 8)),
    )
    assert [edit.at.line for edit in said.fixes[0].edits] == [3, 7, 9]


def test_what_differs_stays_apart() -> None:
    """Another message or another room, and what names no face, are not joined; the order is kept."""
    plain = Raised(Diagnostic("narrow-strip", "warning", "wall a: narrow", Origin("room 1", 3, 2, 8)))
    found = [
        plain,
        raised("wall a", 3),
        raised("wall b", 4, "glued on a loose surface"),
        raised("wall a", 3, block="r"),
    ]
    assert [said.message for said in said_once([*found, plain])] == [
        "wall a: narrow",
        "wall a: glued on a painted surface",
        "wall b: glued on a loose surface",
        "wall a: glued on a painted surface",
        "wall a: narrow",
    ]


def test_a_face_that_was_waved_off_is_not_named() -> None:
    """An allow in one wall leaves the others their finding."""
    place = Origin("room 1", 5, 4, 9)
    allow = Allow("narrow-strip", "because", "wall b", place, place)
    standing = apply_allows([Scope((raised("wall a", 3), raised("wall b", 3), raised("wall c", 3)), (allow,))])
    assert [said.message for said in said_once(standing)] == ["walls a and c: glued on a painted surface"]
