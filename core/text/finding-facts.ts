import type { FindingCode } from '../findings/codes.ts';

type Nothing = Readonly<Record<never, never>>;

/** What each finding's words are made of. Quantities come as text with their unit, ready to read. */
export interface FindingFacts {
  thread_unknown: { entered: string | null };
  bolt_count_unknown: Nothing;
  bolt_circle_unknown: Nothing;
  yield_unknown: { grade: string | null; thread: string | null; needed: 'for the target' | 'for the check' };
  nut_unknown: { series: string | null };
  friction_unknown: { missing: 'lubricant' | 'coefficients' | 'bearing face' | 'too small'; work: string };
  target_missing: Nothing;
  limit_unknown: { limit: string; needs: string };
  looseness_unknown: { opening: string };
  clearance_unknown: { check: 'neighbour' | 'hub' | 'stud' | 'along the stud'; missing: readonly string[] };
  protrusion_unknown: { missing: readonly string[] };
  rating_unknown: { part: string };
  part_missing: { part: string };
  gauge_certificate_points_missing: { reason: 'no points' | 'outside the points' };
  plan_unknown: { plan: string };
  plan_not_approved: { plan: string; version: number };
  bolt_set_unknown: { index: number; sets: number };
  gasket_target_unknown: { needs: readonly string[] };
  check_not_made: { check: string; needs: readonly string[] };
  torque_tool_unknown: { method: string };
  gasket_target_not_reached: { asked: string; selected: string; governing: string };
  gasket_stress_low: { gasket: string; what: string; stress: string; limit: string };
  gasket_stress_high: { gasket: string; stress: string; limit: string };
  flange_rotation_high: { gasket: string; stress: string; limit: string };
  joint_parts: { gasket: string; case: string; endForce: string; load: string };
  below_code_minimum: { gasket: string; load: string; minimum: string; larger: string };
  hot_load_low: { load: string; needed: string | null };
  above_yield_hot: { share: string; temperature: string };
  strip_margin_low: { weaker: string; margin: string };
  flange_rating_exceeded: { case: string; pressure: string; rated: string; temperature: string };
  torque_tool_unsuitable: { tool: string; reason: string };
  further_tools_unchecked: { tools: number; chosen: number };
  tension_has_no_torque: Nothing;
  friction_assumed: { lubricant: string; source: string };
  table_value_unconfirmed: {
    what: string;
    source: string;
    status: string;
    note: string;
    values: readonly string[];
    /** Whether the setting waits for the confirmation. */
    waits: boolean;
    /** Whether the setting rests on it at all. */
    rests: boolean;
  };
  table_value_confirmed: { what: string; source: string; status: string; by: readonly string[] };
  count_differs: { entered: string; standard: string; reason: string };
  thread_differs: { entered: string; standard: string; reason: string };
  circle_differs: { entered: string; standard: string; reason: string };
  limits_conflict: { least: string; largest: string; whose: 'bolt' | 'flange' };
  above_bolt_limit: { stress: string; limit: string; area: string };
  below_bolt_limit: { stress: string; limit: string; area: string };
  above_flange_limit: { stress: string; limit: string; area: string };
  above_yield: { share: string; kind: 'axial' | 'combined, elastic' | 'combined, plastic' };
  stud_short: { protrusion: string };
  stud_protrusion_low: { threads: string };
  stud_protrusion_unusual: { threads: string };
  opening_too_small: { opening: string; nut: string; remedies: readonly string[] };
  opening_too_large: { opening: string; nut: string; remedies: readonly string[] };
  reducer_does_not_fit: { reducer: string; into: string };
  family_differs: { drive: string; cassette: string };
  neighbour_in_the_way: { overlap: string };
  hub_in_the_way: { head: string; gap: string };
  torque_above_rating: { part: string; torque: string; rating: string };
  pressure_above_rating: { part: string; pressure: string; rating: string };
  hose_age: { hose: string; made: { on: string; until: string } | null; endsOn: string };
  breakout_above_wrench: { allowance: string; capacity: string };
  breakout_above_stud: { allowance: string; elastic: string; plastic: string };
  installed_torque_unknown: { instead: string | null };
  above_gauge_scale: { pressure: string; scale: string };
  gauge_scale_end: { pressure: string; scale: string; end: 'low' | 'high' };
  rounding_large: { wanted: string; given: string; share: string };
  certificate_missing: { part: string; reason: 'none' | 'no usable points' };
  certificate_lapsed: { certificate: string; validUntil: string; startsOn: string };
  certificate_lapses_during_job: { certificate: string; validUntil: string; endsOn: string };
  certificate_later_than_job: { certificate: string; calibratedOn: string; startsOn: string };
  certificate_outside_limits: { certificate: string; condition: string };
  combination_not_certified: { certificate: string };
  reference_uncertainty_unknown: { certificate: string };
  certificate_not_straight: { certificate: string; residual: string; share: string };
  above_certified_points: { pressure: string; highest: string };
  below_certified_points: { pressure: string; lowest: string; passes: readonly string[]; final: boolean };
  tool_not_available: { part: string; status: string };
  tool_barred: { part: string; status: string };
  coupling_unknown: { parts: readonly string[] };
  reaction_unknown: { part: string };
  line_agreement_unknown: { wrenches: number };
  stud_wider_than_bore: { stud: string; bore: string };
  stud_hits_head: { stands: string; room: string };
  head_too_high: { height: string; gap: string };
  counterhold_missing: Nothing;
  counterhold_does_not_fit: { opening: string; nut: string; sits: 'too small' | 'too large' };
  coupling_differs: { first: string; other: string; names: readonly [string, string] };
  pump_connections_few: { pump: string; connections: number; wrenches: number };
  lines_disagree: { pressure: string; torques: readonly string[]; difference: string; limit: string };
  gauge_second_unit: { gauge: string; unit: string; also: string };
  tool_due: {
    part: string;
    what: string;
    state: 'overdue' | 'not known' | 'lapses';
    reason: string;
    on: string | null;
    endsOn: string;
  };
  tool_in_case: { part: string; cases: readonly string[] };
  kit_reserved: { part: string; kit: string; from: string; to: string; joints: number };
  job_ends_before_start: { startsOn: string; endsOn: string };
}

/** Plain statements: what it is, what stands against it, what to do or measure. */
export interface Wording {
  readonly title: string;
  readonly detail: string;
  readonly remedy: string;
}

export type Words<C extends FindingCode> = { readonly [K in C]: (facts: FindingFacts[K]) => Wording };
