"""What the server offers: each method of the protocol, where it is handled, and its options."""

from collections.abc import Callable
from typing import Any

from lsprotocol import types

from roomspec_lsp.features.legend import MODIFIERS, TYPES

_H = "roomspec_lsp.handlers"


def _diagnostics() -> Any:
    return types.DiagnosticOptions(
        inter_file_dependencies=True, workspace_diagnostics=True, identifier="roomspec", work_done_progress=False
    )


def _actions() -> Any:
    kinds = (
        types.CodeActionKind.QuickFix,
        types.CodeActionKind.RefactorExtract,
        types.CodeActionKind.RefactorRewrite,
        types.CodeActionKind.SourceFixAll,
    )
    return types.CodeActionOptions(code_action_kinds=list(kinds))


def _completion() -> Any:
    return types.CompletionOptions(trigger_characters=[" "], resolve_provider=True)


def _signature() -> Any:
    return types.SignatureHelpOptions(trigger_characters=[" "])


def _typing() -> Any:
    return types.DocumentOnTypeFormattingOptions(first_trigger_character="\n")


def _tokens() -> Any:
    return types.SemanticTokensLegend(list(TYPES), list(MODIFIERS))


def _moving() -> Any:
    rooms = types.FileOperationFilter(types.FileOperationPattern("**/*.room"), "file")
    folders = types.FileOperationFilter(
        types.FileOperationPattern("**/*", matches=types.FileOperationPatternKind.Folder), "file"
    )
    return types.FileOperationRegistrationOptions([rooms, folders])


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
    (types.TEXT_DOCUMENT_CODE_ACTION, f"{_H}.actions:code_actions", _actions),
    (types.TEXT_DOCUMENT_COMPLETION, f"{_H}.completion:complete", _completion),
    (types.COMPLETION_ITEM_RESOLVE, f"{_H}.completion:resolve", None),
    (types.TEXT_DOCUMENT_SIGNATURE_HELP, f"{_H}.completion:signature", _signature),
    (types.TEXT_DOCUMENT_HOVER, f"{_H}.reading:hover", None),
    (types.TEXT_DOCUMENT_FORMATTING, f"{_H}.formatting:format_document", None),
    (types.TEXT_DOCUMENT_RANGE_FORMATTING, f"{_H}.formatting:format_range", None),
    (types.TEXT_DOCUMENT_ON_TYPE_FORMATTING, f"{_H}.formatting:format_typed", _typing),
    (types.TEXT_DOCUMENT_DOCUMENT_SYMBOL, f"{_H}.reading:document_symbols", None),
    (types.WORKSPACE_SYMBOL, f"{_H}.reading:workspace_symbols", None),
    (types.TEXT_DOCUMENT_DEFINITION, f"{_H}.reading:definition", None),
    (types.TEXT_DOCUMENT_REFERENCES, f"{_H}.reading:references", None),
    (types.TEXT_DOCUMENT_DOCUMENT_HIGHLIGHT, f"{_H}.reading:highlight", None),
    (types.TEXT_DOCUMENT_PREPARE_RENAME, f"{_H}.reading:prepare_rename", None),
    (types.TEXT_DOCUMENT_RENAME, f"{_H}.reading:rename", None),
    (types.TEXT_DOCUMENT_FOLDING_RANGE, f"{_H}.reading:folding", None),
    (types.TEXT_DOCUMENT_SELECTION_RANGE, f"{_H}.reading:selection", None),
    (types.TEXT_DOCUMENT_DOCUMENT_LINK, f"{_H}.reading:document_links", None),
    (types.TEXT_DOCUMENT_SEMANTIC_TOKENS_FULL, f"{_H}.showing:tokens_of_document", _tokens),
    (types.TEXT_DOCUMENT_SEMANTIC_TOKENS_FULL_DELTA, f"{_H}.showing:tokens_since", None),
    (types.TEXT_DOCUMENT_SEMANTIC_TOKENS_RANGE, f"{_H}.showing:tokens_of_range", None),
    (types.TEXT_DOCUMENT_INLAY_HINT, f"{_H}.showing:inlay_hints", None),
    (types.TEXT_DOCUMENT_CODE_LENS, f"{_H}.showing:code_lenses", None),
    (types.TEXT_DOCUMENT_PREPARE_CALL_HIERARCHY, f"{_H}.hierarchy:prepare", None),
    (types.CALL_HIERARCHY_INCOMING_CALLS, f"{_H}.hierarchy:incoming", None),
    (types.CALL_HIERARCHY_OUTGOING_CALLS, f"{_H}.hierarchy:outgoing", None),
    (types.WORKSPACE_WILL_RENAME_FILES, f"{_H}.hierarchy:will_rename", _moving),
    (types.WORKSPACE_DIAGNOSTIC, f"{_H}.diagnostics:of_workspace", None),
)
"""In the order of the protocol's life: method, `module:function`, options."""

LATER = frozenset((f"{_H}.diagnostics:of_workspace",))
"""Those that may wait for something, and are awaited."""
