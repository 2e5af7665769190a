"""A finding as a value: what is wrong, where, why, and the mend."""

from msgspec import Struct


class Origin(Struct, frozen=True, cache_hash=True, order=True, gc=False):
    """Where a fact is written: a block by its key (`room g.02`, `panel limestone-long`, `file rooms/a.room` for lines
    outside any block), the line counted from the block's first (0), and columns in code points, end exclusive.

    Relative to its block, so that an edit elsewhere in the file leaves it, and what was computed from it, as it is.
    """

    block: str
    line: int
    start: int
    end: int


class Edit(Struct, frozen=True, gc=False):
    """Replace the words at `at` by `text`; an empty place inserts. `text` may hold line breaks."""

    at: Origin
    text: str


class Fix(Struct, frozen=True, gc=False):
    """A mend that an editor or `--fix` can apply. Safe ones change no meaning the writer could have intended.

    One `to_fill_in` writes what only a person who was on site can say: an editor offers it, nothing applies it unasked.
    """

    title: str
    edits: tuple[Edit, ...]
    safe: bool = False
    to_fill_in: bool = False


class Related(Struct, frozen=True, gc=False):
    """Another place that the finding speaks of."""

    message: str
    at: Origin


class Diagnostic(Struct, frozen=True, gc=False):
    """One finding. `message` stands alone in one line; `help` says what to do. severity: error, warning or hint."""

    name: str
    severity: str
    message: str
    at: Origin
    help: str = ""
    related: tuple[Related, ...] = ()
    fixes: tuple[Fix, ...] = ()


class Citation(Struct, frozen=True, gc=False):
    """Where a rule comes from: a published source with its clause, or `common practice`."""

    source: str
    clause: str = ""


SEVERITIES = ("error", "warning", "hint")
"""Worst first."""
