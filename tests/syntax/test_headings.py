"""Which heading a line belongs to, and what becomes of broken headings and misplaced or repeated lines."""

from test_misreadings import all_problems, shown

from roomspec.syntax.assemble import read_file
from roomspec.syntax.tree import Block


def outline(text: str) -> list[object]:
    """The blocks: key, kinds of lines, parts."""
    return [_outline(placed.block) for placed in read_file("a.room", text).blocks]


def _outline(block: Block) -> object:
    parts = [(part.kind, part.name, [line.node.kind for line in part.lines]) for part in block.parts]
    return block.key, [line.node.kind for line in block.lines], parts


def test_a_line_belongs_to_the_nearest_heading_that_can_hold_it() -> None:
    """Before the first wall a line is the room's, after a wall that wall's."""
    text = "room 1\nheight 2400\nwall a 3000\nheight 2500\nceiling over\nbare\nwall b 10\nbare\n"
    walls = [("wall", "a", ["height"]), ("ceiling", "over", ["bare"]), ("wall", "b", ["bare"])]
    assert outline(text) == [("room 1", ["height"], walls)]
    assert not shown(text)


def test_a_broken_wall_still_opens() -> None:
    """A wall keeps what could be read of it, and its lines are its own."""
    text = "room 1\n  wall a 24oo\n    on plaster\n  wall\n    on tile\n  wall c 2410 tp 2428\n    on stone\n"
    assert outline(text) == [("room 1", [], [("wall", "a", ["on"]), ("wall", "", ["on"]), ("wall", "c", ["on"])])]
    assert [words for _, words, _ in shown(text)] == ["24oo", "wall", "tp"]
    wall = read_file("a.room", text).blocks[0].block.parts[2]
    assert [part.kind for part in wall.head.node.parts[2:]] == ["dimension"]  # type: ignore[union-attr]


def test_a_misspelt_heading_is_taken_for_the_nearest() -> None:
    """`romo` opens a room of its own block, with the columns of the text as written."""
    text = 'room 1\n  wall a 3000\nromo 2 "Store"\n  height 2400\n  celing over\n    bare\n'
    assert outline(text) == [
        ("room 1", [], [("wall", "a", [])]),
        ("room 2", ["height"], [("ceiling", "over", ["bare"])]),
    ]
    second = read_file("a.room", text).blocks[1]
    assert second.line == 2
    assert [(part.start, part.end) for part in second.block.head.node.parts] == [(0, 4), (5, 6), (7, 14)]  # type: ignore[union-attr]
    ceiling = second.block.parts[0].head
    assert (ceiling.line, [(part.start, part.end) for part in ceiling.node.parts]) == (2, [(2, 8), (9, 13)])  # type: ignore[union-attr]


def test_lines_under_an_unknown_heading_do_not_fall_to_the_one_before() -> None:
    """Where no heading is near, deeper indentation keeps its lines apart."""
    text = "room 1\n  wall a 3000\nzimmer 2\n  height 2400\n  wall b 2000\n    on tile\nroom 3\n  height 2500\n"
    assert outline(text) == [("room 1", [], [("wall", "a", [])]), ("room 3", ["height"], [])]
    message = "`zimmer` begins no line that is known; the lines under it are set aside too"
    assert shown(text) == [("unreadable-line", "zimmer", message)]


def test_an_unknown_line_among_others_costs_only_itself() -> None:
    """Lines that stand no deeper than it are read as ever."""
    text = "room 1\n  wall a 3000\n    zzz 2\n    on tile\n    bare\n"
    assert outline(text) == [("room 1", [], [("wall", "a", ["on", "bare"])])]


def test_a_room_line_after_a_wall_is_moved_before_it() -> None:
    """`purpose` under a wall says where it belongs and can be moved there."""
    text = "room 1\n  wall a 3000\n    on plaster\n  purpose bedroom\n"
    message = "`purpose` belongs to the room, but stands under a wall of it"
    assert shown(text) == [("misplaced-line", "purpose", message)]
    (fix,) = [fix for _, problem in all_problems(text) for fix in problem.fixes]
    assert fix.safe and fix.title == "move it before `wall a`"
    assert [(edit.at.line, edit.at.start, edit.at.end, edit.text) for edit in fix.edits] == [
        (1, 0, 0, "  purpose bedroom\n"),
        (3, 0, 18, ""),
    ]


def test_other_misplaced_lines_say_where_they_belong() -> None:
    """A line of another heading, a wall outside a room, a line before any heading, a late `units`."""
    assert shown("panel p\n  height 5\n") == [("misplaced-line", "height", "`height` is no line of a panel")]
    assert shown("wall a 5\n  on tile\n") == [("misplaced-line", "wall", "`wall` stands under no heading")]
    assert shown("height 5\n") == [("misplaced-line", "height", "`height` stands under no heading")]
    assert len(shown("measured nrm2\nkerf 3\npool job\nroom 1\n  kerf 3\n")) == 2
    message = "`units` stands at the top of a file, before any heading"
    assert shown("room 1\nunits in\n") == [("misplaced-line", "units", message)]
    helps = [problem.help for _, problem in all_problems("panel p\n  height 5\n")]
    assert helps == ["it belongs under a room or a wall"]


