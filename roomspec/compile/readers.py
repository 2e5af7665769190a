"""The table of readers: which function reads which statement of which block; each statement is read once."""

from functools import lru_cache

from roomspec.compile.face_lines import SURVEY
from roomspec.compile.finish_lines import FINISH
from roomspec.compile.gang_lines import GANG
from roomspec.compile.method_lines import METHOD
from roomspec.compile.opening_lines import OPENINGS
from roomspec.compile.parts import by_rule
from roomspec.compile.product_lines import READERS as PRODUCT
from roomspec.compile.product_lines import note
from roomspec.compile.reading import Line, Reader, Reading
from roomspec.compile.room_lines import HEADS, ROOM
from roomspec.compile.term_lines import JOB, extra
from roomspec.names.kinds import PRODUCTS
from roomspec.syntax.tree import Node

_FACE = {**SURVEY, **OPENINGS, **FINISH, **HEADS, **ROOM, "extra": extra, "note": note}

TABLES: dict[str, dict[str, Reader]] = {
    "job": JOB,
    "room": _FACE,
    "wall": _FACE,
    "ceiling": _FACE,
    "method": METHOD,
    "gang": GANG,
    **dict.fromkeys(PRODUCTS, PRODUCT),
}
"""Kind of block -> kind of statement -> its reader. `use` and `allow` are read elsewhere."""

ELSEWHERE = frozenset(("use", "allow"))


@lru_cache(12_288)
def read(table: str, node: Node, units: str) -> Reading:
    """What one statement states in a block of the kind `table`; kept by its words, wherever they stand."""
    reader = TABLES[table].get(node.kind)
    if reader is None:
        return Reading()
    line = Line(node, units, table, by_rule(node), [])
    facts = reader(line)
    return Reading(facts, tuple(line.problems))
