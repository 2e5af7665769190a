"""A document in Typst's markup: all text in strings, so that none of it is read as markup."""

from collections.abc import Iterable, Iterator

from roomspec.reports.paper.long_words import BREAK, LONGEST, breakable
from roomspec.reports.paper.sheet import Block, Drawing, Facts, Part, Points, Sheet, Table, Words
from roomspec.reports.width import columns, shown

LETTER, CAPITAL, BOLD, GAP, NARROW, PAGE = 0.5, 0.75, 0.62, 0.9, 12.0, 57.0
"""In em: a letter on the average, a capital, a bold one, what parts two columns, a column that is never shortened, the
page."""

_SETTING = """\
#set text(size: 9pt)
#set par(leading: 0.55em, spacing: 0.8em)
#set heading(numbering: none)
#show heading.where(level: 1): set text(size: 16pt)
#show heading.where(level: 2): set text(size: 12pt)
#show heading.where(level: 3): set text(size: 10pt)
#show heading.where(level: 2): it => {
  block(above: 1.6em, below: 0.8em, width: 100%, stroke: (top: 1pt), inset: (top: 4pt), it)
}
#let tick = box(width: 8pt, height: 8pt, stroke: 0.8pt, baseline: 1pt)
#let ticked(..items) = for item in items.pos() {
  grid(columns: (14pt, 1fr), row-gutter: 3pt, tick, item)
  v(2pt)
}
#let low = (x: 3pt, y: 2.6pt)
#set table(stroke: (rest: none, bottom: 0.4pt + luma(60%)), inset: low)
#let head(words) = table.cell(inset: low, stroke: (bottom: 1pt), strong(words))
#let over(columns, words) = table.cell(colspan: columns, inset: low, fill: luma(92%), strong(words))
#let nothing(columns) = table.cell(colspan: columns, inset: 0pt, none)
#let above(title, words, drawing) = {
  place(dx: 20mm, dy: 3.6mm, grid(columns: 2, column-gutter: 8pt, align: bottom, title, text(size: 7.5pt, words)))
  let whole = block(height: 100% + 9mm, drawing)
  place(dy: 9mm, block(clip: true, width: 100%, height: 100% - 9mm, place(dy: -9mm, whole)))
}
#let caption(columns, words) = table.cell(colspan: columns, inset: (x: 0pt, bottom: 4pt), stroke: none, strong(words))
"""


def sheet_markup(sheet: Sheet) -> str:
    """The document as Typst 0.12 or later sets it on A4: header, footer and all."""
    head = f"{sheet.kind}: {sheet.title}"
    stamp = f'align(center, text(weight: "bold", size: 11pt, {_string(sheet.stamp)}))' if sheet.stamp else "none"
    foot = f'text(size: 7.5pt, {_words(head)} + h(1fr) + counter(page).display("1 / 1", both: true))'
    lines = [
        f"#set document(title: {_string(head)}, date: none)",
        f"#set text(lang: {_string(sheet.language[:2])})",
        f'#set page(paper: "a4", margin: (x: 14mm, top: 17mm, bottom: 16mm), header: {stamp}, footer: context {foot})',
        _SETTING,
        f"#heading(level: 1, {_words(sheet.kind)})",
        f"#text(size: 11pt, {_words(sheet.title)})",
        *_block(sheet.facts),
    ]
    for part in sheet.parts:
        lines += _part(part, 2)
    return "\n".join(lines) + "\n"


def _part(part: Part, level: int) -> Iterator[str]:
    if part.new_page:
        yield "#pagebreak(weak: true)"
    heading = f"heading(level: {level}, {_words(part.title)})"
    match part.blocks:
        case (Words(text), Drawing() as first, *rest):
            # A drawing has a page of its own: its heading stands there, in the margin, not alone on the page before.
            yield _drawing(first, heading, _words(text))
        case rest:
            yield f"#{heading}"
    for block in rest:
        yield from _block(block)
    for inner in part.parts:
        yield from _part(inner, level + 1)


