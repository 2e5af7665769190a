"""What a line may go on with, in an estimator's words."""

from msgspec import Struct

from roomspec.syntax.examples import EXAMPLES
from roomspec.syntax.parser import Misfit, begin_line
from roomspec.syntax.statements import placing
from roomspec.syntax.wording import choices
from roomspec_lsp.features.view import View


class Signature(Struct, frozen=True):
    """The words before, what is wanted next, and an example of the statement."""

    before: str
    wanted: str
    example: str


def signature_at(view: View, line: int, column: int) -> Signature | None:
    """At a line and column from 0; None before the first word, in a comment, where the line cannot be read or is done.

    The word that the cursor stands in is not yet read.
    """
    text = view.lines.line(line)[:column]
    start = len(text.rstrip()) if text[-1:].isspace() else text.rfind(" ") + 1
    begun = begin_line(text[:start])
    if isinstance(begun, Misfit) or not begun[1]:
        return None
    stack, read = begun
    wanted = choices(stack.accepts())
    if not wanted or "#" in text[read[-1].end :]:
        return None
    kinds = placing().by_word.get(read[0].text, ())
    ends = ", or the line ends" if stack.accepts_one("$END") else ""
    before = text[read[0].start : read[-1].end]
    return Signature(before, f"{wanted}{ends}", EXAMPLES[kinds[0]] if kinds else "")
