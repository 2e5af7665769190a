"""Words longer than a line: where they may be broken, so that none leaves the paper."""

import re
import unicodedata

LONGEST = 20
"""Letters of a word that always has room; longer ones are names that nobody would hyphenate."""
BREAK = "\N{ZERO WIDTH SPACE}"
"""Where a line may end, in a text that has no markup for it."""
_LONG = re.compile(rf"[^\s-]{{{LONGEST + 1},}}")


def breakable(text: str) -> tuple[str, ...]:
    """The text in parts, between which a line may end; accents stay with their letter. Joined, they are the text."""
    parts = []
    end = 0
    for word in _LONG.finditer(text):
        inside = [at for at in range(word.start() + 1, word.end()) if unicodedata.category(text[at])[0] != "M"]
        for at in inside:
            parts.append(text[end:at])
            end = at
    return (*parts, text[end:])
