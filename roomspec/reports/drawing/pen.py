"""Pens: line widths and kinds of line.

ISO 128-23:1999 gives drawings for building three widths in the ratio 1 : 2 : 4 and a fourth for symbols and lettering;
line group 0.35 is 0.18, 0.35, 0.7 and 0.25 (from memory). Dashes are multiples of the width: ISO 128-2:2020, table 1
(from memory).
"""

from roomspec.reports.drawing.svg import Value

NARROW, WIDE, EXTRA_WIDE, SYMBOL = 0.18, 0.35, 0.7, 0.25
"""Millimetres of paper."""

CONTINUOUS: tuple[float, ...] = ()
DASHED = (12.0, 3.0)
CHAIN = (24.0, 3.0, 0.5, 3.0)
"""Long dashes and dots."""
DOUBLE_CHAIN = (24.0, 3.0, 0.5, 3.0, 0.5, 3.0)


def pen(width: float, kind: tuple[float, ...] = CONTINUOUS, scale: int = 1, fill: str = "none") -> dict[str, Value]:
    """Attributes of a line; `scale` where it is drawn in a group that divides by it."""
    found: dict[str, Value] = {"fill": fill, "stroke": "black", "stroke-width": width * scale}
    if kind:
        found["stroke-dasharray"] = " ".join(f"{part * width * scale:.3f}" for part in kind)
    if len(kind) > 2:
        found["stroke-linecap"] = "round"  # else a dot is too small to be seen
    return found
