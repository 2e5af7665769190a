"""The cut list: every piece of every plan, with what it is cut from."""

from collections.abc import Iterator

from msgspec import Struct

from roomspec.reports.hand_over.given import HandOver


class CutRow(Struct, frozen=True):
    """One piece. `pattern` counts from 1 within its plan, `set_number` from 1 in a numbered set; lengths in nanometres.

    `alike` panels are cut so; `width` is None for trims and battens.
    """

    kind: str
    item: str
    pool: str
    piece: str
    pattern: int
    alike: int
    stock: int
    length: int
    width: int | None
    set_number: int | None

    @property
    def names(self) -> tuple[str, str, str, str]:
        """Kind, item, pool and piece."""
        return self.kind, self.item, self.pool, self.piece


def cut_list_rows(given: HandOver) -> Iterator[CutRow]:
    """By kind, item, pool and pattern, in the order along the panel."""
    for pooled in given.made.taken.plans:
        wide, numbered = pooled.kind == "panel", pooled.plan.sets is not None
        for number, pattern in enumerate(pooled.plan.patterns, start=1):
            for strip in pattern.strips:
                for rip in strip.rips:
                    for name in rip.names:
                        yield CutRow(
                            pooled.kind,
                            pooled.item,
                            pooled.pool,
                            name,
                            number,
                            pattern.count,
                            pattern.stock,
                            rip.length,
                            rip.width if wide else None,
                            pattern.number + 1 if numbered else None,
                        )
