"""What the server offers: each method of the protocol, where it is handled, and its options."""

from collections.abc import Callable
from typing import Any

from lsprotocol import types

_H = "roomspec_lsp.handlers"


def _diagnostics() -> Any:
    return types.DiagnosticOptions(
        inter_file_dependencies=True, workspace_diagnostics=True, identifier="roomspec", work_done_progress=False
    )


FEATURES: tuple[tuple[str, str, Callable[[], Any] | None], ...] = (
    (types.INITIALIZE, f"{_H}.life:initialize", None),
    (types.INITIALIZED, f"{_H}.life:initialized", None),
    (types.WORKSPACE_DID_CHANGE_WORKSPACE_FOLDERS, f"{_H}.life:folders_changed", None),
    (types.TEXT_DOCUMENT_DID_OPEN, f"{_H}.documents:opened", None),
    (types.TEXT_DOCUMENT_DID_CHANGE, f"{_H}.documents:changed", None),
    (types.TEXT_DOCUMENT_DID_SAVE, f"{_H}.documents:saved", None),
    (types.TEXT_DOCUMENT_DID_CLOSE, f"{_H}.documents:closed", None),
    (types.WORKSPACE_DID_CHANGE_WATCHED_FILES, f"{_H}.documents:changed_on_disk", None),
    (types.TEXT_DOCUMENT_DIAGNOSTIC, f"{_H}.diagnostics:of_document", _diagnostics),
    (types.WORKSPACE_DIAGNOSTIC, f"{_H}.diagnostics:of_workspace", None),
)
"""In the order of the protocol's life: method, `module:function`, options."""

LATER = frozenset((f"{_H}.diagnostics:of_workspace",))
"""Those that may wait for something, and are awaited."""
