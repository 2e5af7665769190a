"""Repeated rooms: `101 to 112` as the names it stands for."""

import re

from msgspec import Struct

MOST = 1_000
"""Rooms in one span; more is a slip of the finger."""
MOST_ROOMS = 20_000
"""Rooms in one job."""

_LAST_DIGITS = re.compile(r"(.*?)([0-9]+)([^0-9]*)", re.DOTALL)


class Refused(Struct, frozen=True, gc=False):
    """Why a span gives no names, and what to write instead (`first to last`) where that is certain."""

    message: str
    help: str
    instead: str = ""


def expanded(first: str, last: str) -> tuple[str, ...] | Refused:
    """The names from `first` to `last`: the last run of digits counts and keeps its width (`2.01` to `2.12`)."""
    start, end = _LAST_DIGITS.fullmatch(first), _LAST_DIGITS.fullmatch(last)
    if start is None or end is None:
        wrong = first if start is None else last
        return Refused(f"{wrong} holds no number to count", "name these rooms one by one, with commas")
    if (start[1], start[3]) != (end[1], end[3]):
        return Refused(
            f"{first} and {last} differ in more than their last number",
            "the first and the last room of a span are alike but for their last number: `2.01 to 2.12`",
        )
    if len(start[2]) > 15 or len(end[2]) > 15:
        return Refused(f"{first} to {last} is more rooms than can be counted", f"one span holds at most {MOST} rooms")
    low, high, width = int(start[2]), int(end[2]), len(start[2])
    if high < low:
        return Refused(f"{first} to {last} counts downwards", "the lower number comes first", f"{last} to {first}")
    if high - low >= MOST:
        return Refused(f"{first} to {last} is {high - low + 1:,} rooms", f"one span holds at most {MOST} rooms")
    if str(high).zfill(width) != end[2]:
        counted_to = f"{start[1]}{str(high).zfill(width)}{start[3]}"
        return Refused(
            f"{first} and {last} are not written with as many digits; counting from {first} ends at {counted_to}",
            "write both numbers with the same number of digits",
            f"{first} to {counted_to}",
        )
    return tuple(f"{start[1]}{str(number).zfill(width)}{start[3]}" for number in range(low, high + 1))
