"""The order, the price, and what of both and of the rooms has changed, on the live page."""

from decimal import Decimal

from roomspec.reports.comparison.compare import compare
from roomspec.reports.comparison.side import Side
from roomspec.reports.comparison.variation import variation
from roomspec.reports.estimate_sections import estimate_sections
from roomspec.reports.paper.numerals import numerals_of
from roomspec.reports.paper.page import block_lines, part_lines
from roomspec.reports.paper.sheet import Block, Points, Table, Words
from roomspec.reports.preview.piece import Piece, text
from roomspec.reports.section import Section, used_columns
from roomspec.reports.wording import money_text, number_of


def cost_pieces(opened: Side, now: Side, old: bool) -> tuple[Piece, ...]:
    """Changes, price and order; `opened` is what the page was opened with, `old` true while others are being made."""
    return _changes(opened, now, old), *_sections(now, old)


def waiting_pieces(told: str) -> tuple[Piece, ...]:
    """The same before there is an estimate; `told` says why there is none."""
    return tuple(Piece(name, f"<p>{text(told)}</p>", text(told)) for name in ("changes", "price", "order"))


def _changes(opened: Side, now: Side, old: bool) -> Piece:
    out = compare(opened, now)
    if not out.changed:
        return Piece("changes", "<p>Nothing.</p>", "nothing", old)
    sheet = variation(out, numerals_of(out.units, out.currency, now.job.terms.locale))
    html = "\n".join(line for part in sheet.parts for line in part_lines(part, 3))
    net = next((step.amount.difference for step in out.price if step.name == "total"), Decimal(0))
    if net is None:
        told = "another currency"
    else:
        told = f"{'+' if net > 0 else '-' if net < 0 else ''}{money_text(abs(net))} {out.currency}"
    rooms = sum(len(room.names) for room in out.rooms)
    return Piece("changes", html, text(f"{told}, {number_of(rooms, 'room')}" if rooms else told), old)


def _sections(now: Side, old: bool) -> tuple[Piece, ...]:
    found = {section.title: section for section in estimate_sections(now.out)}
    currency, price = now.out.job.currency, now.out.price
    items = number_of(len(now.out.order), "item")
    told = {
        "price": f"{money_text(price.total)} {currency} with tax, {money_text(price.net)} without",
        "order": f"{items}, {money_text(price.material)} {currency}",
    }
    return tuple(
        Piece(name, _html(found.get(name.capitalize()), now.out.findings.error), text(words), old)
        for name, words in told.items()
    )


def _html(section: Section | None, errors: int) -> str:
    """A section of the estimate as it is printed, without its heading."""
    wrong = f"The job has {number_of(errors, 'error')}: what these lines should say is not in the figures."
    blocks: list[Block] = [Words(wrong, loud=True)] if errors else []
    if section is None:
        return "\n".join(block_lines((*blocks, Words("Nothing yet."))))
    used = used_columns(section)
    rows = tuple(row if len(row) == 1 else tuple(row[at] for at in used) for row in section.rows)
    heads = tuple(section.heads[at] for at in used)
    align = "".join("r" if section.align[at] == "r" else "l" for at in used)
    blocks += [Words(sentence) for sentence in section.before]
    blocks += [Table(section.title, heads, align, rows, section.totals)] if rows else []
    blocks += [Points(section.items)] if section.items else []
    return "\n".join(block_lines(blocks))
