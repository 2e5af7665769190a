"""Sheets: paper, frame, scale, the areas that a drawing may use, and the finished SVG.

ISO 5457:1999 (from memory): A4 and A3, a border of 20 on the left and 10 elsewhere, the frame 0.7 wide. ISO 5455:1979:
scales of 1, 2 or 5 times a power of ten.
"""

from collections.abc import Iterable

from msgspec import Struct

from roomspec.reports.drawing.boxes import Box
from roomspec.reports.drawing.drawn import Drawn, Text, lettering
from roomspec.reports.drawing.lettering import LARGE
from roomspec.reports.drawing.pen import EXTRA_WIDE, pen
from roomspec.reports.drawing.svg import NAMESPACE, Value, element, escaped, number

SCALES = (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000, 100_000, 1_000_000)
BLOCK_HEIGHT = 26.0
"""Of the title block, which lies along the foot of the sheet."""
WARNING_HEIGHT = 9.0
"""Of the line that says that a sheet is not for issue."""
GAP = 3.0


class Paper(Struct, frozen=True):
    """A sheet lying on its long side; a column of tables is `column` wide, a band of them `band` high."""

    name: str
    width: float
    height: float
    column: float
    band: float

    @property
    def frame(self) -> Box:
        """The drawing's frame."""
        return Box(20.0, 10.0, self.width - 10.0, self.height - 10.0)


A4 = Paper("A4", 297.0, 210.0, 66.0, 44.0)
A3 = Paper("A3", 420.0, 297.0, 84.0, 64.0)
PAPERS = (A4, A3)


def field(paper: Paper, warned: bool) -> Box:
    """What lies within the frame over the title block, and under the warning where there is one."""
    frame = paper.frame
    top = frame.top + GAP + (WARNING_HEIGHT if warned else 0.0)
    return Box(frame.left + GAP, top, frame.right - GAP, frame.bottom - BLOCK_HEIGHT - GAP)


def finish_sheet(
    paper: Paper, title: str, about: str, drawn: Drawn, errors: int, data: dict[str, Value] | None = None
) -> str:
    """The whole SVG: white paper, frame, drawing; a warning where the job has errors. Ends with a line break."""
    frame = paper.frame
    edge = element("rect", {"width": paper.width, "height": paper.height, "fill": "white"})
    border = element(
        "rect",
        {
            "class": "frame", "x": frame.left, "y": frame.top, "width": frame.right - frame.left,
            "height": frame.bottom - frame.top, **pen(EXTRA_WIDE),
        },
    )  # fmt: skip
    drawn += _warning(paper, errors)
    told: dict[str, Value] = {
        "xmlns": NAMESPACE,
        "width": f"{number(paper.width)}mm",
        "height": f"{number(paper.height)}mm",
        "viewBox": f"0 0 {number(paper.width)} {number(paper.height)}",
        "role": "img",
        **(data or {}),
    }
    named = (element("title", {}, (escaped(title),)), element("desc", {}, (escaped(about),)) if about else "")
    return element("svg", told, _lines((*named, edge, border, *drawn.shapes, lettering(drawn.texts)))) + "\n"


def _warning(paper: Paper, errors: int) -> Drawn:
    if not errors:
        return Drawn()
    frame = paper.frame
    text = f"NOT FOR ISSUE: the job has {errors} error{'' if errors == 1 else 's'}"
    return Drawn((), (Text((frame.left + frame.right) / 2, frame.top + 8.0, text, LARGE, "middle", kind="warning"),))


def _lines(parts: Iterable[str]) -> Iterable[str]:
    """Each part on a line of its own, so that a change shows as a short difference."""
    for part in parts:
        if part:
            yield "\n" + part
    yield "\n"
