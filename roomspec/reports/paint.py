"""Words dressed for a terminal, or left as they are."""

from collections.abc import Callable

Paint = Callable[[str, str], str]
"""Takes words and what they are (error, warning, hint, help, place, strong, faint); gives them dressed."""

# ECMA-48 (5th edition, 1991) 8.3.117, select graphic rendition: 1 bold, 2 faint, 31 red, 33 yellow, 34 blue, 36 cyan.
_CODES = {
    "error": "1;31",
    "warning": "1;33",
    "hint": "1;34",
    "help": "1;36",
    "place": "1",
    "strong": "1",
    "faint": "2",
}


def plain(words: str, what: str) -> str:  # noqa: ARG001 - one shape for all paints
    """The words as they are."""
    return words


def coloured(words: str, what: str) -> str:
    """The words between a terminal's codes for colour."""
    return f"\x1b[{_CODES[what]}m{words}\x1b[0m" if words else words
