"""Code actions: mends and rewritings, made anew from the file whatever the client sends along."""

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

from lsprotocol import types

from roomspec_lsp.convert import place_of
from roomspec_lsp.features.mends import ALL, Mend, mend_all, mends_of
from roomspec_lsp.features.view import View
from roomspec_lsp.handlers.findings import diagnostic
from roomspec_lsp.handlers.seeing import found_in, view_of, workspace_edit

if TYPE_CHECKING:
    from roomspec_lsp.server import RoomServer

KINDS = ("quickfix", "refactor.extract", "refactor.rewrite", "source.fixAll")


def code_actions(ls: "RoomServer", params: types.CodeActionParams) -> list[types.CodeAction]:
    """What can be done at a range; only of the kinds that are asked for."""
    uri = params.text_document.uri
    view = view_of(ls, uri)
    if view is None:
        return []
    first, _ = place_of(view.lines, params.range.start, ls.encoding)
    last, _ = place_of(view.lines, params.range.end, ls.encoding)
    only = [str(getattr(kind, "value", kind)) for kind in params.context.only or ()]
    mends = _mends(ls, uri, view, first, last, only)
    return [_action(ls, uri, mend) for mend in mends if _wanted(mend.kind, only)]


def _mends(ls: "RoomServer", uri: str, view: View, first: int, last: int, only: list[str]) -> Iterator[Mend]:
    from roomspec_lsp.features.rewriting import rewritings
    from roomspec_lsp.features.units import conversions

    found = found_in(ls, uri)
    yield from mends_of(view, found, first, last)
    everything = mend_all(view, found)
    if everything is not None and (not only or _wanted(ALL, only)):
        yield everything
    if not only or any(kind.startswith("refactor") for kind in only):
        yield from rewritings(view, first)
        if first == 0 or "refactor" in " ".join(only):
            yield from conversions(view)


def _wanted(kind: str, only: Iterable[str]) -> bool:
    only = tuple(only)
    return not only or any(kind == one or kind.startswith(f"{one}.") or not one for one in only)


def _action(ls: "RoomServer", uri: str, mend: Mend) -> types.CodeAction:
    where = ls.where(uri)
    return types.CodeAction(
        title=mend.title,
        kind=mend.kind,
        diagnostics=[diagnostic(ls, where, mend.found)] if mend.found is not None else None,
        is_preferred=mend.preferred or None,
        edit=workspace_edit(ls, where.repository, mend.edits, mend.hole),
    )
