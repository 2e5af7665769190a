"""Texts inside XML 1.0 (5th edition, 2.2 and 2.4)."""

import re

_UNSPEAKABLE = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
_MARKS = str.maketrans(
    {"&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "\t": "&#9;", "\n": "&#10;", "\r": "&#13;"}
)


def marked_up(text: str) -> str:
    """The text as it stands in an element or between the quotation marks of an attribute.

    A character that no XML document may hold becomes U+FFFD.
    """
    return _UNSPEAKABLE.sub("\ufffd", text).translate(_MARKS)
