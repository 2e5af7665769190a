"""The comparison: everything that differs between two jobs as estimated."""

from roomspec.reports.comparison.compare_lines import (
    changed_extras,
    changed_labour,
    changed_order,
    changed_quantities,
    monies,
)
from roomspec.reports.comparison.compare_rooms import changed_rooms
from roomspec.reports.comparison.comparison_json import Comparison, FactChange, PriceChange, Sentences, SideOut
from roomspec.reports.comparison.facts import Fact, changes_between, facts_of_product, facts_of_terms
from roomspec.reports.comparison.side import Side

STEPS = (
    "material", "labour", "extras", "cost", "overhead", "profit", "contingency", "net", "tax", "total",
)  # fmt: skip


def compare(old: Side, new: Side) -> Comparison:
    """What changed from the old to the new; nothing where both say the same."""
    same_money = old.out.job.currency == new.out.job.currency
    lists = (
        _job(old, new),
        changed_rooms(old, new),
        changed_quantities(old.out, new.out),
        changed_order(old.out, new.out, same_money),
        changed_labour(old.out, new.out, same_money),
        changed_extras(old.out, new.out, same_money),
        _price(old, new, same_money),
        _products(old, new),
    )
    said = (
        _sentences(old.out.assumptions, new.out.assumptions),
        _sentences(old.out.exclusions, new.out.exclusions),
    )
    return Comparison(
        "roomspec/comparison",
        1,
        any(lists) or any(one.added or one.removed for one in said),
        new.out.job.currency,
        new.out.job.units,
        _side(old),
        _side(new),
        *lists,
        *said,
    )


def _side(side: Side) -> SideOut:
    job = side.out.job
    return SideOut(side.called, job.name, job.title, job.date, side.out.findings.error)


def _job(old: Side, new: Side) -> tuple[FactChange, ...]:
    """Its name, title, gang and terms."""
    before, after = (
        {"name": ("", side.job.name), "title": ("", side.job.title)}
        | ({"gang": ("", side.job.gang.name)} if side.job.gang else {})
        | facts_of_terms(side.job.terms)
        for side in (old, new)
    )
    return changes_between(before, after)


def _products(old: Side, new: Side) -> tuple[FactChange, ...]:
    """What the catalogues say of products that both order: lengths, price, weight, time to acclimatise."""
    before: dict[str, Fact] = {}
    after: dict[str, Fact] = {}
    for key, product in new.products.items():
        if key in old.products:
            before |= facts_of_product(old.products[key])
            after |= facts_of_product(product)
    return changes_between(before, after)


def _price(old: Side, new: Side, same_money: bool) -> tuple[PriceChange, ...]:
    """All steps where any differs, so that the claim can be followed to its end."""
    before, after = ([getattr(side.out.price, step) for step in STEPS] for side in (old, new))
    if before == after and same_money:
        return ()
    return tuple(
        PriceChange(step, monies(one, two, same_money)) for step, one, two in zip(STEPS, before, after, strict=True)
    )


def _sentences(old: tuple[str, ...], new: tuple[str, ...]) -> Sentences:
    return Sentences(
        tuple(text for text in new if text not in set(old)), tuple(text for text in old if text not in set(new))
    )
