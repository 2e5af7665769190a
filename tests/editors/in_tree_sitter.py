"""The tree-sitter parser in tree-sitter's own runtime. Needs a C compiler and the package tree-sitter."""

import ctypes
import random
import subprocess

import pytest
from corpus_texts import EDITORS, Word, corpus, disagreements, lines
from tree_sitter import Language, Node, Parser, Query, QueryCursor, Tree

FOLDER = EDITORS / "tree-sitter-roomspec"
KINDS = {
    "keyword": ("keyword", False),
    "type": ("variable", True),
    "variable": ("variable", False),
    "number": ("number", False),
    "string": ("string", False),
    "constant": ("enumMember", False),
    "operator": ("operator", False),
    "comment": ("comment", False),
}
"""What the captures of highlights.scm stand for."""


@pytest.fixture(scope="module")
def language(tmp_path_factory: pytest.TempPathFactory) -> Language:
    """The parser, compiled without a warning."""
    library = tmp_path_factory.mktemp("parser") / "roomspec.so"
    strict = ["-std=c11", "-Wall", "-Wextra", "-Werror", "-fsanitize=undefined", "-fno-sanitize-recover=all"]
    compiler = ["cc", *strict, "-shared", "-fPIC", "-o", library, FOLDER / "src" / "parser.c"]
    subprocess.run(compiler, check=True, timeout=120)
    function = ctypes.CDLL(str(library)).tree_sitter_roomspec
    function.restype = ctypes.c_void_p
    capsule = ctypes.pythonapi.PyCapsule_New
    capsule.restype, capsule.argtypes = ctypes.py_object, (ctypes.c_void_p, ctypes.c_char_p, ctypes.c_void_p)
    return Language(capsule(function(), b"tree_sitter.Language", None))


def query(language: Language, name: str) -> Query:
    """A query of the folder."""
    return Query(language, (FOLDER / "queries" / f"{name}.scm").read_text(encoding="utf-8"))


@pytest.mark.parametrize("name", corpus())
def test_every_word_has_the_colour_that_the_server_says(name: str, language: Language):
    """Word for word, whatever is broken; and every text has a tree without errors."""
    text = corpus()[name]
    root = Parser(language).parse(text.encode()).root_node
    assert not root.has_error
    written = [line.encode() for line in lines(text)]
    rows: list[list[Word]] = [[] for _ in written]
    for capture, nodes in QueryCursor(query(language, "highlights")).captures(root).items():
        for node in nodes:
            row, column = node.start_point
            assert node.end_point.row == row
            start, end = (len(written[row][:at].decode()) for at in (column, node.end_point.column))
            rows[row].append((start, end, *KINDS[capture]))
    assert not disagreements(text, [sorted(row) for row in rows])


def test_blocks_hold_their_lines(language: Language):
    """What folds: a block ends with its last line, not with the comment over the next; walls stand in their room."""
    text = b'room a "x"\n  height 2400 # c\n  wall b 12\n    bare\n\n# next\npanel z\n  thik 4\n'
    assert str(Parser(language).parse(text).root_node) == (
        "(source_file (block (heading (name) (string)) (statement (number) (comment))"
        " (part (heading (name) (number)) (statement))) (comment)"
        " (block (heading (name)) (statement (broken) (number))))"
    )
    folds = QueryCursor(query(language, "folds")).captures(Parser(language).parse(text).root_node)["fold"]
    assert sorted((node.start_point.row, node.end_point.row) for node in folds) == [(0, 3), (2, 3), (6, 7)]


def test_any_edits_give_what_a_fresh_parse_gives(language: Language):
    """Random texts, made of good lines and of rubbish, edited at random places."""
    chance = random.Random(20261125)
    pool = [line for text in corpus().values() for line in lines(text)]
    scraps = ["", "\n", " ", '"', "#", "x", "wall ", "1", "'", "\r", "\0", "é", "浴室", "😀", "½", "\u2028", "a.b", ","]
    parser = Parser(language)
    for _ in range(300):
        text = "\n".join(chance.choice(pool) for _ in range(chance.randrange(1, 12)))
        tree = parser.parse(text.encode())
        for _ in range(8):
            first = chance.randrange(len(text) + 1)
            last = min(len(text), first + chance.choice([0, 0, 1, 2, 30]))
            added = chance.choice([*scraps, chance.choice(pool)])
            tree = edited(parser, tree, text, first, last, added)
            text = text[:first] + added + text[last:]
            assert not tree.root_node.has_error
            assert shape(tree.root_node) == shape(parser.parse(text.encode()).root_node), text


def edited(parser: Parser, tree: Tree, text: str, first: int, last: int, added: str) -> Tree:
    """The tree after `added` took the place of some characters, made from the tree before."""
    old, new = text.encode(), (text[:first] + added + text[last:]).encode()
    ends = len(text[:first].encode()), len(text[:last].encode()), len((text[:first] + added).encode())
    starts = (old, ends[0]), (old, ends[1]), (new, ends[2])
    points = [(whole.count(b"\n", 0, end), end - 1 - whole.rfind(b"\n", 0, end)) for whole, end in starts]
    tree.edit(*ends, *points)
    return parser.parse(new, tree)


def shape(node: Node) -> tuple[object, ...]:
    """A node as values."""
    return (node.type, node.start_byte, node.end_byte, *(shape(child) for child in node.children))
