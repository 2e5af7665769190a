"""Siblings stand alone: no report imports another kind, no check another check."""

import ast
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[2] / "roomspec"
REPORTS = PACKAGE / "reports"
RULES = PACKAGE / "checks" / "rules"
KINDS = ("findings", "estimate", "checks")
PACKAGES_OF_REPORTS = ("comparison", "drawing", "hand_over")


@pytest.mark.parametrize("file", sorted(REPORTS.glob("*.py")), ids=lambda file: file.name)
def test_no_report_imports_another_kind(file):
    """A report on one thing does not lean on the report on another."""
    own = next((kind for kind in KINDS if file.name.startswith(kind)), None)
    if own is None:
        return
    others = tuple(f"roomspec.reports.{kind}" for kind in KINDS if kind != own)
    assert not [module for module in imported_by(file) if module.startswith(others)]


@pytest.mark.parametrize(
    "file",
    sorted(file for kind in PACKAGES_OF_REPORTS for file in (REPORTS / kind).glob("*.py")),
    ids=lambda file: file.name,
)
def test_no_package_of_reports_imports_another(file):
    """Drawings, documents and comparisons stand alone; the command brings them together."""
    others = tuple(f"roomspec.reports.{kind}" for kind in PACKAGES_OF_REPORTS if kind != file.parent.name)
    assert not [module for module in imported_by(file) if module.startswith(others)]


@pytest.mark.parametrize("file", sorted(RULES.rglob("*.py")), ids=lambda file: file.name)
def test_no_check_imports_another(file):
    """What two checks share has a file of its own beside the registry."""
    assert not [module for module in imported_by(file) if module.startswith("roomspec.checks.rules")]


def imported_by(file: Path) -> list[str]:
    """The modules that a file imports from."""
    tree = ast.parse(file.read_text(encoding="utf-8"))
    return [node.module or "" for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)]
