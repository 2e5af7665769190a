"""Every check, in one visible tuple: a new one is its file and a line here."""

from roomspec.checks.record import Check
from roomspec.checks.rules.laying.bond_on_upright_panels import bond_on_upright_panels
from roomspec.checks.rules.laying.cut_at_outside_corner import cut_at_outside_corner
from roomspec.checks.rules.laying.finishes_overlap import finishes_overlap
from roomspec.checks.rules.laying.narrow_row import narrow_row
from roomspec.checks.rules.laying.narrow_strip import narrow_strip
from roomspec.checks.rules.laying.no_gap import no_gap
from roomspec.checks.rules.laying.panel_laid_wrong_way import panel_laid_wrong_way
from roomspec.checks.rules.laying.wall_taller_than_panel import wall_taller_than_panel
from roomspec.checks.rules.survey.diagonal_disagrees import diagonal_disagrees
from roomspec.checks.rules.survey.dimension_unconfirmed import dimension_unconfirmed
from roomspec.checks.rules.survey.opening_door_off_floor import opening_door_off_floor
from roomspec.checks.rules.survey.opening_outside_wall import opening_outside_wall
from roomspec.checks.rules.survey.openings_overlap import openings_overlap
from roomspec.checks.rules.survey.point_in_opening import point_in_opening
from roomspec.checks.rules.survey.step_in_substrate import step_in_substrate
from roomspec.checks.rules.survey.substrate_not_stated import substrate_not_stated
from roomspec.checks.rules.survey.surface_unknown import surface_unknown
from roomspec.checks.rules.survey.survey_does_not_close import survey_does_not_close
from roomspec.checks.rules.survey.too_long_to_get_in import too_long_to_get_in
from roomspec.checks.rules.survey.wall_not_flat import wall_not_flat
from roomspec.checks.rules.survey.wall_out_of_plumb import wall_out_of_plumb
from roomspec.checks.rules.water.unsealed_wet_joint import unsealed_wet_joint

CHECKS: tuple[Check, ...] = (
    survey_does_not_close,
    diagonal_disagrees,
    opening_outside_wall,
    openings_overlap,
    point_in_opening,
    opening_door_off_floor,
    substrate_not_stated,
    surface_unknown,
    dimension_unconfirmed,
    wall_not_flat,
    wall_out_of_plumb,
    step_in_substrate,
    too_long_to_get_in,
    panel_laid_wrong_way,
    wall_taller_than_panel,
    narrow_strip,
    finishes_overlap,
    bond_on_upright_panels,
    cut_at_outside_corner,
    narrow_row,
    no_gap,
    unsealed_wet_joint,
)
"""Trade advice, in the order in which it runs and is listed."""


def every_record() -> tuple[Check, ...]:
    """The problems of reading and the checks: everything that a finding can be named."""
    # The problems' texts are not needed to check a job, only to explain.
    from roomspec.checks.problems import PROBLEMS

    return (*PROBLEMS, *CHECKS)


def record_of(name: str) -> Check | None:
    """The record of that name; None where there is none."""
    return next((check for check in every_record() if check.name == name), None)
