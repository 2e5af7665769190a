"""What people and programs read: values in, text out.

Takes: findings, checks, a snapshot's estimate. Gives: text, JSON, and the JSON Schemas of it (`*.schema.json`).
Deliberately does not: compute a figure, open a file, know whether somebody is looking.
"""
