"""The tree of a text against lark's parse of the whole text, and what holds for any text at all."""

from as_lark import blocks_by_lark, blocks_of, statements_of
from hypothesis import given, settings
from hypothesis import strategies as st
from lark import Lark
from room_texts import damaged, files

from roomspec.diagnostics.diagnostic import Diagnostic
from roomspec.syntax.assemble import read_file
from roomspec.syntax.tree import Block, FileTree, Node, Word
from roomspec.text.lines import lines_of


def problems_of(block: Block) -> list[Diagnostic]:
    """A block's problems with those of its parts."""
    return [*block.problems, *(problem for part in block.parts for problem in problems_of(part))]


def held_together(tree: FileTree, text: str) -> None:
    """Words lie in their lines, in order and where they say; parts lie in their nodes; problems lie in the text."""
    lines = lines_of(text)
    for problem in tree.problems:
        _lies_in(problem, 0, lines.starts, lines.line)
    for placed in tree.blocks:
        assert placed.block.key
        for statement in statements_of(placed.block):
            line = lines.line(placed.line + statement.line)
            end = 0
            for word in _words(statement.node):
                assert end <= word.start < word.end <= len(line)
                end = word.end
        for problem in problems_of(placed.block):
            assert problem.at.block == placed.block.key
            _lies_in(problem, placed.line, lines.starts, lines.line)


def _lies_in(problem: Diagnostic, first: int, starts: tuple[int, ...], line_of: object) -> None:
    assert 0 <= first + problem.at.line < len(starts)
    assert 0 <= problem.at.start <= problem.at.end <= len(line_of(first + problem.at.line))  # type: ignore[operator]
    assert problem.message and "\n" not in problem.message


def _words(node: Node) -> list[Word]:
    return [word for part in node.parts for word in ([part] if isinstance(part, Word) else _words(part))]


@given(text=files())
@settings(max_examples=80, deadline=None)
def test_a_valid_text_gives_the_tree_of_a_whole_parse(lark: Lark, text: str) -> None:
    """Lines read one by one and put under their headings are what lark makes of the whole text, without a problem."""
    tree = read_file("a.room", text)
    assert not tree.problems and not any(problems_of(placed.block) for placed in tree.blocks)
    units = [flat for flat in blocks_by_lark(lark, text) if flat[0] == "units_in"]  # type: ignore[index]
    blocks = [flat for flat in blocks_by_lark(lark, text) if flat[0] != "units_in"]  # type: ignore[index]
    assert blocks_of(tree) == blocks
    assert tree.units == (units[0][1][1][1] if units else "mm")  # type: ignore[index]
    held_together(tree, text)


@given(text=damaged())
@settings(max_examples=150, deadline=None)
def test_a_damaged_text_is_read(text: str) -> None:
    """Any damage gives a tree that holds together."""
    held_together(read_file("a.room", text), text)


@given(text=st.text())
@settings(max_examples=150, deadline=None)
def test_any_text_is_read(text: str) -> None:
    """Any characters at all give a tree that holds together."""
    held_together(read_file("a.room", text), text)


@given(text=files(), seed=st.randoms(use_true_random=False))
@settings(max_examples=60, deadline=None)
def test_a_damaged_line_costs_only_itself(text: str, seed: object) -> None:
    """A line made unreadable takes no other statement with it, unless it is a heading."""
    tree = read_file("a.room", text)
    places = [(placed.line + line.line, line) for placed in tree.blocks for line in placed.block.lines]
    if not places:
        return
    number, gone = seed.choice(places)  # type: ignore[attr-defined]
    lines = text.split("\n")
    lines[number] = lines[number][: len(lines[number]) - len(lines[number].lstrip())] + "@" + lines[number].lstrip()
    lines = [line if place == number else line.lstrip() for place, line in enumerate(lines)]
    lines[number] = lines[number].lstrip()
    after = read_file("a.room", "\n".join(lines))
    before = [s.node.kind for placed in tree.blocks for s in statements_of(placed.block)]
    left = [s.node.kind for placed in after.blocks for s in statements_of(placed.block)]
    before.remove(gone.node.kind)
    assert sorted(left) == sorted(before)


def test_most_blocks_survive_when_a_fifth_of_the_lines_are_damaged() -> None:
    """Of forty rooms with a fifth of their lines torn, every room and nearly every wall is still there."""
    rooms = [
        f'room {number} "Room"\n  height 2400\n  level l\n'
        + "".join(f"  wall {wall} {number * 10 + 900}\n    on plaster\n    door 900 x 2000 at 5\n" for wall in "abcd")
        for number in range(40)
    ]
    lines = "".join(rooms).split("\n")
    torn = [line.replace("a", "q", 1)[:-1] if number % 5 == 3 else line for number, line in enumerate(lines)]
    tree = read_file("a.room", "\n".join(torn))
    assert len(tree.blocks) == 40
    assert sum(len(placed.block.parts) for placed in tree.blocks) >= 158