def _block(block: Block) -> Iterator[str]:
    match block:
        case Words(text, loud):
            yield f"#par({f'strong({_words(text)})' if loud else _words(text)})"
        case Points(items, way):
            name = {"numbered": "enum", "tick": "ticked"}.get(way, "list")
            yield f"#{name}({_listed(items)})"
        case Facts(rows):
            cells = _listed(cell for row in rows for cell in row)
            yield f"#grid(columns: (auto, 1fr), column-gutter: 10pt, row-gutter: 4pt, {cells})"
        case Drawing():
            yield _drawing(block)
        case Table():
            yield _table(block)


def _drawing(drawing: Drawing, *above: str) -> str:
    """A page of the drawing's own size; what stands `above` it is in its margin, of which so much is cut off."""
    page = f'paper: "{drawing.paper.lower()}", flipped: true, margin: 0mm, header: none, footer: none'
    name = f"alt: {_string(drawing.shows)}"
    picture = f'image(bytes({_quoted(drawing.svg)}), format: "svg", width: 100%, {name})'
    content = f"above({', '.join(above)}, {picture})" if above else picture
    return f"#page({page}, {content})"


def _table(table: Table) -> str:
    wide = len(table.heads)
    widths = ", ".join(_widths(table))
    align = ", ".join("right" if letter == "r" else "left" for letter in table.align)
    heads = ", ".join(f"head({_words(head)})" for head in table.heads)
    rows = []
    for at, row in enumerate(table.rows):
        if len(row) == 1:
            # Stands on each page on which its rows do, never alone at the foot of one.
            rows.append(f"table.header(level: 2, over({wide}, {_words(row[0])}))")
        elif at >= len(table.rows) - table.totals:
            if at == len(table.rows) - table.totals:
                rows.append(f"table.header(level: 2, repeat: false, nothing({wide})), table.hline(stroke: 1pt)")
            rows.append(", ".join(f"strong({_words(cell)})" for cell in row))
        else:
            rows.append(_listed(row))
    body = ",\n  ".join([f"table.header(caption({wide}, {_words(table.caption)}), {heads})", *rows])
    room = "inset: (x: 3pt, y: 7pt), " if "w" in table.align else ""
    return f"#table(columns: ({widths},), align: ({align},), {room}\n  {body})"


def _widths(table: Table) -> Iterator[str]:
    """Columns as wide as their longest text, those that are too wide for the page sharing what the others leave.

    Typst could measure them, and takes half as long again over a long table.
    """
    rows = [row for row in table.rows if len(row) > 1]
    cells = [max(map(_em, {row[at] for row in rows}), default=0) for at in range(len(table.heads))]
    widest = [max(cell, len(head) * BOLD) + GAP for cell, head in zip(cells, table.heads, strict=True)]
    narrow = sum(width for width in widest if width <= NARROW)
    too_wide = sum(widest) > PAGE
    for width, letter in zip(widest, table.align, strict=True):
        shared = letter == "w" or (too_wide and (width > NARROW or narrow > PAGE))
        yield f"{width:.2f}fr" if shared else f"{width:.2f}em"


def _em(text: str) -> float:
    """About as wide as the text is set: `W` a whole em, `a` half of one."""
    wide = sum(map(str.isupper, text)) + sum(map(text.count, "WMmw@%"))
    return columns(text) * LETTER + wide * (CAPITAL - LETTER)


def _listed(texts: Iterable[str]) -> str:
    return ", ".join(map(_words, texts))


def _words(text: str) -> str:
    """A string that is set: a line may end within a word that is longer than one."""
    return _string(text) if len(text) <= LONGEST else _quoted(BREAK.join(breakable(shown(text))))


def _string(text: str) -> str:
    """A string of Typst's."""
    return _quoted(shown(text))


def _quoted(text: str) -> str:
    """As it is, line breaks and all."""
    escaped = text.replace("\\", "\\\\").replace('"', '\\"').replace("\n", "\\n").replace("\r", "\\r")
    return f'"{escaped}"'
