"""The two joiners that some scripts need inside a word and nobody can see: U+200C and U+200D.

Where Unicode Standard Annex 31 lets them stand in a name (its contexts A1, A2 and B, from memory): U+200C between two
letters of a script that joins them, either after the sign that takes a consonant's vowel. Anywhere else they would make
two names that look alike.
"""

import re
from unicodedata import category, combining

APART, TOGETHER = "\u200c", "\u200d"
ANY = re.compile(f"[{APART}{TOGETHER}]")
_VIRAMA = 9
"""The combining class of the signs that take a vowel away."""
_JOINING = ("\u0600", "\u08ff"), ("\u1800", "\u18af")
"""Arabic, Syriac, N'Ko and Mandaic; Mongolian: from the first to the last of their blocks."""


def well_joined(name: str) -> bool:
    """True where every joiner of the name stands where a script needs one."""
    return all(_needed(name, found.start()) for found in ANY.finditer(name))


def unjoined(name: str) -> str:
    """The name without joiners: names that are alike without them look alike."""
    return ANY.sub("", name)


def _needed(name: str, at: int) -> bool:
    before, after = _without_marks(name[:at]), name[at + 1 : at + 2]
    if not before or not after or category(after)[0] != "L":
        return False
    if any(combining(mark) == _VIRAMA for mark in name[len(before) : at]):
        return True
    return name[at] == APART and _joins(before[-1]) and _joins(after)


def _without_marks(text: str) -> str:
    """The text without the marks at its end."""
    end = len(text)
    while end and category(text[end - 1]) in ("Mn", "Mc"):
        end -= 1
    return text[:end]


def _joins(letter: str) -> bool:
    return category(letter)[0] == "L" and any(first <= letter <= last for first, last in _JOINING)
