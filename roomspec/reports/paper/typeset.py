"""A document in Typst's markup: all text in strings, so that none of it is read as markup."""

from collections.abc import Iterator

from roomspec.reports.paper.sheet import Block, Drawing, Facts, Part, Points, Sheet, Table, Words
from roomspec.reports.width import shown

LETTER, BOLD, GAP, NARROW, PAGE = 0.5, 0.62, 0.9, 12.0, 57.0
"""In em: a letter on the average, a bold one, what parts two columns, a column that is never shortened, the page."""

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
#set table(stroke: (rest: none, bottom: 0.4pt + luma(60%)), inset: (x: 3pt, y: 2.6pt))
#let tick = box(width: 8pt, height: 8pt, stroke: 0.8pt, baseline: 1pt)
#let ticked(..items) = for item in items.pos() {
  grid(columns: (14pt, 1fr), row-gutter: 3pt, tick, item)
  v(2pt)
}
#let captioned(caption, body) = {
  block(above: 1em, below: 0.5em, sticky: true, strong(caption))
  body
}
"""


def sheet_markup(sheet: Sheet) -> str:
    """The document as Typst 0.12 or later sets it on A4: header, footer and all."""
    head = f"{sheet.kind}: {sheet.title}"
    stamp = f'align(center, text(weight: "bold", size: 11pt, {_string(sheet.stamp)}))' if sheet.stamp else "none"
    foot = f'text(size: 7.5pt, {_string(head)} + h(1fr) + counter(page).display("1 / 1", both: true))'
    lines = [
        f"#set document(title: {_string(head)}, date: none)",
        f"#set text(lang: {_string(sheet.language[:2])})",
        f'#set page(paper: "a4", margin: (x: 14mm, top: 17mm, bottom: 16mm), header: {stamp}, footer: context {foot})',
        _SETTING,
        f"#heading(level: 1, {_string(sheet.kind)})",
        f"#text(size: 11pt, {_string(sheet.title)})",
        *_block(sheet.facts),
    ]
    for part in sheet.parts:
        lines += _part(part, 2)
    return "\n".join(lines) + "\n"


def _part(part: Part, level: int) -> Iterator[str]:
    if part.new_page:
        yield "#pagebreak(weak: true)"
    yield f"#heading(level: {level}, {_string(part.title)})"
    for block in part.blocks:
        yield from _block(block)
    for inner in part.parts:
        yield from _part(inner, level + 1)


def _block(block: Block) -> Iterator[str]:
    match block:
        case Words(text, loud):
            yield f"#par({f'strong({_string(text)})' if loud else _string(text)})"
        case Points(items, way):
            name = {"numbered": "enum", "tick": "ticked"}.get(way, "list")
            yield f"#{name}({_strings(items)})"
        case Facts(rows):
            cells = _strings(cell for row in rows for cell in row)
            yield f"#grid(columns: (auto, 1fr), column-gutter: 10pt, row-gutter: 4pt, {cells})"
        case Drawing(svg, shows, paper):
            picture = f'image(bytes({_string(svg, whole=True)}), format: "svg", width: 100%, alt: {_string(shows)})'
            page = f'paper: "{paper.lower()}", flipped: true, margin: 0mm, header: none, footer: none'
            yield f"#page({page}, {picture})"
        case Table():
            yield _table(block)


def _table(table: Table) -> str:
    wide = len(table.heads)
    columns = ", ".join(_widths(table))
    align = ", ".join("right" if letter == "r" else "left" for letter in table.align)
    heads = ", ".join(f"strong({_string(head)})" for head in table.heads)
    rows = []
    for at, row in enumerate(table.rows):
        if len(row) == 1:
            rows.append(f"table.cell(colspan: {wide}, fill: luma(92%), strong({_string(row[0])}))")
        elif at >= len(table.rows) - table.totals:
            above = "table.hline(stroke: 1pt), " if at == len(table.rows) - table.totals else ""
            rows.append(above + ", ".join(f"strong({_string(cell)})" for cell in row))
        else:
            rows.append(_strings(row))
    body = ",\n  ".join([f"table.header({heads})", "table.hline(stroke: 1pt)", *rows])
    return f"#captioned({_string(table.caption)}, table(columns: ({columns},), align: ({align},),\n  {body}))"


def _widths(table: Table) -> Iterator[str]:
    """Columns as wide as their longest text, those that are too wide for the page sharing what the others leave.

    Typst could measure them, and takes half as long again over a long table.
    """
    rows = [row for row in table.rows if len(row) > 1]
    cells = [max((len(row[at]) for row in rows), default=0) for at in range(len(table.heads))]
    widest = [max(cell * LETTER, len(head) * BOLD) + GAP for cell, head in zip(cells, table.heads, strict=True)]
    narrow = sum(width for width in widest if width <= NARROW)
    too_wide = sum(widest) > PAGE
    for width, letter in zip(widest, table.align, strict=True):
        shared = letter == "w" or (too_wide and (width > NARROW or narrow > PAGE))
        yield f"{width:.2f}fr" if shared else f"{width:.2f}em"


def _strings(texts: Iterator[str] | tuple[str, ...]) -> str:
    return ", ".join(map(_string, texts))


def _string(text: str, whole: bool = False) -> str:
    """A string of Typst's; `whole` keeps line breaks and the like, as an SVG needs them."""
    kept = text if whole else shown(text)
    escaped = kept.replace("\\", "\\\\").replace('"', '\\"').replace("\n", "\\n").replace("\r", "\\r")
    return f'"{escaped}"'
