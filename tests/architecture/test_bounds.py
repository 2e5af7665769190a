"""Nothing that is kept from one call to the next may grow for ever: an editor's server runs for days."""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

from roomspec.syntax import shape
from roomspec.syntax.line import read_line

ROOT = Path(__file__).parents[2]
SOURCES = sorted(file for package in ("roomspec", "lsp", "grammar") for file in (ROOT / package).rglob("*.py"))
CONTAINERS = {"dict", "list", "set", "deque", "defaultdict", "OrderedDict", "Counter", "WeakKeyDictionary"}
BOUNDED = {("roomspec/syntax/shape.py", "_templates")}
"""Containers that a module fills, and that a test of their own holds to a bound."""


@pytest.mark.parametrize("file", SOURCES, ids=lambda file: file.relative_to(ROOT).as_posix())
def test_every_cache_has_a_bound(file: Path) -> None:
    """A function's results are kept to a number, unless it takes nothing; no module has a container to fill."""
    tree = ast.parse(file.read_text(encoding="utf-8"))
    name = file.relative_to(ROOT).as_posix()
    assert [one for one in unbounded(tree) if (name, one) not in BOUNDED] == []


def test_unbounded_caches_are_seen() -> None:
    """In each of the ways of writing them."""
    text = """
from functools import cache, lru_cache
import functools
@cache
def a(x): ...
@functools.lru_cache(None)
def b(x): ...
@lru_cache(maxsize=None)
def c(*x): ...
class D:
    @cache
    def d(self): ...
e = {}
f: dict[str, int] = dict()
g = lru_cache(None)(len)
@cache
def fine(): ...
@lru_cache
def fine_too(x): ...
@lru_cache(8)
def bounded(x): ...
FULL = {1: 2}
"""
    assert sorted(unbounded(ast.parse(text))) == ["a", "b", "c", "d", "e", "f", "g"]


def test_the_shapes_of_lines_are_let_go_before_there_are_too_many(monkeypatch: pytest.MonkeyPatch) -> None:
    """The bound holds with every line of another shape."""
    monkeypatch.setattr(shape, "_templates", {})
    monkeypatch.setattr(shape, "MOST_TEMPLATES", 5)
    for length in range(20):
        read_line(f"  # {'y' * length}")
        read_line(f"room {'y' * (length + 1)}")
        assert len(shape._templates) <= 5
    assert shape._templates


def unbounded(tree: ast.Module) -> Iterator[str]:
    """The names of what may grow for ever."""
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            takes = node.args
            if (takes.posonlyargs or takes.args or takes.kwonlyargs or takes.vararg or takes.kwarg) and any(
                keeps_all(decorator) for decorator in node.decorator_list
            ):
                yield node.name
    for statement in tree.body:
        targets = statement.targets if isinstance(statement, ast.Assign) else []
        if isinstance(statement, ast.AnnAssign):
            targets = [statement.target]
        value = statement.value if isinstance(statement, ast.Assign | ast.AnnAssign) else None
        if value is not None and (is_empty(value) or (isinstance(value, ast.Call) and keeps_all(value.func))):
            yield from (target.id for target in targets if isinstance(target, ast.Name))


def keeps_all(decorator: ast.expr) -> bool:
    """True of `cache` and of `lru_cache(None)`."""
    if isinstance(decorator, ast.Call):
        given = [*decorator.args[:1], *(one.value for one in decorator.keywords if one.arg == "maxsize")]
        none = any(isinstance(one, ast.Constant) and one.value is None for one in given)
        return called(decorator.func) == "lru_cache" and none
    return called(decorator) == "cache"


def is_empty(value: ast.expr) -> bool:
    """True of a container that stands empty until something is put in."""
    if isinstance(value, ast.Dict):
        return not value.keys
    if isinstance(value, ast.List | ast.Set):
        return not value.elts
    return isinstance(value, ast.Call) and called(value.func) in CONTAINERS and not value.args and not value.keywords


def called(function: ast.expr) -> str:
    """The last word of what is called."""
    if isinstance(function, ast.Attribute):
        return function.attr
    return function.id if isinstance(function, ast.Name) else ""
