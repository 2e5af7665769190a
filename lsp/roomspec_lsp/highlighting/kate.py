"""The automaton as a syntax of Kate's and of every editor that uses KDE's highlighting: a context for each state."""

from xml.sax.saxutils import quoteattr

from roomspec_lsp.highlighting.automaton import automaton
from roomspec_lsp.highlighting.patterns import COMMENT, SOLID, loose, ways

STYLES = {
    ("", False): ("Text", "dsNormal"),
    ("keyword", False): ("Keyword", "dsKeyword"),
    ("variable", True): ("Heading", "dsFunction"),
    ("variable", False): ("Name", "dsVariable"),
    ("number", False): ("Quantity", "dsDecVal"),
    ("string", False): ("Title", "dsString"),
    ("enumMember", False): ("Constant", "dsConstant"),
    ("operator", False): ("Sign", "dsOperator"),
    ("comment", False): ("Comment", "dsComment"),
}
"""What each kind of token is called, and the editor's own style that it takes."""

_HEAD = """<?xml version="1.0" encoding="UTF-8"?>
<!-- Generated from the parser's tables by `python -m roomspec_lsp.highlighting.write`. -->
<language name="Room" section="Other" extensions="*.room" version="1" kateversion="5.0">
<highlighting>
<contexts>"""
_TAIL = """</itemDatas>
</highlighting>
<general>
<folding indentationsensitive="1"/>
<comments><comment name="singleLine" start="#"/></comments>
</general>
</language>
"""


def kate_text() -> str:
    """The file; a line's contexts follow each other, and the line's end leads back to the first."""
    rows = [_HEAD]
    for number, state in enumerate(automaton()):
        pop = "#pop!" if number else ""
        rows.append(_context(f"s{number}", "#pop" if number else "#stay"))
        rows.append(_rule(COMMENT, "comment"))
        rows.extend(_rule(way.pattern, way.kind, way.declares, f"{pop}s{way.target}") for way in ways(state))
        rows.append(f'<RegExpr String={quoteattr(SOLID)} lookAhead="true" context="{pop}loose"/>')
        rows.append("</context>")
    rows.append(_context("loose", "#pop"))
    rows.extend(_rule(pattern, kind) for pattern, kind in loose())
    rows += ["</context>", "</contexts>", "<itemDatas>"]
    rows += [f'<itemData name="{name}" defStyleNum="{style}"/>' for name, style in STYLES.values()]
    return "\n".join((*rows, _TAIL))


def _context(name: str, at_end: str) -> str:
    return f'<context name="{name}" attribute="Text" lineEndContext="{at_end}">'


def _rule(pattern: str, kind: str, declares: bool = False, context: str = "#stay") -> str:
    attribute = STYLES[kind, declares][0]
    return f'<RegExpr String={quoteattr(pattern)} attribute="{attribute}" context="{context}"/>'
