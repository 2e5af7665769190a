"""roomspec: wall linings described in plain text, checked, set out, cut, ordered and priced.

    >>> import roomspec
    >>> job = roomspec.open("samples/kestrel-house")

Everything public is in `roomspec.face`; it is loaded when it is first asked for.
"""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from roomspec.face import JobView, open

__all__ = ["JobView", "__version__", "open"]
__version__ = "0.1.0"


def __getattr__(name: str) -> object:
    if name not in __all__:
        raise AttributeError(f"module 'roomspec' has no attribute {name!r}")
    from roomspec import face

    return getattr(face, name)
