"""The names of token types; apart from the tokens themselves, since they are told at the very beginning."""

TYPES = ("keyword", "enumMember", "variable", "number", "string", "operator", "comment")
"""A line's own words, words chosen among few, names, quantities and dates, texts, `x` and commas, comments."""
MODIFIERS = ("declaration",)
"""On the name that a heading gives."""
COMMANDS = ("roomspec.estimate", "roomspec.order", "roomspec.drawings", "roomspec.preview")
"""Each takes the address of a file of the job. They give the estimate and the order as text, the drawings as a list of
`name`, `title` and `svg`; the last opens the job's live page and gives its address."""
