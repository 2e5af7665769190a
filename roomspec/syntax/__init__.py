"""The reading of room texts.

Takes: a text. Gives: its tree with the problems in it, quantities read exactly, the text in the one format.
Deliberately does not: read files, look up names, know what a statement means.
"""
