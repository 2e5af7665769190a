"""Semantic tokens, inlay hints, code lenses."""

from typing import TYPE_CHECKING, Any

from lsprotocol import types

from roomspec_lsp.convert import position, units
from roomspec_lsp.features.hints import hints
from roomspec_lsp.features.lenses import lenses
from roomspec_lsp.features.tokens import delta, encoded, tokens
from roomspec_lsp.handlers.figures import estimate_now
from roomspec_lsp.handlers.seeing import shown_range, view_of

if TYPE_CHECKING:
    from roomspec_lsp.server import RoomServer


def tokens_of_document(ls: "RoomServer", params: types.SemanticTokensParams) -> types.SemanticTokens:
    """All tokens of a file."""
    return _remembered(ls, params.text_document.uri, _tokens(ls, params.text_document.uri))


def tokens_of_range(ls: "RoomServer", params: types.SemanticTokensRangeParams) -> types.SemanticTokens:
    """The tokens of some lines."""
    lines = params.range.start.line, params.range.end.line
    return types.SemanticTokens(_tokens(ls, params.text_document.uri, *lines))


def tokens_since(ls: "RoomServer", params: types.SemanticTokensDeltaParams) -> Any:
    """What has changed since an earlier answer; all of it where that is not known any more."""
    uri = params.text_document.uri
    kept: dict[str, types.SemanticTokens] = ls.kept.setdefault("tokens", {})
    before = kept.get(uri)
    new = _remembered(ls, uri, _tokens(ls, uri))
    if before is None or before.result_id != params.previous_result_id:
        return new
    start, count, data = delta(before.data, new.data)
    edits = [types.SemanticTokensEdit(start, count, data)] if count or data else []
    return types.SemanticTokensDelta(edits, new.result_id)


def _remembered(ls: "RoomServer", uri: str, data: list[int]) -> types.SemanticTokens:
    number = ls.kept["tokens number"] = ls.kept.get("tokens number", 0) + 1
    made = types.SemanticTokens(data, str(number))
    ls.kept.setdefault("tokens", {})[uri] = made
    return made


def _tokens(ls: "RoomServer", uri: str, first: int = 0, last: int | None = None) -> list[int]:
    where = ls.where(uri)
    lines = where.repository.overlay.lines(where.path)
    found = []
    for token in tokens(lines, first, last):
        text = lines.line(token.line)
        start = units(text, token.start, ls.encoding)
        length = units(text, token.end, ls.encoding) - start
        found.append((token.line, start, length, token.kind, token.declares))
    return encoded(found)


def inlay_hints(ls: "RoomServer", params: types.InlayHintParams) -> list[types.InlayHint]:
    """Figures beside the lines that are seen."""
    view = view_of(ls, params.text_document.uri)
    if view is None:
        return []
    return [
        types.InlayHint(position(view.lines, hint.line, hint.column, ls.encoding), hint.text, padding_left=True)
        for hint in hints(view, params.range.start.line, params.range.end.line)
    ]


def code_lenses(ls: "RoomServer", params: types.CodeLensParams) -> list[types.CodeLens]:
    """Figures over rooms; over the job its price too, when it is there."""
    view = view_of(ls, params.text_document.uri)
    if view is None:
        return []
    repository = ls.where(params.text_document.uri).repository
    shown = []
    for lens in lenses(view):
        title, command = lens.text, "roomspec.drawings"
        if lens.job:
            figures = estimate_now(ls, repository, view.snapshot)
            more = ("...",) if figures and len(figures.order) > 3 else ()
            price = (*figures.order[:3], *more, figures.total) if figures else ("estimating ...",)
            title, command = "; ".join(filter(None, (lens.text, *price))), "roomspec.estimate"
        shown.append(
            types.CodeLens(
                shown_range(ls, repository, lens.place),
                types.Command(title=title, command=command, arguments=[params.text_document.uri]),
            )
        )
    return shown
