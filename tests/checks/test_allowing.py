"""What an `allow` waves off, and what is said of one that waves nothing off."""

from roomspec.checks.allowing import ALL, Allow, Scope, apply_allows
from roomspec.checks.finding import Raised
from roomspec.diagnostics.diagnostic import Diagnostic, Origin


def raised(name: str = "narrow-strip", *about: str, block: str = "room 1", severity: str = "warning") -> Raised:
    """A finding on some wall."""
    return Raised(Diagnostic(name, severity, "a message", Origin(block, 3, 0, 5)), about)


def allow(name: str = "narrow-strip", subject: str = ALL, block: str = "room 1", line: int = 9) -> Allow:
    """A line that allows it."""
    return Allow(name, "because", subject, Origin(block, line, 8, 20), Origin(block, line, 2, 40))


def named(scopes: list[Scope]) -> list[tuple[str, str]]:
    """Severity and name of all that stands."""
    return [(one.diagnostic.severity, one.diagnostic.name) for one in apply_allows(scopes)]


def test_waves_off_in_its_wall_room_product_and_method() -> None:
    """The subject is compared with what the finding is about; ALL covers whatever it is asked about."""
    finding = raised("narrow-strip", "wall a", "panel long", "method glued")
    for subject in ("wall a", "panel long", "method glued", ALL):
        assert named([Scope((finding,), (allow(subject=subject),))]) == []


def test_leaves_what_it_does_not_cover() -> None:
    """Another wall's finding stands, another check's too, and the allow is idle."""
    for finding in (raised("narrow-strip", "wall b"), raised("finishes-overlap", "wall a")):
        assert named([Scope((finding,), (allow(subject="wall a"),))]) == [
            ("warning", finding.diagnostic.name),
            ("hint", "idle-allow"),
        ]


def test_a_patterns_allow_is_idle_only_where_no_room_of_it_needs_it() -> None:
    """One line that stands in two rooms is used where one of them needed it."""
    line = allow(subject="wall a", block="pattern bath")
    assert named([Scope((), (line,)), Scope((raised("narrow-strip", "wall a"),), (line,))]) == []
    assert named([Scope((), (line,)), Scope((), (line,))]) == [("hint", "idle-allow")]


def test_a_problem_cannot_be_waved_off() -> None:
    """It stands, and the allow says why it is of no use."""
    finding = raised("missing-line", severity="error")
    standing = apply_allows([Scope((finding,), (allow("missing-line"),))])
    assert standing[0] == finding
    assert (standing[1].diagnostic.name, standing[1].diagnostic.severity) == ("idle-allow", "hint")
    assert "cannot be waved off" in standing[1].diagnostic.message


def test_an_unused_name_can_be_waved_off_where_it_is_defined() -> None:
    """The finding stands in the product's own block."""
    finding = raised("unused-name", block="panel spare", severity="hint")
    assert named([Scope((finding,), (allow("unused-name", "panel spare", "panel spare"),))]) == []


def test_a_name_that_no_check_has_is_an_error_with_the_nearest() -> None:
    """A misspelt allow waves nothing off and says what was meant."""
    (said,) = apply_allows([Scope((), (allow("narow-strip"),))])
    assert (said.diagnostic.name, said.diagnostic.severity) == ("unknown-name", "error")
    assert "narrow-strip" in said.diagnostic.help
    assert said.diagnostic.fixes[0].edits[0].text == "narrow-strip"


def test_idle_allows_can_be_allowed_and_that_allow_can_be_idle() -> None:
    """In its own block and subject; the job's covers all."""
    idle, silencer = allow(subject="wall a"), allow("idle-allow", subject="wall a", line=10)
    assert named([Scope((), (idle, silencer))]) == []
    assert named([Scope((), (idle, allow("idle-allow", block="job hotel")))]) == []
    assert named([Scope((), (silencer,))]) == [("hint", "idle-allow")]
