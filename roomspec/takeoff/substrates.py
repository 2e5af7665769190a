"""What a lining lies on, region by region, once what is to be removed is gone."""

from functools import lru_cache

from roomspec.model.wall import Layer, Removal, Substrate
from roomspec.takeoff.clip import box_of
from roomspec.takeoff.face import Face
from roomspec.takeoff.parts import Part, divide


def stacks_on(face: Face) -> tuple[Part[tuple[Layer, ...]], ...]:
    """The layers left on each part of the face, outermost first; () where none is stated."""
    return stacks_of(face.substrates, face.removals)


@lru_cache(2048)
def stacks_of(substrates: tuple[Substrate, ...], removals: tuple[Removal, ...]) -> tuple[Part[tuple[Layer, ...]], ...]:
    """The same from a face's `on` and `remove` lines."""
    parts = list(divide(((substrate.region, substrate.layers) for substrate in substrates), ()))
    for removal in removals:
        gone = box_of(removal.region)
        result = []
        for part in parts:
            left = _without(part.value, removal.what)
            if left == part.value:
                result.append(part)
                continue
            outside = part.box.less(gone)
            result += [Part(box, part.value) for box in outside]
            overlap = part.box.common(gone)
            if overlap is not None:
                result.append(Part(overlap, left))
        parts = result
    return tuple(parts)


def layers_on(face: Face) -> tuple[Part[tuple[str, ...]], ...]:
    """The names of the layers left on each part of the face, outermost first."""
    return _kinds(face.substrates, face.removals)


@lru_cache(2048)
def _kinds(substrates: tuple[Substrate, ...], removals: tuple[Removal, ...]) -> tuple[Part[tuple[str, ...]], ...]:
    return tuple(Part(part.box, tuple(layer.kind for layer in part.value)) for part in stacks_of(substrates, removals))


def _without(layers: tuple[Layer, ...], what: str) -> tuple[Layer, ...]:
    """The layers once the outermost `what`, and all in front of it, have come off."""
    kinds = [layer.kind for layer in layers]
    return layers[kinds.index(what) + 1 :] if what in kinds else layers
