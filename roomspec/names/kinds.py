"""The kinds of things that have names, and the terminals of the grammar that use them."""

DEFINED = (
    "job",
    "room",
    "pattern",
    "panel",
    "trim",
    "adhesive",
    "sealant",
    "support",
    "fixing",
    "sheet",
    "method",
    "gang",
)
"""Headings that define a name; `rooms` defines rooms. Names are one space per kind."""

PRODUCTS = frozenset({"panel", "trim", "adhesive", "sealant", "support", "fixing", "sheet"})

USED = {
    "PATTERN_NAME": "pattern",
    "PANEL_NAME": "panel",
    "METHOD_NAME": "method",
    "GANG_NAME": "gang",
    "ADHESIVE_NAME": "adhesive",
    "SEALANT_NAME": "sealant",
    "SUPPORT_NAME": "support",
    "FIXING_NAME": "fixing",
    "SHEET_NAME": "sheet",
    "TRIM_NAME": "trim",
}
"""Terminal -> the kind that it names. Walls and checks are named too, but not across files."""


def counted(kind: str) -> str:
    """The kind with its article: `a panel`, `an adhesive`."""
    return f"an {kind}" if kind[0] in "aeiou" else f"a {kind}"
