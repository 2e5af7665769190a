"""Which clients ask for findings, and which are told of them."""

from lsprotocol import types


def pulls(client: types.ClientCapabilities) -> bool:
    """True for a client that asks for the findings of its open files, and asks again when it is told to.

    One that cannot be told would never hear of a mistake that a change in another file has made: it is pushed to.
    """
    document, workspace = client.text_document, client.workspace
    if document is None or document.diagnostic is None:
        return False
    again = workspace is not None and workspace.diagnostics is not None and workspace.diagnostics.refresh_support
    return bool(again) or document.publish_diagnostics is None
