"""Other language servers, to be measured beside ours: where they come from, and a document of its own kind for each."""

import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

PYPI = ("ruff==0.17.6", "tombi==1.9.6", "ty==0.0.107", "basedpyright==1.40.2")
NPM = ("yaml-language-server@2.0.0",)


class Document(NamedTuple):
    """A text, and an edit that makes a mistake: `wrong` is put in at the column of the line, and taken out again."""

    path: str
    language: str
    text: str
    line: int
    column: int
    wrong: str


class Peer(NamedTuple):
    """A server. `missing` says why it cannot be measured; "" where it can."""

    name: str
    command: tuple[str, ...]
    document: Callable[[int], Document]
    missing: str = ""


def peers(folder: Path) -> list[Peer]:
    """Install all into `folder`; what cannot be had is named with the reason."""
    subprocess.run([sys.executable, "-m", "venv", str(folder / "venv")], check=True)
    programs = folder / "venv" / ("Scripts" if sys.platform == "win32" else "bin")
    found = []
    servers = (
        ("ruff", ("ruff", "server"), _python),
        ("tombi", ("tombi", "lsp", "--offline"), _toml),
        ("ty", ("ty", "server"), _python),
        ("basedpyright", ("basedpyright-langserver", "--stdio"), _python),
    )
    for package, (name, command, document) in zip(PYPI, servers, strict=True):
        why = _why_not([str(programs / "python"), "-m", "pip", "install", "--quiet", package], folder)
        found.append(Peer(name, (str(programs / command[0]), *command[1:]), document, why))
    npm = shutil.which("npm")
    why = _why_not([npm, "install", "--silent", "--no-fund", "--no-audit", *NPM], folder) if npm else "there is no npm"
    program = folder / "node_modules" / ".bin" / "yaml-language-server"
    found.append(Peer("yaml", (str(program), "--stdio"), _yaml, why))
    return found


def _why_not(command: list[str], folder: Path) -> str:
    done = subprocess.run(command, cwd=folder, capture_output=True, text=True, check=False)
    return "" if done.returncode == 0 else f"not installed: {(done.stderr.strip() or done.stdout).splitlines()[-1]}"


def _python(lines: int) -> Document:
    block = "def room_{0}(width: int, height: int) -> int:\n    area = width * height\n    return area + {0}\n\n\n"
    text = "".join(block.format(number) for number in range(lines // 5))
    return Document("rooms.py", "python", text, lines // 10 * 5 + 2, len("    return area"), "s")


def _toml(lines: int) -> Document:
    block = '[room-{0}]\nname = "room {0}"\nwidth = {0}\nheight = 2400\n\n'
    text = "".join(block.format(number) for number in range(lines // 5))
    return Document("rooms.toml", "toml", text, lines // 10 * 5 + 3, len("height ="), " =")


def _yaml(lines: int) -> Document:
    block = "room-{0}:\n  name: room {0}\n  width: {0}\n  walls:\n    - 2400\n"
    text = "".join(block.format(number) for number in range(lines // 5))
    return Document("rooms.yaml", "yaml", text, lines // 10 * 5 + 2, len("  width: "), "[")
