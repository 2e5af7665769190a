"""What people and programs read: values in, text or bytes out.

Takes: findings, checks, a snapshot's estimate. Gives: text, JSON, drawings, documents, and the JSON Schemas
(`*.schema.json`).
Deliberately does not: compute a figure, open a file, know whether somebody is looking.
"""
