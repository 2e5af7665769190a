"""The life of a connection: what is answered before `initialize` and after `shutdown`, and bad messages."""

import logging
from collections.abc import Callable, Generator
from typing import Any

from lsprotocol import types
from pygls.capabilities import ServerCapabilitiesBuilder
from pygls.exceptions import JsonRpcException
from pygls.protocol import LanguageServerProtocol, lsp_method

from roomspec_lsp.pulling import pulls
from roomspec_lsp.tolerance import tolerated

PARSE_ERROR, INVALID_REQUEST, METHOD_NOT_FOUND, INVALID_PARAMS = -32700, -32600, -32601, -32602
NOT_INITIALIZED, CANCELLED = -32002, -32800

logger = logging.getLogger(__name__)


class RoomProtocol(LanguageServerProtocol):
    """The protocol of pygls with its own store of documents left out, and stricter about the order of messages."""

    begun = False
    position_encoding = "utf-16"

    def receive(self, data: Any) -> None:
        """Handle one message as read."""
        if not isinstance(data, dict):
            self.refuse(None, PARSE_ERROR, "this message is not a JSON object")
            return
        method, ident = data.get("method"), data.get("id")
        if method is None:
            self._take_response(data)
        elif not isinstance(method, str):
            self.refuse(ident, INVALID_REQUEST, "the method is no string")
        elif "id" in data and self._out_of_turn(method, ident):
            return
        elif (
            method not in self.fm.builtin_features and method not in self.fm.features and method != types.CANCEL_REQUEST
        ):
            if "id" in data:
                self.refuse(ident, METHOD_NOT_FOUND, f"{method} is not offered")
        elif "id" in data or method == types.EXIT or (self.begun and not self._shutdown):
            self._structured(data, method, ident)

    def refuse(self, ident: Any, code: int, message: str) -> None:
        """Answer a request with an error."""
        self._send_data({"jsonrpc": "2.0", "id": ident, "error": {"code": code, "message": message}})

    def _out_of_turn(self, method: str, ident: Any) -> bool:
        """Refuse a request that comes at the wrong time."""
        if self._shutdown:
            self.refuse(ident, INVALID_REQUEST, "the server is shutting down")
        elif method == types.INITIALIZE and self.begun:
            self.refuse(ident, INVALID_REQUEST, "`initialize` came before")
        elif method != types.INITIALIZE and not self.begun:
            self.refuse(ident, NOT_INITIALIZED, "`initialize` comes first")
        else:
            return False
        return True

    def _structured(self, data: dict[str, Any], method: str, ident: Any) -> None:
        if method == types.INITIALIZE and isinstance(data.get("params"), dict):
            data["params"] = tolerated(self._converter, data["params"], types.InitializeParams)
        try:
            message = self.structure_message({"jsonrpc": "2.0", **data})
        except JsonRpcException:
            if "id" in data:
                self.refuse(ident, INVALID_PARAMS, f"the parameters of {method} cannot be read")
            return
        self.handle_message(message)

    def _take_response(self, data: dict[str, Any]) -> None:
        """The client's answer to a request of ours; one that cannot be read is dropped."""
        try:
            self.handle_message(self.structure_message({"jsonrpc": "2.0", **data}))
        except (JsonRpcException, AttributeError, TypeError):
            logger.warning("an answer of the client cannot be read")

    def _execute_handler(
        self, msg_id: Any, handler: Any, callback: Callable[[Any], None], args: Any = None, kwargs: Any = None
    ) -> None:
        """As pygls does, but what is done is let go: of notifications it keeps each for ever, 2 KB with every edit."""

        def done(future: Any) -> None:
            self._request_futures.pop(msg_id, None)
            callback(future)

        super()._execute_handler(msg_id, handler, done, args, kwargs)

    @lsp_method(types.INITIALIZE)
    def lsp_initialize(self, params: types.InitializeParams) -> Generator[Any, Any, types.InitializeResult]:
        """Begin: the capabilities from the registered features."""
        self.begun = True
        self._server.process_id = params.process_id
        self.client_capabilities = params.capabilities
        encoding = ServerCapabilitiesBuilder.choose_position_encoding(params.capabilities)
        self.position_encoding = str(getattr(encoding, "value", encoding))
        handler = self.fm.features.get(types.INITIALIZE)
        if handler is not None:
            yield handler, (params,), None
        left_out = set() if pulls(params.capabilities) else {types.TEXT_DOCUMENT_DIAGNOSTIC}
        self.server_capabilities = ServerCapabilitiesBuilder(
            self.client_capabilities,
            {*self.fm.features, *self.fm.builtin_features} - left_out,
            self.fm.feature_options,
            list(self.fm.commands),
            types.TextDocumentSyncKind.Incremental,
            None,
            encoding,
        ).build()  # type: ignore[no-untyped-call]
        return types.InitializeResult(capabilities=self.server_capabilities, server_info=self.server_info)

    @lsp_method(types.TEXT_DOCUMENT_DID_OPEN)
    def lsp_text_document__did_open(self, params: types.DidOpenTextDocumentParams) -> Any:
        """To the store of our own."""
        yield self.fm.features[types.TEXT_DOCUMENT_DID_OPEN], (params,), None

    @lsp_method(types.TEXT_DOCUMENT_DID_CHANGE)
    def lsp_text_document__did_change(self, params: types.DidChangeTextDocumentParams) -> Any:
        """To the store of our own."""
        yield self.fm.features[types.TEXT_DOCUMENT_DID_CHANGE], (params,), None

    @lsp_method(types.TEXT_DOCUMENT_DID_CLOSE)
    def lsp_text_document__did_close(self, params: types.DidCloseTextDocumentParams) -> Any:
        """To the store of our own."""
        yield self.fm.features[types.TEXT_DOCUMENT_DID_CLOSE], (params,), None

    @lsp_method(types.WORKSPACE_DID_CHANGE_WORKSPACE_FOLDERS)
    def lsp_workspace__did_change_workspace_folders(self, params: types.DidChangeWorkspaceFoldersParams) -> Any:
        """To the folders of our own."""
        yield self.fm.features[types.WORKSPACE_DID_CHANGE_WORKSPACE_FOLDERS], (params,), None
