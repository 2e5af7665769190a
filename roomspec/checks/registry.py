"""Every check, in one visible tuple: a new one is its file and a line here."""

from roomspec.checks.record import Check
from roomspec.checks.rules.fire_and_safety.asbestos_survey_first import asbestos_survey_first
from roomspec.checks.rules.fire_and_safety.cables_likely_here import cables_likely_here
from roomspec.checks.rules.fire_and_safety.heavy_pack import heavy_pack
from roomspec.checks.rules.fire_and_safety.lead_paint_likely import lead_paint_likely
from roomspec.checks.rules.fire_and_safety.lining_class_too_low import lining_class_too_low
from roomspec.checks.rules.fire_and_safety.lining_class_unknown import lining_class_unknown
from roomspec.checks.rules.fire_and_safety.socket_near_bath import socket_near_bath
from roomspec.checks.rules.fire_and_safety.too_near_heat import too_near_heat
from roomspec.checks.rules.fixing.battens_run_with_panels import battens_run_with_panels
from roomspec.checks.rules.fixing.battens_too_far_apart import battens_too_far_apart
from roomspec.checks.rules.fixing.box_not_flush import box_not_flush
from roomspec.checks.rules.fixing.edge_without_trim import edge_without_trim
from roomspec.checks.rules.fixing.frame_behind_lining import frame_behind_lining
from roomspec.checks.rules.fixing.frame_needs_screws import frame_needs_screws
from roomspec.checks.rules.fixing.glue_on_bad_surface import glue_on_bad_surface
from roomspec.checks.rules.fixing.mitre_not_possible import mitre_not_possible
from roomspec.checks.rules.fixing.nothing_behind_fixture import nothing_behind_fixture
from roomspec.checks.rules.fixing.nothing_to_screw_into import nothing_to_screw_into
from roomspec.checks.rules.fixing.screw_too_short import screw_too_short
from roomspec.checks.rules.fixing.too_heavy_for_wall import too_heavy_for_wall
from roomspec.checks.rules.fixing.trim_does_not_fit import trim_does_not_fit
from roomspec.checks.rules.fixing.trim_shorter_than_wall import trim_shorter_than_wall
from roomspec.checks.rules.laying.bond_on_upright_panels import bond_on_upright_panels
from roomspec.checks.rules.laying.cut_at_outside_corner import cut_at_outside_corner
from roomspec.checks.rules.laying.finishes_overlap import finishes_overlap
from roomspec.checks.rules.laying.joint_without_batten import joint_without_batten
from roomspec.checks.rules.laying.joints_too_close import joints_too_close
from roomspec.checks.rules.laying.narrow_row import narrow_row
from roomspec.checks.rules.laying.narrow_strip import narrow_strip
from roomspec.checks.rules.laying.no_gap import no_gap
from roomspec.checks.rules.laying.no_room_to_move import no_room_to_move
from roomspec.checks.rules.laying.offset_too_large import offset_too_large
from roomspec.checks.rules.laying.panel_laid_wrong_way import panel_laid_wrong_way
from roomspec.checks.rules.laying.set_broken import set_broken
from roomspec.checks.rules.laying.short_column_end import short_column_end
from roomspec.checks.rules.laying.short_row_end import short_row_end
from roomspec.checks.rules.laying.wall_taller_than_panel import wall_taller_than_panel
from roomspec.checks.rules.order_and_price.no_labour import no_labour
from roomspec.checks.rules.order_and_price.price_expired import price_expired
from roomspec.checks.rules.order_and_price.price_missing import price_missing
from roomspec.checks.rules.order_and_price.quantity_without_product import quantity_without_product
from roomspec.checks.rules.order_and_price.too_late_to_acclimatise import too_late_to_acclimatise
from roomspec.checks.rules.survey.boxes_overlap import boxes_overlap
from roomspec.checks.rules.survey.ceiling_without_plan import ceiling_without_plan
from roomspec.checks.rules.survey.ceilings_overlap import ceilings_overlap
from roomspec.checks.rules.survey.diagonal_disagrees import diagonal_disagrees
from roomspec.checks.rules.survey.dimension_unconfirmed import dimension_unconfirmed
from roomspec.checks.rules.survey.door_size_unlikely import door_size_unlikely
from roomspec.checks.rules.survey.floor_too_steep import floor_too_steep
from roomspec.checks.rules.survey.heights_disagree import heights_disagree
from roomspec.checks.rules.survey.joint_outside_wall import joint_outside_wall
from roomspec.checks.rules.survey.obstacle_outside_wall import obstacle_outside_wall
from roomspec.checks.rules.survey.obstacles_overlap import obstacles_overlap
from roomspec.checks.rules.survey.opening_door_off_floor import opening_door_off_floor
from roomspec.checks.rules.survey.opening_outside_wall import opening_outside_wall
from roomspec.checks.rules.survey.openings_overlap import openings_overlap
from roomspec.checks.rules.survey.point_in_opening import point_in_opening
from roomspec.checks.rules.survey.point_outside_wall import point_outside_wall
from roomspec.checks.rules.survey.region_outside_wall import region_outside_wall
from roomspec.checks.rules.survey.room_height_unlikely import room_height_unlikely
from roomspec.checks.rules.survey.step_in_substrate import step_in_substrate
from roomspec.checks.rules.survey.substrate_not_stated import substrate_not_stated
from roomspec.checks.rules.survey.surface_unknown import surface_unknown
from roomspec.checks.rules.survey.survey_does_not_close import survey_does_not_close
from roomspec.checks.rules.survey.too_long_to_get_in import too_long_to_get_in
from roomspec.checks.rules.survey.wall_not_flat import wall_not_flat
from roomspec.checks.rules.survey.wall_out_of_plumb import wall_out_of_plumb
from roomspec.checks.rules.water.panel_not_for_wet import panel_not_for_wet
from roomspec.checks.rules.water.panel_stands_in_water import panel_stands_in_water
from roomspec.checks.rules.water.seal_is_not_tanking import seal_is_not_tanking
from roomspec.checks.rules.water.substrate_not_for_wet import substrate_not_for_wet
from roomspec.checks.rules.water.timber_behind_water import timber_behind_water
from roomspec.checks.rules.water.unsealed_wet_joint import unsealed_wet_joint
from roomspec.checks.rules.water.wet_zone_too_low import wet_zone_too_low

