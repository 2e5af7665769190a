"""Starting, stopping, and what is loaded for it."""

import os
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
HEAVY = {"lark", "pint", "highspy", "numpy", "rich", "scipy", "pygls", "lsprotocol"}


def loaded_by(*arguments: str, cwd: Path) -> set[str]:
    """The modules that a fresh process has loaded after a command."""
    code = (
        "import sys, io; from roomspec.cli.main import main;"
        "kept = sys.stdout; sys.stdout = io.TextIOWrapper(io.BytesIO());"
        f"main({list(arguments)!r}); kept.write('\\n'.join(sys.modules))"
    )
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, cwd=cwd, env=environment())
    assert ran.returncode == 0, ran.stderr
    return set(ran.stdout.split())


def environment() -> dict[str, str]:
    """This process's environment, with the packages that it runs."""
    return os.environ | {"PYTHONPATH": os.pathsep.join(path for path in sys.path if path)}


def command(*arguments: str) -> list[str]:
    """The command line of a fresh process."""
    return [sys.executable, "-m", "roomspec", *arguments]


def test_version(run):
    """`--version` says the version that the package is built with."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    assert run("--version").out == f"roomspec {project['version']}\n"


def test_version_loads_nothing_heavy(tmp_path):
    """Neither parser nor solver nor units are loaded to say the version."""
    assert not loaded_by("--version", cwd=tmp_path) & (HEAVY | {"msgspec"})


def test_check_loads_no_solver_and_no_units(small):
    """A check loads neither pint, nor the solver, nor rich."""
    assert not loaded_by("check", str(small), cwd=small) & (HEAVY - {"lark"})


def test_check_loads_neither_prices_nor_cutting_plans(small):
    """Of the engine a check needs the layout, and what a lining weighs."""
    loaded = loaded_by("check", str(small), cwd=small)
    assert not {name for name in loaded if name.startswith("roomspec.cutting.")}
    assert not loaded & {"roomspec.takeoff.taken", "roomspec.takeoff.job", "roomspec.pricing.estimate"}


def test_help_without_a_command(run):
    """Without a command the help is shown."""
    ended = run()
    assert ended.code == 0
    assert "estimate" in ended.out
    assert ended.out == run("--help").out


@pytest.mark.parametrize("name", ["check", "estimate", "format", "explain", "new"])
def test_help_of_each_command(run, name):
    """Every command has a short help."""
    ended = run(name, "--help")
    assert ended.code == 0
    assert ended.out.startswith(f"Usage: roomspec {name} ")
    assert ended.out.count("\n") < 30


@pytest.mark.parametrize(
    "arguments", [["chekc"], ["check"], ["check", "a", "b"], ["check", ".", "--as", "xml"], ["--no"]]
)
def test_a_mistaken_command_is_refused_in_one_line(run, arguments):
    """A mistake in the command itself is one line on standard error, and exit 2."""
    assert run(*arguments).refused


def test_a_closed_pipe_is_silent(small):
    """A reader that goes away costs no traceback."""
    reading, writing = os.pipe()
    os.close(reading)
    with os.fdopen(writing, "wb") as output:
        ran = subprocess.run(
            command("explain", "--all"), stdout=output, stderr=subprocess.PIPE, cwd=small, env=environment()
        )
    assert (ran.returncode, ran.stderr) == (141, b"")


def test_stopping_by_hand_is_one_line(run, monkeypatch):
    """Ctrl-C in the middle of the work: one line, no traceback."""

    def stop(*_arguments: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("roomspec.cli.format.formatted", stop)
    ended = run("format", "-")
    assert (ended.code, ended.out, ended.err.strip()) == (130, "", "roomspec: stopped.")


def test_output_is_utf8_whatever_the_machine_says(small):
    """Names in any script are printed as UTF-8 even where the machine asks for ASCII."""
    (small / "job.room").write_text('job straße "Straße"\nromo 1\n', encoding="utf-8")
    ran = subprocess.run(
        command("check", "job.room", "--as", "json"),
        capture_output=True,
        cwd=small,
        env=environment() | {"PYTHONIOENCODING": "ascii", "LC_ALL": "C"},
    )
    assert ran.returncode == 1
    assert ran.stderr == b""
    ran.stdout.decode("utf-8")
