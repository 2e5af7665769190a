"""Reports are values in, text out: none imports another, none needs a terminal."""

import ast
from pathlib import Path

import pytest

REPORTS = Path(__file__).parents[2] / "roomspec" / "reports"
KINDS = ("findings", "estimate", "checks")


@pytest.mark.parametrize("file", sorted(REPORTS.glob("*.py")), ids=lambda file: file.name)
def test_no_report_imports_another_kind(file):
    """A report on one thing does not lean on the report on another."""
    own = next((kind for kind in KINDS if file.name.startswith(kind)), None)
    if own is None:
        return
    tree = ast.parse(file.read_text(encoding="utf-8"))
    imported = [node.module or "" for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)]
    others = tuple(f"roomspec.reports.{kind}" for kind in KINDS if kind != own)
    assert not [module for module in imported if module.startswith(others)]
