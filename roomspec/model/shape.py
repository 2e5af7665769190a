"""Places on a face: points, regions and profiles. x runs from the wall's left end, y up from its floor line."""

from msgspec import Struct


class Region(Struct, frozen=True, cache_hash=True, gc=False):
    """A part of a face; a side that is None reaches to the face's own edge. Nanometres."""

    left: int | None = None
    right: int | None = None
    bottom: int | None = None
    top: int | None = None


WHOLE = Region()

Profile = tuple[tuple[int, int], ...]
"""A line from left to right as (x, y) vertices, x never falling; two vertices of one x are a step."""


def level(width: int, height: int) -> Profile:
    """The profile of a face `width` wide whose line stays at `height`."""
    return ((0, height), (width, height))


def peak(profile: Profile) -> int:
    """The highest that the line goes."""
    return max(profile[0][1], profile[1][1]) if len(profile) == 2 else max([y for _, y in profile])


def is_level(profile: Profile) -> bool:
    """True where the line stays at one height."""
    return profile[0][1] == profile[1][1] if len(profile) == 2 else len({y for _, y in profile}) == 1


class SetOut(Struct, frozen=True, cache_hash=True, gc=False):
    """Where strips begin: `way` left, right, centre, joint, balanced, bottom or top; `at` where one is given."""

    way: str
    at: int | None = None
    handed: bool = False
    """True in a mirrored room: what no `way` turns round (which way rows shift, where half a nanometre goes) is."""

    def mirrored(self, width: int) -> "SetOut":
        """The same on the mirror image of a face `width` wide."""
        at = None if self.at is None else width - self.at
        return SetOut(_OTHER_WAY.get(self.way, self.way), at, not self.handed)


_OTHER_WAY = {"left": "right", "right": "left"}
