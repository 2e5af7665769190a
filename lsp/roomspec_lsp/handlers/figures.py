"""What needs the cutting plan, made beside the loop: the estimate and the drawings, and the commands for them."""

from typing import TYPE_CHECKING, Any

from pygls.exceptions import JsonRpcInvalidParams

from roomspec.analysis.gather import decode
from roomspec.analysis.session import Snapshot
from roomspec_lsp.estimating import Figures, Wanted
from roomspec_lsp.handlers.preview import open_preview
from roomspec_lsp.handlers.seeing import view_of
from roomspec_lsp.planner import Planner
from roomspec_lsp.repository import Repository

if TYPE_CHECKING:
    from roomspec_lsp.server import RoomServer


def planner(ls: "RoomServer") -> Planner:
    """The one that makes estimates; when one has come the client is asked to look again."""
    found = ls.kept.get("planner")
    if not isinstance(found, Planner):
        found = ls.kept["planner"] = Planner(lambda: _refresh(ls))
    return found


def estimate_now(ls: "RoomServer", repository: Repository, snapshot: Snapshot) -> Figures | None:
    """The estimate of a job as it is now, where it is there already."""
    return planner(ls).figures(wanted(repository, snapshot, "estimate"))


def wanted(repository: Repository, snapshot: Snapshot, what: str) -> Wanted:
    """The files of a job as the editor has them."""
    overlay = repository.overlay
    files = {tree.path: decode(overlay.read(tree.path) or b"")[0] for tree in snapshot.files}
    return Wanted(snapshot.path, overlay.today(), files, what)


async def execute(ls: "RoomServer", command: str, arguments: tuple[Any, ...]) -> Any:
    """Run a command of ours (features/legend.py); None where there is no job, or it changed meanwhile."""
    name = command.removeprefix("roomspec.")
    uri = arguments[0] if arguments else None
    view = view_of(ls, uri) if isinstance(uri, str) else None
    if view is None:
        raise JsonRpcInvalidParams(f"{command} takes the address of a room file")
    repository = ls.where(str(uri)).repository
    if name == "preview":
        return await open_preview(ls, repository, view.snapshot)
    what = "drawings" if name == "drawings" else "estimate"
    figures = await planner(ls).later(wanted(repository, view.snapshot, what))
    if figures is None:
        return None
    if name == "drawings":
        return [{"name": one.name, "title": one.title, "svg": one.svg} for one in figures.drawings]
    return figures.text if name == "estimate" else "\n".join(figures.order)


def elevation_now(ls: "RoomServer", repository: Repository, snapshot: Snapshot, room: str, part: str) -> str:
    """The drawing of a wall as SVG where it is there already; "" where it is still to be made."""
    figures = planner(ls).figures(wanted(repository, snapshot, "drawings"))
    drawings = figures.drawings if figures is not None else ()
    return next((one.svg for one in drawings if room in one.rooms and one.part == part), "")


def _refresh(ls: "RoomServer") -> None:
    workspace = ls.client.workspace
    if workspace is not None and workspace.code_lens is not None and workspace.code_lens.refresh_support:
        ls.workspace_code_lens_refresh(None, lambda _answer: None)
