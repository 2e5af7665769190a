"""The estimate for people: plain aligned text, or tables for a terminal."""

from roomspec.reports.estimate_json import EstimateOut
from roomspec.reports.estimate_sections import estimate_sections
from roomspec.reports.section import plain_sections


def estimate_text(out: EstimateOut) -> str:
    """The estimate as plain text; the same bytes for the same estimate."""
    return plain_sections(estimate_sections(out))


def estimate_screen(out: EstimateOut, width: int, colour: bool) -> str:
    """The estimate for a terminal `width` columns wide."""
    from roomspec.reports.screen_sections import screen_sections

    return screen_sections(estimate_sections(out), width, colour)
