"""The sentence that offers the nearest names."""

from collections.abc import Iterable
from itertools import islice

from roomspec.diagnostics.diagnostic import Edit, Fix, Origin
from roomspec.text.nearness import nearest


def offered(at: Origin, word: str, known: Iterable[str]) -> tuple[str, tuple[Fix, ...]]:
    """What to do about an unknown name at `at`: a sentence, and a fix for each of the nearest names.

    None of the fixes is safe: the name may be of something that is still to be written.
    """
    near = nearest(word, islice(known, 1_000))
    if not near:
        return "", ()
    fixes = tuple(Fix(f"write `{name}`", (Edit(at, name),)) for name in near)
    return f"did you mean {' or '.join(f'`{name}`' for name in near)}?", fixes
