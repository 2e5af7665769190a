"""Lettering: heights, how wide a text is at most, and texts broken or shortened to a width.

A height is that of the capitals (ISO 3098-1: 2.5, 3.5, 5 ...; from memory); letters are sized so that Liberation Sans,
whose capitals are 0.688 of its size, has them. A text's width is what it would take in the wider of DejaVu Sans and
Liberation Sans, letter by letter, so that no common sans-serif runs over the boxes that labels are placed by.
"""

import re
from functools import lru_cache

SMALL, MEDIUM, LARGE = 2.5, 3.5, 5.0
"""Heights in millimetres of paper; nothing is smaller."""

FONT = "'Liberation Sans', Arial, Helvetica, 'DejaVu Sans', sans-serif"
SIZE = 1.455
"""Size of the letters over the height of their capitals: 1 / 0.688, no less when rounded to the micrometre."""
LEADING = 1.7
"""From line to line, over the height of capitals."""

_HUNDREDTHS = {
    28: "'ijl", 30: "I", 32: " ,.·’", 34: "/:;\\|", 36: "f", 37: "-\u202f", 40: "()[]t", 41: "!²", 42: "r", 46: '"',
    50: "*J`°", 52: "“”", 53: "sz", 55: "c", 56: "?L_–", 58: "k", 60: "vxy", 62: "FTaeoé", 64: "$0123456789bdghnpqu{}",
    67: "EKPSY", 69: "ABVXZ", 73: "CR", 74: "U", 75: "N", 76: "H", 78: "&DG", 79: "OQ", 82: "w", 84: "#+<=>^~×≤",
    87: "M", 96: "%", 97: "½¼¾", 98: "m", 99: "W", 100: "—…→", 102: "@",
}  # fmt: skip
_WIDTHS = {letter: hundredths / 100 for hundredths, letters in _HUNDREDTHS.items() for letter in letters}
_WITHIN_SIZES = re.compile(r"(?<=[0-9'\"×]) (?=[0-9×])|(?<=[0-9]) (?=(?:kg|lb|mm)\b)")
_UNKNOWN = 1.1
"""A letter of another script: an em and a bit."""
_BELOW = frozenset("gjpqy,;()[]{}Q|@_$/\\")


def width_of(text: str, height: float) -> float:
    """The most that a text of this height takes, in millimetres."""
    return _ems(text) * height * SIZE


@lru_cache(maxsize=20_000)
def _ems(text: str) -> float:
    return sum(_WIDTHS.get(letter, _UNKNOWN) for letter in text)


def above(text: str, height: float) -> float:
    """How far a text reaches above its base line at most."""
    return height * (1.11 if all(letter in _WIDTHS for letter in text) else 1.5)


def below(text: str, height: float) -> float:
    """How far a text reaches below its base line at most."""
    return height * (0.02 if all(letter in _WIDTHS and letter not in _BELOW for letter in text) else 0.36)


def shortened(text: str, height: float, width: float) -> str:
    """The text, or its beginning and `…` where it is wider than `width`."""
    if width_of(text, height) <= width:
        return text
    while text and width_of(text + "…", height) > width:
        text = text[:-1]
    return text.rstrip() + "…"


def wrapped(text: str, height: float, width: float) -> tuple[str, ...]:
    """The text on as many lines as it needs; words wider than a line are broken."""
    lines: list[str] = []
    line = ""
    for word in words_of(text):
        tried = f"{line} {word}" if line else word
        if width_of(tried, height) <= width:
            line = tried
            continue
        if line:
            lines.append(line)
        while width_of(word, height) > width and len(word) > 1:
            part = _first_part(word, height, width)
            lines.append(part)
            word = word[len(part) :]
        line = word
    return (*lines, line) if line else tuple(lines)


def words_of(text: str) -> list[str]:
    """What a line may be broken between: never within a size such as `2333 × 250` or `7' 10 1/2"` or before a unit."""
    return [word.replace("\0", " ") for word in _WITHIN_SIZES.sub("\0", " ".join(text.split(" "))).split(" ")]


def _first_part(word: str, height: float, width: float) -> str:
    at = 1
    while at < len(word) and width_of(word[: at + 1], height) <= width:
        at += 1
    return word[:at]
