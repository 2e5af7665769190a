"""The shape of the tree: who imports whom, who reads files, what package files hold."""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest
from importlinter.application.use_cases import lint_imports
from importlinter.configuration import configure

ROOT = Path(__file__).parents[2]
PACKAGES = ("roomspec", "grammar/roomspec_grammar")
DOES_IO = ("roomspec/files/", "roomspec/cli/")
READS_ITS_OWN_GRAMMAR = ("grammar/roomspec_grammar/",)

# What reaches outside: modules, and names of functions and methods that open, list or write files or ask the machine.
_MODULES = {"glob", "http", "os", "pathlib", "random", "shutil", "socket", "sqlite3", "subprocess", "tempfile", "time"}
_CALLS = {"open", "print", "input", "urlopen", "read_text", "read_bytes", "write_text", "write_bytes", "iterdir"}
_CALLS |= {"glob", "rglob", "mkdir", "unlink", "rename", "today", "now"}
_LIMITED = {"roomspec/cutting/": {"time"}}
"""A cutting plan has a time limit, so the search looks at a clock that only runs forward."""
_PURE_CALLS = {("world", "today"), ("self", "today"), ("_world", "today")}
"""Methods of the World, which is how the date is asked for."""


def sources() -> list[Path]:
    """Every module of the packages."""
    return sorted(file for package in PACKAGES for file in (ROOT / package).rglob("*.py"))


def named(file: Path) -> str:
    """Its path from the root, with forward slashes."""
    return file.relative_to(ROOT).as_posix()


def test_each_layer_imports_only_those_below_it(monkeypatch):
    """The contracts of pyproject.toml hold."""
    monkeypatch.chdir(ROOT)
    configure()
    assert lint_imports(config_filename=str(ROOT / "pyproject.toml"), cache_dir=None)


@pytest.mark.parametrize("file", sources(), ids=named)
def test_io_stands_in_its_places_only(file):
    """Outside `files` and `cli` no module imports or calls what reads, writes, or asks the machine."""
    name = named(file)
    if name.startswith((*DOES_IO, *READS_ITS_OWN_GRAMMAR)) or name == "roomspec/__main__.py":
        return
    allowed = next((modules for folder, modules in _LIMITED.items() if name.startswith(folder)), set())
    assert set(outside_of(ast.parse(file.read_text(encoding="utf-8")))) <= allowed


def outside_of(tree: ast.Module) -> Iterator[str]:
    """What a module does that reaches outside."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names if alias.name.split(".")[0] in _MODULES)
        elif isinstance(node, ast.ImportFrom) and (node.module or "").split(".")[0] in _MODULES:
            yield str(node.module)
        elif isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in _CALLS:
            yield node.func.id
        elif (
            isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr in _CALLS - {"open"}
        ):
            owner = node.func.value
            name = owner.id if isinstance(owner, ast.Name) else getattr(owner, "attr", "")
            if (name, node.func.attr) not in _PURE_CALLS and name != "console":
                yield f"{name}.{node.func.attr}"


@pytest.mark.parametrize("file", [file for file in sources() if file.name == "__init__.py"], ids=named)
def test_package_files_hold_no_code(file):
    """A package's file is one docstring, or nothing; the top one, the library's face, aside."""
    body = ast.parse(file.read_text(encoding="utf-8")).body
    if named(file) == "roomspec/__init__.py":
        return
    assert len(body) <= 1
    assert all(isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant) for node in body)


@pytest.mark.parametrize("file", sources(), ids=named)
def test_no_file_grows_past_300_lines(file):
    """Longer than that, a file holds more than one thing."""
    assert len(file.read_text(encoding="utf-8").splitlines()) <= 300 or file.name in ("tables.py",)


@pytest.mark.parametrize("file", sources(), ids=named)
def test_names_say_what_a_file_holds(file):
    """No drawer for whatever is left."""
    drawers = {"utils", "util", "helpers", "helper", "common", "base", "misc", "tools"}
    assert not drawers & set(Path(named(file)).with_suffix("").parts)
