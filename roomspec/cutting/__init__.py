"""Cutting blanks from panels and lengths.

Takes: blanks (bounding sizes, with the factory edges and ends they need), the stock and the kerf.
Gives: a plan by patterns, each piece named once, and a lower bound that no float has a part in.
Deliberately does not: know rooms, split a run that is longer than its stock, add spare or packs, price an order.
"""
