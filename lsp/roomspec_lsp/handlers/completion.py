"""Completion and signature help."""

from typing import TYPE_CHECKING

from lsprotocol import types

from roomspec_lsp.convert import length_in_units, place_of, units
from roomspec_lsp.features.completion import KEYWORD, NAME, SNIPPET, UNIT, VALUE, Offer, offers
from roomspec_lsp.handlers.seeing import markup, view_of

if TYPE_CHECKING:
    from roomspec_lsp.server import RoomServer

_KINDS = {
    KEYWORD: types.CompletionItemKind.Keyword,
    NAME: types.CompletionItemKind.Class,
    UNIT: types.CompletionItemKind.Unit,
    VALUE: types.CompletionItemKind.Value,
    SNIPPET: types.CompletionItemKind.Snippet,
}


def complete(ls: "RoomServer", params: types.CompletionParams) -> types.CompletionList | None:
    """What may stand at the cursor."""
    view = view_of(ls, params.text_document.uri)
    if view is None:
        return None
    line, column = place_of(view.lines, params.position, ls.encoding)
    can = ls.client.text_document.completion if ls.client.text_document else None
    snippets = bool(can and can.completion_item and can.completion_item.snippet_support)
    text = view.lines.line(line)
    end = types.Position(line, units(text, column, ls.encoding))
    items = []
    for number, offer in enumerate(offers(view, line, column)):
        if offer.kind == SNIPPET and not snippets:
            continue
        start = types.Position(line, units(text, offer.start, ls.encoding))
        items.append(_item(offer, types.Range(start, end), number, snippets, params.text_document.uri))
    return types.CompletionList(is_incomplete=False, items=items)


def _item(offer: Offer, place: types.Range, number: int, snippets: bool, uri: str) -> types.CompletionItem:
    hole = snippets and offer.text == '""'
    has_holes = hole or offer.kind == SNIPPET
    return types.CompletionItem(
        label=offer.label if offer.label != '""' else '"text"',
        kind=_KINDS[offer.kind],
        detail=offer.detail or None,
        sort_text=f"{offer.rank}{number:05}",
        filter_text=offer.label if offer.kind == SNIPPET else offer.text,
        text_edit=types.TextEdit(place, '"$1"' if hole else offer.text),
        insert_text_format=types.InsertTextFormat.Snippet if has_holes else types.InsertTextFormat.PlainText,
        data={"uri": uri, "of": offer.of, "name": offer.label},
    )


def resolve(ls: "RoomServer", item: types.CompletionItem) -> types.CompletionItem:
    """Its documentation, made only for the one looked at."""
    from roomspec_lsp.features.pages import page_of

    data = item.data if isinstance(item.data, dict) else {}
    view = view_of(ls, str(data.get("uri", "")))
    text = page_of(view, str(data.get("of", "")), str(data.get("name", ""))) if view is not None else ""
    if text:
        can = ls.client.text_document.completion if ls.client.text_document else None
        shown = can.completion_item.documentation_format if can and can.completion_item else None
        item.documentation = markup(text, shown)
    return item


def signature(ls: "RoomServer", params: types.SignatureHelpParams) -> types.SignatureHelp | None:
    """What the line may go on with.

    On a word only where a person asks: eglot asks wherever the cursor comes to stand, says no context, and shows what
    the word means only where it hears nothing here.
    """
    from roomspec_lsp.features.signature import signature_at

    view = view_of(ls, params.text_document.uri)
    if view is None:
        return None
    line, column = place_of(view.lines, params.position, ls.encoding)
    on_word = bool(view.lines.line(line)[column : column + 1].strip())
    found = None if on_word and params.context is None else signature_at(view, line, column)
    if found is None:
        return None
    start = length_in_units(f"{found.before} ", "utf-16")
    parameter = types.ParameterInformation((start, start + length_in_units(found.wanted, "utf-16")))
    label = f"{found.before} {found.wanted}"
    can = ls.client.text_document.signature_help if ls.client.text_document else None
    said = can.signature_information.documentation_format if can and can.signature_information else None
    help_ = markup(f"`{found.example}`", said)
    shown = types.SignatureInformation(label, help_, [parameter], 0)
    return types.SignatureHelp([shown], 0, 0)
