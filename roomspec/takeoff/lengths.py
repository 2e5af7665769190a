"""The pieces that a run of trim or a batten is cut in.

A run longer than the stock that can be got in is whole lengths and a remainder; a shorter one is never pieced. A trim's
remainder is no shorter than `LEAST_JOINED`: the last joint is moved for it.
"""

from roomspec.layout.access import longest_piece
from roomspec.model.product import Support, Trim
from roomspec.quantities.length import MM
from roomspec.takeoff.battens import fitted_length

LEAST_JOINED = 100 * MM
"""A trim is not pieced out with less, which neither lies straight nor stays up: common practice, no source."""


def lengths_of_run(length: int, product: Trim | Support, access: int | None = None) -> tuple[int, ...]:
    """The lengths of its pieces.

    A batten's remainder that is shorter than the batten is wide is left out; one that is so short itself is not.
    """
    longest = longest_piece(product, access)
    fitted = fitted_length(length, product, longest) if isinstance(product, Support) else length
    whole, rest = divmod(fitted or length, longest)
    if joint_moves(length, product, access):
        least = _least(longest)
        return (*(longest,) * (whole - 1), longest + rest - least, least)
    return (longest,) * whole + ((rest,) if rest else ())


def joint_moves(length: int, product: Trim | Support, access: int | None = None) -> bool:
    """True where whole lengths of a trim would leave a remainder that is too short."""
    longest = longest_piece(product, access)
    return isinstance(product, Trim) and length > longest and 0 < length % longest < _least(longest)


def _least(longest: int) -> int:
    return min(LEAST_JOINED, longest // 2)
