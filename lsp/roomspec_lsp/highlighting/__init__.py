"""Colours for editors that have only a table to go by: a line's states, in each editor's own notation.

Takes: the parser's tables. Gives: the files under `lsp/editors` that are not written by hand. Deliberately does not:
run in the server, look at more than one line at a time, or know a keyword or a unit of its own.
"""
