"""A document as one HTML page: nothing is fetched, nothing runs, every text is escaped."""

from base64 import b64encode
from collections.abc import Iterable, Iterator, Sequence

from roomspec.reports.markup import marked_up
from roomspec.reports.paper.long_words import BREAK, LONGEST, breakable
from roomspec.reports.paper.sheet import Block, Drawing, Facts, Part, Points, Sheet, Table, Words
from roomspec.reports.paper.style import STYLE, page_boxes
from roomspec.reports.width import shown

POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src data:"
"""What a browser may do for this page: use the style and the pictures in it, and nothing else."""
CONTENTS = 4
"""From so many parts on, the page begins with a list of them."""


def sheet_page(sheet: Sheet) -> str:
    """The document as HTML (the living standard); ends with a line break."""
    head = f"{sheet.kind}: {sheet.title}"
    lines = [
        "<!DOCTYPE html>",
        f'<html lang="{_text(sheet.language)}">',
        "<head>",
        '<meta charset="utf-8">',
        f'<meta http-equiv="Content-Security-Policy" content="{_text(POLICY)}">',
        '<meta name="viewport" content="width=device-width, initial-scale=1">',
        f"<title>{_text(f'{sheet.stamp}: {head}' if sheet.stamp else head)}</title>",
        f"<style>\n{STYLE}{page_boxes(BREAK.join(breakable(shown(head))), sheet.stamp)}</style>",
        "</head>",
        "<body>",
        *_stamped(sheet.stamp),
        "<header>",
        f"<h1>{_text(sheet.kind)}</h1>",
        f'<p class="of">{_text(sheet.title)}</p>',
        *_block(sheet.facts),
        "</header>",
        *_contents(sheet.parts),
        "<main>",
        *(line for part in sheet.parts for line in _part(part, 2)),
        "</main>",
        "</body>",
        "</html>",
    ]
    return "\n".join(lines) + "\n"


def part_lines(part: Part, level: int) -> list[str]:
    """One part of a document as lines of HTML, its heading of that level."""
    return list(_part(part, level))


def block_lines(blocks: Iterable[Block]) -> list[str]:
    """Blocks without a heading as lines of HTML."""
    return [line for block in blocks for line in _block(block)]


def _text(text: str) -> str:
    return marked_up(shown(text))


def _cell(text: str) -> str:
    """A text in a table, which is no narrower than its longest word: longer ones may be broken anywhere."""
    return _text(text) if len(text) <= LONGEST else "<wbr>".join(map(marked_up, breakable(shown(text))))


def _stamped(stamp: str) -> Iterator[str]:
    if stamp:
        yield f'<aside class="stamp">{_text(stamp)}</aside>'
        yield f'<div class="on-every-page" aria-hidden="true">{_text(stamp)}</div>'


def _contents(parts: Sequence[Part]) -> Iterator[str]:
    named = [part for part in parts if part.anchor]
    if len(named) >= CONTENTS:
        yield '<nav aria-label="Contents">'
        yield "<ul>"
        yield from (f'<li><a href="#{_text(part.anchor)}">{_text(part.title)}</a></li>' for part in named)
        yield "</ul>"
        yield "</nav>"


def _part(part: Part, level: int) -> Iterator[str]:
    marks = (f' id="{_text(part.anchor)}"' if part.anchor else "") + (' class="new-page"' if part.new_page else "")
    yield f"<section{marks}>"
    heading = f"<h{level}>{_text(part.title)}</h{level}>"
    match part.blocks:
        case (Words() as words, Drawing(svg, shows, paper), *rest):
            # In print its heading stands on the first drawing's page, not alone on the page before.
            yield f'<div class="first {_text(paper.lower())}">'
            yield heading
            yield from _block(words)
            yield from _figure("<figure>", svg, shows)
            yield "</div>"
        case rest:
            yield heading
    for block in rest:
        yield from _block(block)
    for inner in part.parts:
        yield from _part(inner, level + 1)
    yield "</section>"


def _block(block: Block) -> Iterator[str]:
    match block:
        case Words(text, loud):
            yield ('<p class="loud">' if loud else "<p>") + f"{_text(text)}</p>"
        case Points(items, way):
            name = "ol" if way == "numbered" else "ul"
            yield f'<{name} class="tick">' if way == "tick" else f"<{name}>"
            yield from (f"<li>{_text(item)}</li>" for item in items)
            yield f"</{name}>"
        case Facts(rows):
            yield "<dl>"
            yield from (f"<dt>{_text(term)}</dt><dd>{_text(what)}</dd>" for term, what in rows)
            yield "</dl>"
        case Drawing(svg, shows, paper):
            yield from _figure(f'<figure class="{_text(paper.lower())}">', svg, shows)
        case Table():
            yield from _table(block)


def _figure(tag: str, svg: str, shows: str) -> Iterator[str]:
    """As a picture of its own, no name inside it can meet a name of the page or of the next drawing."""
    yield tag
    yield f'<img src="data:image/svg+xml;base64,{b64encode(svg.encode()).decode()}" alt="{_text(shows)}">'
    yield f"<figcaption>{_text(shows)}</figcaption>"
    yield "</figure>"


def _table(table: Table) -> Iterator[str]:
    # A table wider than the screen scrolls by itself, also by the keyboard.
    yield f'<div class="wide" role="group" tabindex="0" aria-label="{_text(table.caption)}">'
    yield "<table>"
    yield f"<caption>{_text(table.caption)}</caption>"
    yield "<thead>"
    heads = (f'<th scope="col"{_way(at, table)}>{_cell(head)}</th>' for at, head in enumerate(table.heads))
    yield f"<tr>{''.join(heads)}</tr>"
    yield "</thead>"
    end = len(table.rows) - table.totals
    yield "<tbody>"
    for at, row in enumerate(table.rows[:end]):
        if len(row) == 1:
            yield from ("</tbody>", "<tbody>") if at else ()
            yield f'<tr><th scope="rowgroup" colspan="{len(table.heads)}">{_cell(row[0])}</th></tr>'
        else:
            yield _row(row, table)
    yield "</tbody>"
    if table.totals:
        yield from ("<tfoot>", *(_row(row, table) for row in table.rows[end:]), "</tfoot>")
    yield "</table>"
    yield "</div>"


def _row(row: tuple[str, ...], table: Table) -> str:
    first = f'<th scope="row"{_way(0, table)}>{_cell(row[0])}</th>' if row[0] else "<td></td>"
    return f"<tr>{first}{''.join(f'<td{_way(at, table)}>{_cell(row[at])}</td>' for at in range(1, len(row)))}</tr>"


def _way(at: int, table: Table) -> str:
    return f' class="{table.align[at]}"' if table.align[at] in "rw" else ""
