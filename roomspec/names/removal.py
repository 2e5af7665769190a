"""The mend that removes a definition that nothing uses: its lines, and the comment that stands over it."""

from roomspec.diagnostics.diagnostic import Edit, Fix, Origin
from roomspec.names.index import Definition


def removal(definition: Definition, lines: list[str]) -> tuple[Fix, ...]:
    """The mend, from the lines of the definition's file without their ends; none where a line in it cannot be used.

    Comments directly above the heading go with it, unless the file begins with them, and deeper ones directly below;
    and so do the blank lines after it, or before it where nothing follows, so that no gap is left.
    """
    if definition.block.problems:
        return ()
    heading = definition.line + definition.block.head.line
    first, last = heading, heading + definition.block.text.count("\n")
    column = _column(lines[heading])
    while first > 0 and _is_comment(lines[first - 1]) and _column(lines[first - 1]) == column:
        first -= 1
    first = heading if first == 0 else first
    while last + 1 < len(lines) and _is_comment(lines[last + 1]) and _column(lines[last + 1]) > column:
        last += 1
    after = last
    while after + 1 < len(lines) and not lines[after + 1].strip():
        after += 1
    if after + 1 >= len(lines):
        while first > 0 and not lines[first - 1].strip():
            first -= 1
    elif first == 0 or not lines[first - 1].strip():
        last = after
    file = f"file {definition.path}"
    edits = tuple(Edit(Origin(file, at, 0, len(lines[at]) + 1), "") for at in range(first, last + 1))
    return (Fix(f"remove {definition.kind} {definition.name}", edits),)


def _is_comment(line: str) -> bool:
    return line.lstrip().startswith("#")


def _column(line: str) -> int:
    return len(line) - len(line.lstrip())
