"""A method calls for something that it names no product for."""

from collections.abc import Iterator

from roomspec.checks.facts import JobFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.checks.used import methods_used

_JOB = """\
job example
room 1 "Study"
  height 2400
  wall a 3000
    on     masonry
    finish limestone-long by on-battens vertical
panel limestone-long "Limestone print, long"
  length 2600
  cover  250
  thick  10
  price  31.50 each
support sw-25x50 "Softwood batten"
  section 25 x 50
  length  2400
  price   3.20 each
method on-battens
  battens sw-25x50 every 400
"""
_SCREWS = """\
  screw   panel-screw
  fix     frame-fixing every 600
fixing panel-screw
  size  3.5 x 35
  price 11.40 per pack
fixing frame-fixing
  size  5 x 80
  price 14.60 per pack
"""


@finds(
    Check(
        name="quantity-without-product",
        group="order and price",
        severity="error",
        scope="job",
        summary="a method names nothing that holds its panels, or nothing that holds its battens",
        why=(
            "Every panel is glued or screwed, every batten is fixed to the wall. Where the method names no product for"
            " it, none is counted, ordered or priced, and the fitter finds out on site. As a warning: battens without"
            " a `fix` line, which some firms price in their labour."
        ),
        source=(COMMON_PRACTICE,),
        bad=_JOB,
        good=_JOB + _SCREWS,
    )
)
def quantity_without_product(facts: JobFacts) -> Iterator[Finding]:
    """The methods that the job's finishes name."""
    for method in methods_used(facts.used):
        key = f"method {method.name}"
        lines = facts.elsewhere(key)
        if method.glue is None and method.screw is None:
            yield Finding(
                at=lines(()),
                message=f"{key} names neither `glue` nor `screw`: nothing that holds its panels is counted",
                help="name an adhesive (`glue grab bead 8 mm every 100 mm`) or a screw (`screw panel-screw`)",
                about=(key,),
            )
        if method.battens and method.fix is None:
            yield Finding(
                at=lines(("battens",)),
                message=f"{key} has battens and no `fix`: nothing that holds them is counted",
                help="name the fixing and its spacing: `fix frame-fixing every 600 mm`",
                about=(key,),
                severity="warning",
            )
