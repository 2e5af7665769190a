"""How the server is put together: it starts light, offers what it has, and its files are short."""

import importlib
import json
import subprocess
import sys
from pathlib import Path

import pytest

from roomspec_lsp.registration import FEATURES, LATER

SOURCES = sorted((Path(__file__).parents[2] / "lsp" / "roomspec_lsp").rglob("*.py"))


def test_nothing_that_reads_rooms_is_imported_before_the_client_has_its_answer():
    """`initialize` costs what the protocol's own library costs: the analysis comes after it."""
    script = (
        "import sys, io\n"
        "from roomspec_lsp.serving import offered\n"
        "server = offered()\n"
        "server.protocol.set_writer(io.BytesIO())\n"
        "params = {'processId': None, 'rootUri': None, 'capabilities': {}}\n"
        "server.protocol.receive({'jsonrpc': '2.0', 'id': 1, 'method': 'initialize', 'params': params})\n"
        "import json; print(json.dumps(sorted(name for name in sys.modules if name.startswith('roomspec'))))\n"
    )
    said = subprocess.run([sys.executable, "-c", script], capture_output=True, check=True, text=True).stdout
    loaded = json.loads(said.splitlines()[-1])
    assert not [name for name in loaded if name.startswith(("roomspec.", "roomspec_grammar"))]


@pytest.mark.parametrize(("method", "where"), [(method, where) for method, where, _ in FEATURES])
def test_what_is_offered_is_there(method: str, where: str):
    """Each method has a handler with a docstring; those that wait are known."""
    module, name = where.split(":")
    handler = getattr(importlib.import_module(module), name)
    assert handler.__doc__, method
    assert (where in LATER) == (handler.__code__.co_flags & 0x80 > 0)


@pytest.mark.parametrize("file", SOURCES, ids=lambda file: file.name)
def test_no_file_of_the_server_grows_past_300_lines(file: Path):
    """Longer than that, a file holds more than one thing."""
    assert len(file.read_text(encoding="utf-8").splitlines()) <= 300
