"""The live page: takes a snapshot and its estimate, gives named pieces of HTML and the pictures in them.

Deliberately does not: serve them, watch files, or know which page shows what.
"""
