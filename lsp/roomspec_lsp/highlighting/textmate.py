"""The automaton as a TextMate grammar: a rule for each state, which holds the rules that its words lead to.

Every rule ends with its line, so that no line colours the next.
"""

import json
from typing import Any

from roomspec_lsp.highlighting.automaton import automaton
from roomspec_lsp.highlighting.patterns import COMMENT, SOLID, Way, loose, ways

SCOPES = {
    ("keyword", False): "keyword.control.roomspec",
    ("variable", True): "entity.name.type.roomspec",
    ("variable", False): "variable.other.roomspec",
    ("number", False): "constant.numeric.roomspec",
    ("string", False): "string.quoted.double.roomspec",
    ("enumMember", False): "variable.other.enummember.roomspec",
    ("operator", False): "keyword.operator.roomspec",
    ("comment", False): "comment.line.number-sign.roomspec",
}
"""The scope of each kind of token; the second tells whether a heading gives the name."""


def textmate() -> dict[str, Any]:
    """The grammar as JSON values."""
    repository: dict[str, Any] = {
        "comment": {"match": COMMENT, "name": SCOPES["comment", False]},
        "loose": {"begin": f"(?={SOLID})", "end": "$", "patterns": [_loose(*found) for found in loose()]},
    }
    for number, state in enumerate(automaton()):
        rules = [_rule(way) for way in ways(state)]
        repository[f"s{number}"] = {"patterns": [{"include": "#comment"}, *rules, {"include": "#loose"}]}
    return {
        "name": "Room",
        "scopeName": "source.roomspec",
        "fileTypes": ["room"],
        "patterns": [{"include": "#s0"}],
        "repository": repository,
    }


def textmate_text() -> str:
    """The file: a state on a line, so that a changed grammar shows as changed lines."""
    whole = textmate()
    states = ",\n".join(f"    {json.dumps(name)}: {_row(rule)}" for name, rule in whole.pop("repository").items())
    head = json.dumps(whole, indent=2, ensure_ascii=False).removesuffix("\n}")
    return f'{head},\n  "repository": {{\n{states}\n  }}\n}}\n'


def _row(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False)


def _rule(way: Way) -> dict[str, Any]:
    return {
        "begin": way.pattern,
        "beginCaptures": {"0": {"name": SCOPES[way.kind, way.declares]}},
        "end": "$",
        "patterns": [{"include": f"#s{way.target}"}],
    }


def _loose(pattern: str, kind: str) -> dict[str, Any]:
    return {"match": pattern} | ({"name": SCOPES[kind, False]} if kind else {})
