"""The title block at the foot of a sheet, and the key on its left.

ISO 7200:2004 (from memory): legal owner, title, identification number, date of issue, sheet number, creator, approval,
document type; 180 wide. Owner, creator and approval are left for a hand, for a job does not say them. The date is the
job's.
"""

from msgspec import Struct

from roomspec.reports.drawing.drawn import Drawn, Text
from roomspec.reports.drawing.lettering import SMALL, shortened, width_of
from roomspec.reports.drawing.pen import NARROW, WIDE, pen
from roomspec.reports.drawing.sheet import BLOCK_HEIGHT, Paper
from roomspec.reports.drawing.svg import element, number

WIDTH = 180.0
_ROW = BLOCK_HEIGHT / 3


class Titles(Struct, frozen=True):
    """What a title block says."""

    job: str
    kind: str
    room: str
    part: str
    identity: str
    date: str
    sheet: int
    sheets: int


def draw_title_block(paper: Paper, titles: Titles, scale: str) -> Drawn:
    """The block, in the lower right corner of the frame."""
    dated = max(25.0, width_of(titles.date, SMALL) + 2.1)
    named = min(max(24.0, width_of(titles.part, SMALL) + 2.1), 152.0 - min(102.0, width_of(titles.room, SMALL) + 2.1))
    rows = (
        (("Legal owner", "", 32.0), ("Drawn by", "", 28.0), ("Job", titles.job, 120.0)),
        (("Room", titles.room, 152.0 - named), ("Part", titles.part, named), ("Approved by", "", 28.0)),
        (
            ("Document", titles.kind, 34.0),
            ("Drawing number", titles.identity, 91.0 - dated),
            ("Date", titles.date, dated),
            ("Scale", scale, 18.0),
            ("Sheet", f"{titles.sheet} / {titles.sheets}", 23.0),
            ("Paper", paper.name, 14.0),
        ),
    )
    frame = paper.frame
    left, top = frame.right - WIDTH, frame.bottom - BLOCK_HEIGHT
    path = [f"M{number(left)} {number(top)}V{number(frame.bottom)}"]
    texts: list[Text] = []
    for at, row in enumerate(rows):
        x, y = left, top + at * _ROW
        if at:
            path.append(f"M{number(left)} {number(y)}H{number(frame.right)}")
        for place, (caption, value, width) in enumerate(row):
            if place:
                path.append(f"M{number(x)} {number(y)}V{number(y + _ROW)}")
            texts.append(Text(x + 1.0, y + 3.3, caption, kind="caption"))
            if value:
                texts.append(Text(x + 1.0, y + 7.5, shortened(value, SMALL, width - 2.0), kind="title"))
            x += width
    lines = element("path", {"class": "block", **pen(NARROW), "d": "".join(path)})
    over = element("path", {**pen(WIDE), "d": f"M{number(frame.left)} {number(top)}H{number(frame.right)}"})
    return Drawn((lines, over), tuple(texts))
