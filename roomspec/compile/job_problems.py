"""What is said of a job as a whole."""

from collections.abc import Iterable, Iterator

from roomspec.compile.draft import read_draft
from roomspec.compile.terms import MadeTerms
from roomspec.diagnostics.diagnostic import Diagnostic, Edit, Fix, Origin
from roomspec.model.job import Job
from roomspec.model.product import Panel, Product
from roomspec.names.index import Names


def jobless(names: Names) -> tuple[Diagnostic, ...]:
    """Rooms without a job have no terms; the fix writes a heading at the top of the first file."""
    if not names.trees:
        return ()
    at = Origin(f"file {names.trees[0].path}", 0, 0, 0)
    fix = Fix("begin with a job", (Edit(at, "job new-job\n\n"),))
    message = "no file here holds a job; its terms are taken as their defaults"
    help_ = 'begin a file with a line such as `job kestrel-house "Kestrel House"`'
    return (Diagnostic("missing-line", "error", message, at, help_, fixes=(fix,)),)


def of_patterns(names: Names) -> Iterator[Diagnostic]:
    """The problems of patterns, used or not."""
    for (kind, _), definition in names.defined.items():
        if kind == "pattern":
            yield from read_draft(definition.block, definition.units).problems


def too_wide_a_kerf(job: Job, terms: MadeTerms | None, known: Iterable[Product]) -> Iterator[Diagnostic]:
    """A kerf as wide as the narrowest panel that is used leaves nothing of it; `known` are all that could be."""
    if not any(isinstance(one, Panel) and one.cover <= job.terms.kerf for one in known):
        return
    panels = {finish.panel for room in job.rooms for wall in room.walls for finish in wall.finishes}
    narrowest = min(panels, key=lambda panel: (panel.cover, panel.name), default=None)
    if terms is not None and narrowest is not None and job.terms.kerf >= narrowest.cover:
        at = terms.origins.at(("kerf",))
        yield Diagnostic("impossible-value", "error", f"the kerf is as wide as panel {narrowest.name}", at)
