"""Exact quantities: lengths in nanometres, areas, money, and pint only at the public edge."""
