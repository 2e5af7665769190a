"""Two revisions of a job compared: what changed in rooms, quantities, order and price; the variation claim.

Takes: two `side.Side`. Gives: `comparison_json.Comparison`, as text, JSON, and a sheet of `reports/paper`.
Deliberately does not: know where the two came from, judge a change.
"""
