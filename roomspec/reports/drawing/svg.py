"""SVG as text: numbers, escaping, elements."""

import re
from collections.abc import Iterable, Mapping

NAMESPACE = "http://www.w3.org/2000/svg"

Value = str | int | float

_SPECIAL = re.compile('[&<>"\\x00-\\x1f\\x7f\\ud800-\\udfff\\ufffe\\uffff]')
_FORBIDDEN = re.compile("[\\x00-\\x1f\\x7f\\ud800-\\udfff\\ufffe\\uffff]")


def number(value: float) -> str:
    """A number of millimetres of paper, to the micrometre, without trailing zeros."""
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def escaped(text: str) -> str:
    """Text for XML 1.0: marks escaped, what XML cannot hold (fifth edition, 2.2) and line breaks replaced."""
    if not _SPECIAL.search(text):
        return text
    clean = _FORBIDDEN.sub("\N{REPLACEMENT CHARACTER}", text)
    return clean.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace('"', "&quot;")


def element(name: str, attributes: Mapping[str, Value], inner: Iterable[str] = ()) -> str:
    """An element; `inner` is SVG already. Values are escaped, floats written by `number`."""
    told = "".join(f' {key}="{_value(value)}"' for key, value in attributes.items())
    body = "".join(inner)
    return f"<{name}{told}>{body}</{name}>" if body else f"<{name}{told}/>"


def _value(value: Value) -> str:
    return number(value) if isinstance(value, float) else escaped(str(value))
