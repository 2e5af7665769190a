"""The automaton as a Sublime Text syntax: a context for each state."""

from roomspec_lsp.highlighting.automaton import automaton
from roomspec_lsp.highlighting.patterns import COMMENT, SOLID, loose, ways
from roomspec_lsp.highlighting.textmate import SCOPES

_HEAD = """%YAML 1.2
---
# Generated from the parser's tables by `python -m roomspec_lsp.highlighting.write`.
name: Room
file_extensions: [room]
scope: source.roomspec
contexts:"""
_END = "{match: '$', pop: true}"


def sublime_text() -> str:
    """The file; a line's states follow each other, and the line's end leads back to the first."""
    rows = [_HEAD]
    for number, state in enumerate(automaton()):
        leads = "set" if number else "push"
        rows.append(f"  s{number}:" if number else "  main:")
        rows.append(f"    - {_END}" if number else "    # A line begins here.")
        rows.append(f"    - {_rule(COMMENT, SCOPES['comment', False])}")
        for way in ways(state):
            rows.append(f"    - {_rule(way.pattern, SCOPES[way.kind, way.declares], f'{leads}: s{way.target}')}")
        rows.append(f"    - {_rule(f'(?={SOLID})', '', f'{leads}: loose')}")
    rows += ["  loose:", f"    - {_END}"]
    rows += [f"    - {_rule(pattern, SCOPES[kind, False] if kind else '')}" for pattern, kind in loose()]
    return "\n".join(rows) + "\n"


def _rule(pattern: str, scope: str, leads: str = "") -> str:
    quoted = pattern.replace("'", "''")
    parts = (f"match: '{quoted}'", scope and f"scope: {scope}", leads)
    return "{" + ", ".join(filter(None, parts)) + "}"