def test_a_misplaced_wall_takes_its_lines_with_it() -> None:
    """The lines of a wall under a product are not the product's; the product's own lines still are."""
    text = "panel p\n  wall a 3000\n    on tile\n  cover 250\n"
    assert outline(text) == [("panel p", ["cover"], [])]
    assert [name for name, _, _ in shown(text)] == ["misplaced-line"]


def test_a_line_that_may_stand_once_is_refused_the_second_time() -> None:
    """The first holds; one that says the same can safely be removed."""
    text = "room 1\n  level ground\n  level ground\n  level first\n"
    assert outline(text) == [("room 1", ["level"], [])]
    message = "`level` stands twice in this room; the first one, `level ground`, holds"
    assert shown(text) == [("repeated-line", "level ground", message), ("repeated-line", "level first", message)]
    assert [fix.safe for _, problem in all_problems(text) for fix in problem.fixes] == [True, False]
    assert all_problems(text)[0][1].related[0].at.line == 1


def test_what_may_stand_many_times_does() -> None:
    """Regions, openings, each kind of `keep` and of trim, several lengths."""
    text = (
        "room 1\n  wall a 9000\n    on tile\n    on stone up 0 to 900\n"
        "    keep skirting 100\n    keep cornice 90\n    door 9 x 9\n    door 9 x 9\n    height 9 from 0 to 9\n"
        "    height 8 from 9 to 18\nmethod m\n  start a\n  edge b\n"
        "  seal c bead 5 at floor\n  seal c bead 9 at joints\n"
        "panel p\n  length 2400 at 20 each\n  length 2600 at 22 each\n"
    )
    assert not shown(text)
    twice = text.replace("keep cornice", "keep skirting").replace("edge b", "start b")
    assert [words for _, words, _ in shown(twice)] == ["keep skirting 90", "start b"]


def test_an_option_given_twice_is_left_out() -> None:
    """The line stays with the first."""
    text = "room 1\n  wall a 9000\n    door 900 x 2000 at 5 sill 9 at 6\n    window 9 x 9 lined head jambs head\n"
    assert [(name, words) for name, words, _ in shown(text)] == [("repeated-line", "at 6"), ("repeated-line", "head")]
    door = read_file("a.room", text).blocks[0].block.parts[0].lines[0].node
    assert [part.kind for part in door.parts[1:]] == ["size", "at", "sill"]  # type: ignore[union-attr]
    assert not shown("room 1\n  wall a 9\n    window 9 x 9 sill 9 lined head jambs sill\n")


def test_units_stand_at_the_top_once() -> None:
    """The unit of the file, and a second one refused."""
    assert read_file("a.room", "\n# feet\nunits ft\nroom 1\n").units == "ft"
    assert read_file("a.room", "room 1\n").units == "mm"
    tree = read_file("a.room", "units in\nunits m\n")
    assert tree.units == "in"
    assert [problem.message for problem in tree.problems] == ["`units` stands twice; the first one holds"]
    assert tree.problems[0].at.block == "file a.room"


def test_blocks_of_one_name_have_keys_of_their_own() -> None:
    """The second room 1 of a file is `room 1#2`, also in its problems and parts."""
    text = "room 1\n  zzz\nroom 1\n  zzz\n  wall a 24oo\nroom 1\n"
    blocks = [placed.block for placed in read_file("a.room", text).blocks]
    assert [block.key for block in blocks] == ["room 1", "room 1#2", "room 1#3"]
    assert [problem.at.block for block in blocks for problem in block.problems] == ["room 1", "room 1#2", "room 1#2"]
    assert blocks[1].parts[0].key == "room 1#2"
    assert [block.name for block in blocks] == ["1", "1", "1"]


def test_line_ends_marks_and_blanks_make_no_difference() -> None:
    """CRLF, a byte order mark, tabs, no final line end; U+2028 ends no line."""
    plain = "room 1\n  height 2400\n  wall a 3000\n    on plaster"
    for text in (plain.replace("\n", "\r\n"), "\ufeff" + plain, plain.replace("  ", "\t"), plain + "\n\n"):
        assert outline(text) == outline(plain)
        assert not shown(text)
    assert outline('room 1 "a\u2028b"\n  height 2400\n') == [("room 1", ["height"], [])]
    assert [words for _, words, _ in shown("room 1\r  height 2400\r")] == ["\r"]


def test_an_edit_reads_one_block_again() -> None:
    """Every other block is the very same object."""
    rooms = [f"room {number}\n  height 2400\n  wall a {number + 900}\n    on plaster\n" for number in range(50)]
    before = read_file("a.room", "".join(rooms)).blocks
    rooms[20] = rooms[20].replace("plaster", "tile").replace("height", "# measured\n  height")
    after = read_file("a.room", "".join(rooms)).blocks
    changed = [number for number in range(50) if before[number].block is not after[number].block]
    assert changed == [20]
    assert after[21].line == before[21].line + 1
