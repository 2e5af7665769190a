"""What is said of one word: a product as its catalogue has it, a check with its source, a statement with an example."""

from roomspec.checks.record import Check
from roomspec.checks.registry import record_of
from roomspec.names.kinds import DEFINED
from roomspec.syntax.examples import EXAMPLES
from roomspec.syntax.statements import placing
from roomspec.syntax.tree import Block
from roomspec.syntax.wording import TABLES, some_listed
from roomspec_lsp.features.view import View


def page_of(view: View, kind: str, name: str) -> str:
    """Markdown on a named thing, a check, or the statement that a keyword begins; "" where nothing is known."""
    if kind in DEFINED:
        found = view.snapshot.names.find(kind, name)
        if found is not None:
            return block_page(found.block, found.path)
    if kind == "CHECK_NAME":
        check = record_of(name)
        return check_page(check) if check is not None else ""
    return statement_page(kind) if kind in EXAMPLES else ""


def block_page(block: Block, path: str) -> str:
    """A block as it is written, and in which file."""
    lines = [line for line in block.text.rstrip().split("\n") if line.strip()]
    shown = "\n".join(lines[:24] + ["  ..."] * (len(lines) > 24))
    return f"```room\n{shown}\n```\n{path}"


def check_page(check: Check) -> str:
    """A check's summary, why, source and fix."""
    cited = (f"{one.source}, {one.clause}" if one.clause else one.source for one in check.source)
    fix = f"\n\nFix: {check.fix}." if check.fix else ""
    return f"**{check.name}** ({check.severity}): {check.summary}\n\n{check.why}\n\nSource: {'; '.join(cited)}.{fix}"


def statement_page(kind: str) -> str:
    """An example of a statement, and the headings that may hold it."""
    place = placing()
    holders = [TABLES[table] for table in place.holders(kind)]
    under = f"\nunder {some_listed(holders)}" if holders else ""
    return f"```room\n{EXAMPLES[kind]}\n```{under}"
