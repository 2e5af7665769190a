"""Writes tables.py from room.lark: `python -m roomspec_grammar.write_tables` after every change of the grammar.

The only file that imports lark: lark takes seconds to build the parser, a reader takes milliseconds to load its tables.
"""

import json
import re
from functools import lru_cache
from hashlib import sha256
from pathlib import Path
from typing import Any

from lark import Lark
from lark.grammar import NonTerminal, Rule, Terminal
from lark.lexer import PatternRE, PatternStr, TerminalDef

_HERE = Path(__file__).parent
_KEYWORD = re.compile(r"[a-z0-9][\w-]*")
_MARK = re.compile(r"^MARK: /(.*)/$", re.MULTILINE)
_HEADER = '''# ruff: noqa: E501
"""The parser's tables as JSON. Generated from room.lark by `python -m roomspec_grammar.write_tables`."""

TABLES = r"""
'''


def grammar_text() -> str:
    """The grammar as it stands."""
    return (_HERE / "room.lark").read_text("utf-8")


@lru_cache(1)
def marks() -> str:
    """The class of the characters that go on a word besides `\\w`, as a pattern."""
    found = _MARK.search(grammar_text())
    assert found is not None
    return found[1]


def _word_ends() -> str:
    return rf"(?![\w.\-]|{marks()})"


def whole_word(terminal: TerminalDef) -> None:
    """lark's `edit_terminals`: a keyword is a whole word, and is taken before a name."""
    if isinstance(terminal.pattern, PatternStr) and _KEYWORD.fullmatch(terminal.pattern.value):
        terminal.pattern = PatternRE(re.escape(terminal.pattern.value) + _word_ends())
        terminal.priority = 1


@lru_cache(2)
def lark_parser(strict: bool = False) -> Lark:
    """lark's own parser with its contextual lexer, for starts `file` and `line`: what the tables are made from, and
    what they are tested against. `strict` raises where the grammar has a conflict or two terminals match one text."""
    return Lark(
        grammar_text(),
        parser="lalr",
        lexer="contextual",
        start=["file", "line"],
        keep_all_tokens=True,
        edit_terminals=whole_word,
        propagate_positions=False,
        strict=strict,
    )


def built_tables(lark: Lark) -> dict[str, Any]:
    """The tables as JSON values; `roomspec.syntax.tables.Tables` says what they mean."""
    keywords = _keywords(lark)
    parser: Any = lark.parser
    table = parser.parser._parse_table
    order = _order(table, "line")
    actions = [_actions(table, state) for state in order]
    used = {target for row in actions for target in row.values() if isinstance(target, Rule)}
    rules = sorted(used, key=lambda rule: (rule.origin.name, rule.order, str(rule)))
    number = {rule: place for place, rule in enumerate(rules)}
    rows = [{symbol: _action(target, number, order) for symbol, target in row.items()} for row in actions]
    return {
        "grammar": sha256(grammar_text().encode()).hexdigest(),
        "end": order[table.end_states["line"]],
        "keywords": keywords,
        "marks": marks(),
        "patterns": _patterns(lark, keywords),
        **_statements(lark.rules, keywords),
        "rules": [[rule.origin.name, len(rule.expansion), _shape(rule)] for rule in rules],
        "states": rows,
    }


def _keywords(lark: Lark) -> dict[str, str]:
    ends = re.escape(_word_ends())
    found = {t.name: re.fullmatch(f"(.*){ends}", t.pattern.value) for t in lark.terminals}
    return {name: re.sub(r"\\(.)", r"\1", match[1]) for name, match in sorted(found.items()) if match}


def _patterns(lark: Lark, keywords: dict[str, str]) -> dict[str, str]:
    """Each pattern once; a terminal of the same shape as an earlier one has that one's name in its place."""
    named: dict[str, str] = {}
    patterns: dict[str, str] = {}
    read_marks = marks().encode().decode("unicode_escape")
    for terminal in sorted(lark.terminals, key=lambda terminal: terminal.name):
        if terminal.name not in keywords and terminal.name not in (*lark.ignore_tokens, "_NL"):
            # lark reads the escapes of the class; escaped again, no character of it joins the one before it.
            pattern = terminal.pattern.to_regexp().replace(read_marks, marks())
            patterns[terminal.name] = named.get(pattern, pattern)
            named.setdefault(pattern, terminal.name)
    return patterns


