"""How many columns of a terminal a text takes, and its shape for one line of it."""

import unicodedata

TAB = 4


def columns(text: str) -> int:
    """Columns that the text takes: two for wide letters, none for accents that join the letter before."""
    return len(text) if text.isascii() else sum(map(_columns_of, text))


def shown(text: str) -> str:
    """The text without tabs, byte order marks, and letters that would move the cursor or hide: these show as `�`."""
    return text if text.isascii() and text.isprintable() else "".join(map(_shown_letter, text))


def _columns_of(letter: str) -> int:
    if unicodedata.category(letter) in ("Mn", "Me"):
        return 0
    return 2 if unicodedata.east_asian_width(letter) in "WF" else 1


def _shown_letter(letter: str) -> str:
    if letter == "\t":
        return " " * TAB
    if letter == "\ufeff":
        return ""
    # Control and format characters (Cc, Cf: among them those that turn the direction of writing), line breaks (Zl, Zp).
    return "\ufffd" if unicodedata.category(letter) in ("Cc", "Cf", "Cs", "Zl", "Zp") else letter
