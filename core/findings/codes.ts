/** Every finding a setting can carry. A code, once released, keeps its meaning: frozen sheets name it. */
export const FINDING_CODES = [
  // Missing data: each says what to measure or enter.
  'thread_unknown',
  'bolt_count_unknown',
  'bolt_circle_unknown',
  'yield_unknown',
  'nut_unknown',
  'friction_unknown',
  'target_missing',
  'limit_unknown',
  'looseness_unknown',
  'clearance_unknown',
  'protrusion_unknown',
  'rating_unknown',
  'part_missing',
  'gauge_certificate_points_missing',
  'plan_unknown',
  // Joint against table and limits.
  'friction_assumed',
  'table_value_unconfirmed',
  'count_differs',
  'thread_differs',
  'circle_differs',
  'limits_conflict',
  'above_bolt_limit',
  'below_bolt_limit',
  'above_flange_limit',
  'above_yield',
  'stud_short',
  'stud_protrusion_low',
  'stud_protrusion_unusual',
  // Does the set fit.
  'opening_too_small',
  'opening_too_large',
  'reducer_does_not_fit',
  'family_differs',
  'neighbour_in_the_way',
  'hub_in_the_way',
  // Is it strong enough.
  'torque_above_rating',
  'pressure_above_rating',
  'breakout_above_wrench',
  'breakout_above_stud',
  'installed_torque_unknown',
  // Gauge.
  'above_gauge_scale',
  'gauge_scale_end',
  'rounding_large',
  // Calibration.
  'certificate_missing',
  'certificate_lapsed',
  'certificate_lapses_during_job',
  'certificate_later_than_job',
  'certificate_outside_limits',
  'combination_not_certified',
  'reference_uncertainty_unknown',
  'above_certified_points',
  'below_certified_points',
  // Custody.
  'tool_not_available',
  'tool_barred',
  // Dates.
  'job_ends_before_start',
] as const;

export type FindingCode = (typeof FINDING_CODES)[number];
