"""The automaton as a TextMate grammar: a rule for each state, which holds the rules that its words lead to.

Every rule ends with its line, so that no line colours the next.
"""

import json
from collections.abc import Sequence
from itertools import groupby
from typing import Any

from roomspec_lsp.highlighting.automaton import State, Step, automaton
from roomspec_lsp.highlighting.patterns import (
    ANY_STRING,
    BLANKS,
    COMMENT,
    LOOSE_WORD,
    loose_number,
    pattern,
    words,
)

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
        "loose": {"begin": f"(?=[^{BLANKS}\\r\\n])", "end": "$", "patterns": _loose()},
    }
    for number, state in enumerate(automaton()):
        repository[f"s{number}"] = {"patterns": _patterns(state)}
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


def _patterns(state: State) -> list[dict[str, Any]]:
    rules: list[dict[str, Any]] = [{"include": "#comment"}]
    for target, steps in groupby(sorted(state.keywords, key=lambda step: step.target), key=lambda step: step.target):
        same = list(steps)
        rules.append(_rule(same, words(step.word for step in same), target))
    rules.extend(_rule([step], pattern(step.terminal), step.target) for step in state.values)
    return [*rules, {"include": "#loose"}]


def _rule(steps: Sequence[Step], begin: str, target: int) -> dict[str, Any]:
    scope = SCOPES[steps[0].kind, steps[0].declares]
    return {
        "begin": begin,
        "beginCaptures": {"0": {"name": scope}},
        "end": "$",
        "patterns": [{"include": f"#s{target}"}],
    }


def _loose() -> list[dict[str, Any]]:
    return [
        {"include": "#comment"},
        {"match": ANY_STRING, "name": SCOPES["string", False]},
        {"match": LOOSE_WORD},
        {"match": loose_number(), "name": SCOPES["number", False]},
    ]