def _order(table: Any, start: str) -> dict[int, int]:
    """The states that `start` reaches, numbered as they are met: lark's own numbers differ from run to run."""
    order = {table.start_states[start]: 0}
    waiting = [*order]
    for state in waiting:
        for target in _actions(table, state).values():
            if not isinstance(target, Rule) and target not in order:
                order[target] = len(order)
                waiting.append(target)
    return order


def _actions(table: Any, state: int) -> dict[str, Any]:
    """A state's row: a state or a rule for each symbol. A line on its own ends at its end, not at a line end."""
    return {symbol: target for symbol, (_, target) in sorted(table.states[state].items()) if symbol != "_NL"}


def _action(target: Any, number: dict[Rule, int], order: dict[int, int]) -> int:
    return ~number[target] if isinstance(target, Rule) else order[target]


def _shape(rule: Rule) -> int:
    """0: a node; 1: its parts join the node around it; 2: a node unless it has one part, which then stands for it."""
    if rule.origin.name.startswith("_"):
        return 1
    return 2 if rule.options.expand1 else 0


def _statements(rules: list[Rule], keywords: dict[str, str]) -> dict[str, Any]:
    """Which heading holds which lines, and the words that each statement may begin with."""
    by_origin: dict[str, list[Rule]] = {}
    for rule in rules:
        by_origin.setdefault(rule.origin.name, []).append(rule)

    def first_words(symbol: Any) -> set[str]:
        if isinstance(symbol, Terminal):
            return {keywords[symbol.name]}
        return {word for rule in by_origin[symbol.name] for word in first_words(rule.expansion[0])}

    def named(name: str) -> list[str]:
        return sorted({rule.expansion[0].name for rule in by_origin.get(name, []) if len(rule.expansion) == 1})

    blocks = sorted(name for name in by_origin if name.endswith("_block"))
    kinds = {block.removesuffix("_block"): block for block in blocks}
    return {
        "heads": {k: sorted({rule.expansion[0].name for rule in by_origin[block]}) for k, block in kinds.items()},
        "holds": {k: named(f"{k}_line") for k in kinds},
        "parts": {
            k: sorted(p for p, b in kinds.items() if b in _reached(block, by_origin)) for k, block in kinds.items()
        },
        "words": {name: sorted(first_words(NonTerminal(name))) for name in named("line")},
    }


def _reached(block: str, by_origin: dict[str, list[Rule]]) -> set[str]:
    """The nonterminals in a block's rules, through lark's own helpers for repetition."""
    found: set[str] = set()
    waiting = [block]
    while waiting:
        for rule in by_origin[waiting.pop()]:
            for symbol in rule.expansion:
                if isinstance(symbol, NonTerminal) and symbol.name not in found:
                    found.add(symbol.name)
                    if symbol.name.startswith("__"):
                        waiting.append(symbol.name)
    return found


def tables_text(tables: dict[str, Any]) -> str:
    """A module with one row of a table on a line, so that a changed grammar shows as changed lines."""
    parts = []
    for name, value in tables.items():
        if isinstance(value, list | dict):
            rows = value if isinstance(value, list) else [{key: item} for key, item in value.items()]
            lines = [json.dumps(row, ensure_ascii=False, separators=(",", ":")) for row in rows]
            opening, closing = "[]" if isinstance(value, list) else "{}"
            inner = lines if isinstance(value, list) else [line[1:-1] for line in lines]
            parts.append(f'"{name}":{opening}\n' + ",\n".join(inner) + f"\n{closing}")
        else:
            parts.append(f'"{name}":{json.dumps(value)}')
    body = ",\n".join(parts)
    return f'{_HEADER}{{{body}}}\n"""\n'


def main() -> None:
    """Write the module."""
    (_HERE / "tables.py").write_text(tables_text(built_tables(lark_parser())), "utf-8")


if __name__ == "__main__":
    main()
