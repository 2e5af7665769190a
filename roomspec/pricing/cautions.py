"""The cautions that a job's content calls for, each deferring to local codes and licensed trades.

The source stands beside each; what is common practice or from memory says so.
"""

from collections.abc import Callable
from math import ceil

from msgspec import Struct

from roomspec.pricing.content import Content
from roomspec.quantities.in_units import is_imperial, pounds

LAST = "Local codes, the makers' instructions and licensed trades decide wherever they say otherwise."


class Caution(Struct, frozen=True):
    """When it is called for, what it says (a figure by its name in METRIC), and on whose word."""

    applies: Callable[[Content], bool]
    text: str
    source: str


CAUTIONS = (
    Caution(
        lambda content: content.before(2000) and content.disturbs,
        "The building dates from before 2000: have a refurbishment survey for asbestos made before anything is "
        "drilled, stripped or broken out. Where material is suspect, stop; only licensed trades remove it.",
        "CAR 2012, HSG264",
    ),
    Caution(
        lambda content: content.built is None and content.disturbs,
        "The age of the building is not recorded: unless it is known to date from 2000 or later, have a refurbishment "
        "survey for asbestos made before anything is drilled, stripped or broken out; only licensed trades remove it.",
        "CAR 2012, HSG264",
    ),
    Caution(
        lambda content: content.before(1980) and (content.painted or content.strips),
        "Paint from before 1980 may hold lead: no dry sanding, no burning off; have it tested first, and follow local "
        "codes for its removal.",
        "HSE summary",
    ),
    Caution(
        lambda content: content.drills,
        "Find cables and pipes before drilling or screwing: expect them within {zone} of ceilings and wall corners, "
        "and in line with every socket, switch and pipe, up, down and sideways. Zones differ by country; local wiring "
        "rules decide.",
        "BS 7671, DIN 18015-3",
    ),
    Caution(
        lambda content: content.wires,
        "A licensed electrician isolates each circuit and proves it dead before a faceplate is lifted, and brings "
        "boxes and screws forward to the new face.",
        "common practice, from memory",
    ),
    Caution(
        lambda content: content.hangs,
        "What hangs on a lined wall is fixed through the lining into studs, noggings or masonry, never into the "
        "panel, plaster or board alone; the fixing's maker and local codes decide its size.",
        "trade pages",
    ),
    Caution(
        lambda content: content.cuts,
        "Cutting and drilling raise dust: extract at the tool, wear a fitting mask and eye protection, and keep to "
        "the local exposure limits.",
        "EH40/2005",
    ),
    Caution(
        lambda content: content.glues,
        "Adhesive and sealant give off vapour: ventilate until they have cured, keep flames away, and follow each "
        "product's safety data sheet.",
        "common practice, from memory",
    ),
    Caution(
        lambda content: content.cuts,
        "Lift long panels and packs with two people or an aid: held close at elbow height the usual guideline for one "
        "person is {strong}, or {less_strong} for the less strong; above the shoulder or at arm's length it is far "
        "less.",
        "HSE L23, INDG143",
    ),
)


METRIC = {"zone": "150 mm", "strong": "25 kg", "less_strong": "16 kg"}
IMPERIAL = {"zone": "6 in (150 mm)", "strong": "55 lb (25 kg)", "less_strong": "35 lb (16 kg)"}
"""The guidelines' own figures, and the same in a job of feet and inches."""


def cautions_of(content: Content, units: str = "mm") -> tuple[str, ...]:
    """The cautions called for, in a fixed order; that local codes and licensed trades decide always stands last."""
    figures = IMPERIAL if is_imperial(units) else METRIC
    said = tuple(caution.text.format(**figures) for caution in CAUTIONS if caution.applies(content))
    kilograms, panel = content.pack
    about = f"{ceil(pounds(kilograms))} lb" if is_imperial(units) else f"{ceil(kilograms)} kg"
    weight = (f"The heaviest pack, of {panel}, weighs about {about}.",) if kilograms else ()
    return (*said, *weight, LAST)
