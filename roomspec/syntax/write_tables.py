"""Writes roomspec_grammar/tables.json from room.lark: `python -m roomspec.syntax.write_tables` after every change of it.

The only file that imports lark. Building the parser takes lark seconds; reading the tables takes milliseconds.
"""

import json
import re
from hashlib import sha256
from pathlib import Path
from typing import Any

from lark import Lark
from lark.grammar import NonTerminal, Rule, Terminal
from lark.lexer import PatternRE, PatternStr, TerminalDef

import roomspec_grammar
from roomspec.syntax.tables import grammar_text

_KEYWORD = re.compile(r"[a-z0-9][\w-]*")


def whole_word(terminal: TerminalDef) -> None:
    """lark's `edit_terminals`: a keyword is a whole word, and is taken before a name."""
    if isinstance(terminal.pattern, PatternStr) and _KEYWORD.fullmatch(terminal.pattern.value):
        terminal.pattern = PatternRE(re.escape(terminal.pattern.value) + r"(?![\w.\-])")
        terminal.priority = 1


def lark_parser(*starts: str, strict: bool = False) -> Lark:
    """lark's own parser of the grammar, with its contextual lexer: what the tables are made from and tested against."""
    return Lark(
        grammar_text(),
        parser="lalr",
        lexer="contextual",
        start=list(starts),
        keep_all_tokens=True,
        edit_terminals=whole_word,
        propagate_positions=False,
        strict=strict,
    )


def built_tables() -> dict[str, Any]:
    """The tables as JSON values: see `tables.Tables` for their meaning."""
    whole = lark_parser("file", "line")
    line = lark_parser("line")
    keywords = _keywords(line)
    rules = sorted(line.rules, key=lambda rule: (rule.origin.name, rule.order, str(rule)))
    number = {rule: place for place, rule in enumerate(rules)}
    table = line.parser.parser._parse_table
    order = _order(table, "line")
    rows = [
        {symbol: _action(target, number, order) for symbol, (_, target) in sorted(table.states[state].items())}
        for state in order
    ]
    return {
        "grammar": sha256(grammar_text().encode()).hexdigest(),
        "keywords": keywords,
        "patterns": {t.name: t.pattern.to_regexp() for t in line.terminals if t.name not in keywords},
        "end": order[table.end_states["line"]],
        "rules": [[rule.origin.name, len(rule.expansion), _shape(rule)] for rule in rules],
        "states": rows,
        **_statements(whole.rules, keywords),
    }


def _keywords(lark: Lark) -> dict[str, str]:
    ends = re.escape(r"(?![\w.\-])")
    found = {t.name: re.fullmatch(f"(.*){ends}", t.pattern.value) for t in lark.terminals}
    return {name: re.sub(r"\\(.)", r"\1", match[1]) for name, match in sorted(found.items()) if match}


def _order(table: Any, start: str) -> dict[int, int]:
    """The states that `start` reaches, numbered as they are met: lark's own numbers differ from run to run."""
    order = {table.start_states[start]: 0}
    waiting = [*order]
    for state in waiting:
        for _, (_, target) in sorted(table.states[state].items()):
            if not isinstance(target, Rule) and target not in order:
                order[target] = len(order)
                waiting.append(target)
    return order


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

    def first_words(symbol: Any, seen: frozenset[str] = frozenset()) -> set[str]:
        if isinstance(symbol, Terminal):
            return {keywords[symbol.name]} if symbol.name in keywords else set()
        if symbol.name in seen:
            return set()
        return {
            word for rule in by_origin[symbol.name] for word in first_words(rule.expansion[0], seen | {symbol.name})
        }

    def named(name: str) -> list[str]:
        return sorted({r.expansion[0].name for r in by_origin.get(name, []) if len(r.expansion) == 1})

    blocks = sorted(name for name in by_origin if name.endswith("_block"))
    heads, holds, parts = {}, {}, {}
    for block in blocks:
        kind = block.removesuffix("_block")
        inside = _reached(block, by_origin)
        held = named(f"{kind}_line")
        heads[kind] = sorted({r.expansion[0].name for r in by_origin[block]})
        holds[kind] = held
        parts[kind] = sorted(
            name.removesuffix("_block") for name in inside if name.endswith("_block") and name != block
        )
    statements = named("line")
    return {
        "heads": heads,
        "holds": holds,
        "parts": parts,
        "words": {name: sorted(first_words(NonTerminal(name))) for name in statements},
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


def main() -> None:
    """Write the file beside the grammar."""
    path = Path(roomspec_grammar.__file__).with_name("tables.json")
    path.write_text(tables_text(built_tables()), "utf-8")


def tables_text(tables: dict[str, Any]) -> str:
    """JSON with one row of the table a line, so that a changed grammar shows as changed lines."""
    parts = []
    for name, value in tables.items():
        if isinstance(value, list):
            rows = ",\n".join(json.dumps(row, ensure_ascii=False, separators=(",", ":")) for row in value)
            parts.append(f'"{name}": [\n{rows}\n]')
        else:
            parts.append(f'"{name}": {json.dumps(value, ensure_ascii=False)}')
    return "{\n" + ",\n".join(parts) + "\n}\n"


if __name__ == "__main__":
    main()
