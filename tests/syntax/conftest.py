"""lark's own parser of the grammar, built once."""

import pytest
from lark import Lark

from roomspec_grammar.write_tables import lark_parser


@pytest.fixture(scope="session")
def lark() -> Lark:
    """The whole grammar with lark's contextual lexer, for starts `line` and `file`."""
    return lark_parser(strict=True)
