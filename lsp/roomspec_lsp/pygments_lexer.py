"""Colours for pages: a Pygments lexer named `room`, which asks the language's own reader."""

from collections.abc import Iterator

from pygments.lexer import Lexer
from pygments.token import Comment, Keyword, Name, Number, Operator, String, Text, _TokenType

from roomspec.text.lines import lines_of
from roomspec_lsp.features.tokens import tokens

_TYPES = {
    "keyword": Keyword,
    "variable": Name.Variable,
    "number": Number,
    "string": String.Double,
    "enumMember": Name.Constant,
    "operator": Operator,
    "comment": Comment.Single,
}


class RoomLexer(Lexer):  # type: ignore[misc] # Pygments has no types
    """Room files. What cannot be read has no colour."""

    name = "Room"
    aliases = ("room",)
    filenames = ("*.room",)

    def get_tokens_unprocessed(self, text: str) -> Iterator[tuple[int, _TokenType, str]]:
        """Offsets, types and texts, which joined give the text."""
        lines = lines_of(text)
        at = 0
        for token in tokens(lines):
            start, end = (lines.starts[token.line] + column for column in (token.start, token.end))
            if at < start:
                yield at, Text, text[at:start]
            yield start, Name.Class if token.declares else _TYPES[token.kind], text[start:end]
            at = end
        if at < len(text):
            yield at, Text, text[at:]