CHECKS: tuple[Check, ...] = (
    survey_does_not_close,
    diagonal_disagrees,
    heights_disagree,
    opening_outside_wall,
    openings_overlap,
    obstacle_outside_wall,
    obstacles_overlap,
    boxes_overlap,
    floor_too_steep,
    ceiling_without_plan,
    ceilings_overlap,
    point_in_opening,
    point_outside_wall,
    region_outside_wall,
    joint_outside_wall,
    room_height_unlikely,
    opening_door_off_floor,
    door_size_unlikely,
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
    short_row_end,
    short_column_end,
    no_gap,
    joint_without_batten,
    joints_too_close,
    offset_too_large,
    set_broken,
    no_room_to_move,
    unsealed_wet_joint,
    panel_not_for_wet,
    substrate_not_for_wet,
    wet_zone_too_low,
    seal_is_not_tanking,
    timber_behind_water,
    panel_stands_in_water,
    battens_run_with_panels,
    battens_too_far_apart,
    screw_too_short,
    too_heavy_for_wall,
    glue_on_bad_surface,
    frame_needs_screws,
    nothing_behind_fixture,
    trim_does_not_fit,
    frame_behind_lining,
    box_not_flush,
    edge_without_trim,
    mitre_not_possible,
    nothing_to_screw_into,
    trim_shorter_than_wall,
    lining_class_too_low,
    lining_class_unknown,
    asbestos_survey_first,
    lead_paint_likely,
    cables_likely_here,
    too_near_heat,
    heavy_pack,
    socket_near_bath,
    price_missing,
    price_expired,
    too_late_to_acclimatise,
    no_labour,
    quantity_without_product,
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
