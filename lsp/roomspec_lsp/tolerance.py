"""What a client says of itself, without the parts that this version of the protocol does not know.

A client may name kinds, tags and options that came later; each unknown one is dropped, the rest is kept.
"""

import types as python_types
from collections.abc import Sequence
from typing import Any, Union, get_args, get_origin

import attrs
from cattrs import Converter

_DROPPED = object()


def tolerated(converter: Converter, value: dict[str, Any], kind: type) -> Any:
    """`value` as far as it can be read as `kind`; as it is where even that leaves nothing."""
    kept = _kept(converter, value, kind)
    return value if kept is _DROPPED else kept


def _reads(converter: Converter, value: Any, kind: Any) -> bool:
    try:
        converter.structure(value, kind)
    except Exception:  # cattrs raises whatever the value makes it raise
        return False
    return True


def _kept(converter: Converter, value: Any, kind: Any) -> Any:
    if _reads(converter, value, kind):
        return value
    for one in _alternatives(kind):
        found = _mended(converter, value, one)
        if found is not _DROPPED and _reads(converter, found, kind):
            return found
    return _DROPPED


def _mended(converter: Converter, value: Any, kind: Any) -> Any:
    if isinstance(value, dict) and attrs.has(kind):
        attrs.resolve_types(kind)
        fields = {_camel(field.name): field.type for field in attrs.fields(kind)}
        kept = {name: _kept(converter, part, fields[name]) for name, part in value.items() if name in fields}
        return {name: part for name, part in kept.items() if part is not _DROPPED}
    if isinstance(value, list) and get_origin(kind) in (list, Sequence):
        parts = [_kept(converter, part, get_args(kind)[0]) for part in value]
        return [part for part in parts if part is not _DROPPED]
    return _DROPPED


def _alternatives(kind: Any) -> tuple[Any, ...]:
    return get_args(kind) if get_origin(kind) in (Union, python_types.UnionType) else (kind,)


def _camel(name: str) -> str:
    first, *rest = name.rstrip("_").split("_")
    return first + "".join(part.capitalize() for part in rest)
