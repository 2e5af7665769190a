"""The key at the foot of a sheet: what its lines mean, those that stand on it only."""

from collections.abc import Iterable

from roomspec.reports.drawing.drawn import Drawn, Text
from roomspec.reports.drawing.hatch import hatching
from roomspec.reports.drawing.lettering import SMALL, width_of
from roomspec.reports.drawing.pen import CHAIN, DASHED, DOUBLE_CHAIN, EXTRA_WIDE, NARROW, WIDE, pen
from roomspec.reports.drawing.sheet import BLOCK_HEIGHT, Paper
from roomspec.reports.drawing.svg import element, number
from roomspec.reports.drawing.title_block import WIDTH
from roomspec.reports.drawing.wet_hatch import PITCHES

_ROWS, _ROW, _SAMPLE = 5, 4.7, 10.0
_MEANING = {
    "trim": "trim",
    "direct": "water falls here",
    "splash": "water splashes",
    "batten": "batten",
    "behind": "batten behind",
    "stud": "stud",
    "start": "start, direction",
    "end": "end joint",
    "open": "opening",
    "lined": "lined, not to scale",
    "raised": "box over the floor",
    "offcut": "left over",
    "waste": "waste",
}
_LINES = {
    "trim": (EXTRA_WIDE, ()),
    "batten": (NARROW, DASHED),
    "behind": (NARROW, CHAIN),
    "stud": (NARROW, DOUBLE_CHAIN),
    "end": (WIDE, ()),
    "open": (NARROW, ()),
    "lined": (WIDE, ()),
    "raised": (NARROW, DOUBLE_CHAIN),
}


def draw_key(paper: Paper, used: Iterable[str], sentence: str) -> Drawn:
    """The samples of what is used, in the order of `_MEANING`, and a sentence on the units."""
    frame = paper.frame
    top, left, right = frame.bottom - BLOCK_HEIGHT, frame.left + 2.0, frame.right - WIDTH - 2.0
    wanted = set(used)
    entries = [name for name in _MEANING if name in wanted]
    shapes: list[str] = []
    texts = [Text(left, frame.bottom - 1.8, sentence, kind="key")]
    x = left
    for start in range(0, len(entries), _ROWS):
        column = entries[start : start + _ROWS]
        wide = _SAMPLE + 2.0 + max(width_of(_MEANING[name], SMALL) for name in column)
        if x + wide > right:
            break
        for at, name in enumerate(column):
            y = top + 2.6 + at * _ROW * 0.87
            shapes.append(_sample(name, x, y))
            texts.append(Text(x + _SAMPLE + 2.0, y + 1.3, _MEANING[name], kind="key"))
        x += wide + 3.0
    return Drawn(tuple(shapes), tuple(texts))


def _sample(name: str, x: float, y: float) -> str:
    if name in _LINES:
        width, kind = _LINES[name]
        return element("path", {**pen(width, kind), "d": f"M{number(x)} {number(y)}h{number(_SAMPLE)}"})
    box = [(x, y - 1.5), (x + _SAMPLE, y - 1.5), (x + _SAMPLE, y + 1.5), (x, y + 1.5)]
    if name == "start":
        mark = f"M{number(x)} {number(y + 1.4)}h3l-1.5 -2.8Z"
        arrow = f"M{number(x + 3.6)} {number(y)}h6.4l-2.2 -0.6v1.2l2.2 -0.6"
        return element("path", {**pen(NARROW, fill="black"), "d": mark + arrow})
    outline = f"M{number(x)} {number(y - 1.5)}h{number(_SAMPLE)}v3h{number(-_SAMPLE)}Z"
    frame = element("path", {**pen(NARROW), "d": outline})
    pitch = PITCHES.get(name, 2.0)
    kind = DASHED if name == "splash" else ()
    rising = name != "waste"
    return frame + element("path", {**pen(NARROW, kind), "d": hatching([box], min(pitch, 3.5), rising)})
