"""Pricing: money for what was taken off.

Takes: the job and its take-off. Gives one `Estimate`: the order with packs and costs (`order.py`), labour
(`labour.py`), the price step by step (`build_up.py`), and what it rests on: assumptions, exclusions, cautions.
Deliberately does not: measure anything, decide whether a price is good, print.
"""
