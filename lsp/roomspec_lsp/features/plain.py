"""What is said of a word for clients that show no Markdown."""

import re

_MARKS = re.compile(r"\*\*|`|\\$")


def plain(markdown: str) -> str:
    """The words without their marks; code as it stands."""
    lines, in_code = [], False
    for line in markdown.split("\n"):
        if line.startswith("```"):
            in_code = not in_code
        else:
            lines.append(line if in_code else _MARKS.sub("", line))
    return "\n".join(lines)
