import type { Words } from './finding-facts.ts';

type JointCode =
  | 'thread_unknown'
  | 'bolt_count_unknown'
  | 'bolt_circle_unknown'
  | 'yield_unknown'
  | 'nut_unknown'
  | 'friction_unknown'
  | 'target_missing'
  | 'limit_unknown'
  | 'protrusion_unknown'
  | 'friction_assumed'
  | 'table_value_unconfirmed'
  | 'table_value_confirmed'
  | 'count_differs'
  | 'thread_differs'
  | 'circle_differs'
  | 'limits_conflict'
  | 'above_bolt_limit'
  | 'below_bolt_limit'
  | 'above_flange_limit'
  | 'above_yield'
  | 'stud_short'
  | 'stud_protrusion_low'
  | 'stud_protrusion_unusual'
  | 'installed_torque_unknown'
  | 'breakout_above_wrench'
  | 'breakout_above_stud'
  | 'job_ends_before_start'
  | 'plan_unknown'
  | 'plan_not_approved';

const FRICTION_MISSING = {
  lubricant: 'No lubricant is entered for this joint.',
  coefficients: 'The lubricant has neither a nut factor nor both friction coefficients.',
  'bearing face':
    'Both friction coefficients are entered, but the nut is not known, so its bearing face is not known either.',
  'too small': 'The nut factor is smaller than the thread’s pitch alone needs.',
} as const;

function differs(entered: string, standard: string, reason: string): string {
  const both = `Entered: ${entered}. The flange standard: ${standard}.`;
  return reason === '' ? both : `${both} Reason: ${reason}`;
}

export const JOINT_WORDS: Words<JointCode> = {
  thread_unknown: ({ entered }) => ({
    title: 'Thread not known',
    detail:
      entered === null
        ? 'No thread is entered and the flange standard gives none for this joint.'
        : `“${entered}” is in no thread table of this program.`,
    remedy: 'Measure diameter and pitch of a stud and choose the thread, for example 7/8-9 UNC or M24x3.',
  }),
  bolt_count_unknown: () => ({
    title: 'Number of studs not known',
    detail:
      'No count is entered and the flange standard gives none. Without it there is no order to turn them in.',
    remedy: 'Count the studs at the joint and enter the number.',
  }),
  bolt_circle_unknown: () => ({
    title: 'Bolt circle not known',
    detail: 'Space between neighbouring studs is not checked.',
    remedy: 'Measure the bolt circle and enter it.',
  }),
  yield_unknown: ({ grade, thread, needed }) => ({
    title: 'Yield strength not known',
    detail:
      grade === null
        ? `No stud grade is entered. The yield strength is needed ${needed}.`
        : `The tables have no yield strength for ${grade}${thread === null ? '' : ` in ${thread}`}. It is needed ${needed}.`,
    remedy: 'Read the grade off the stud’s end and enter it, or enter the yield strength with its origin.',
  }),
  nut_unknown: ({ series }) => ({
    title: 'Nut not known',
    detail:
      series === null
        ? 'No nut standard is entered, so neither the fit of the cassette nor the stud’s protrusion is checked.'
        : `${series} has no nut for this thread, so neither the fit of the cassette nor the stud’s protrusion is checked.`,
    remedy: 'Measure the width across flats of a nut and choose its standard.',
  }),
  friction_unknown: ({ missing, work }) => ({
    title: 'Friction not known',
    detail: `${FRICTION_MISSING[missing]} ${work}`,
    remedy: 'Enter a nut factor, or both friction coefficients, with where they come from.',
  }),
  target_missing: () => ({
    title: 'No target entered',
    detail: 'The joint has no approved bolt stress, bolt load or torque to aim at.',
    remedy: 'Enter the target from the site’s approved procedure with its basis.',
  }),
  limit_unknown: ({ limit, needs }) => ({
    title: `${limit} not known`,
    detail: `The check against it was not made.`,
    remedy: needs,
  }),
  protrusion_unknown: ({ missing }) => ({
    title: 'Stud protrusion not known',
    detail: `Not known: ${missing.join(', ')}. Whether the nuts are fully engaged was not checked.`,
    remedy: 'Measure what is missing, or count the threads showing at both ends before the first pass.',
  }),
  friction_assumed: ({ lubricant, source }) => ({
    title: 'Friction is assumed',
    detail: `The friction of ${lubricant} rests on an assumption${source === '' ? '' : ` (${source})`}. The bolt load is no better known than it.`,
    remedy: 'Measure the nut factor with this lubricant, stud and nut, or have the assumption approved.',
  }),
  table_value_unconfirmed: ({ what, source, status, note, values, waits, rests }) => ({
    title: `${what}: ${status}${waits ? ', not confirmed' : ''}`,
    detail: [
      `${source}${note === '' ? '' : `: ${note}`}.`,
      values.length === 0 ? '' : ` In the table: ${values.join(', ')}.`,
      waits ? ' The setting rests on it.' : rests ? '' : ' The setting does not rest on it.',
    ].join(''),
    remedy: waits
      ? 'Compare with the standard or measure it, and confirm it in your name; or enter the value for this joint.'
      : 'Compare with the standard or measure it, then enter the value for this joint.',
  }),
  table_value_confirmed: ({ what, source, status, by }) => ({
    title: `${what}: ${status}, confirmed`,
    detail: `${source}. ${by.join('; ')}.`,
    remedy: 'Compare with the standard again if you doubt it.',
  }),
  count_differs: ({ entered, standard, reason }) => ({
    title: 'Stud count differs from the standard',
    detail: differs(entered, standard, reason),
    remedy: 'Count the studs at the joint; check the flange’s size and rating, or enter why it differs.',
  }),
  thread_differs: ({ entered, standard, reason }) => ({
    title: 'Thread differs from the standard',
    detail: differs(entered, standard, reason),
    remedy: 'Measure a stud; check the flange’s size and rating, or enter why it differs.',
  }),
  circle_differs: ({ entered, standard, reason }) => ({
    title: 'Bolt circle differs from the standard',
    detail: differs(entered, standard, reason),
    remedy: 'Measure the bolt circle; check the flange’s size and rating, or enter why it differs.',
  }),
  limits_conflict: ({ least, largest, whose }) => ({
    title: 'Limits contradict each other',
    detail: `The least bolt stress ${least} lies above the largest the ${whose} allows, ${largest}.`,
    remedy: 'Have the limits of this joint settled by the engineer responsible for it.',
  }),
  above_bolt_limit: ({ stress, limit, area }) => ({
    title: 'Bolt stress above its limit',
    detail: `Stress on the ${area} area ${stress}, allowed ${limit}.`,
    remedy: 'Lower the target, or have the limit reviewed.',
  }),
  below_bolt_limit: ({ stress, limit, area }) => ({
    title: 'Bolt stress below the least that is needed',
    detail: `Stress on the ${area} area ${stress}, at least ${limit}.`,
    remedy: 'Raise the target, or have the limit reviewed.',
  }),
  above_flange_limit: ({ stress, limit, area }) => ({
    title: 'Bolt stress above what the flange allows',
    detail: `Stress on the ${area} area ${stress}, allowed for the flange ${limit}.`,
    remedy: 'Lower the target, or have the flange’s limit reviewed.',
  }),
  above_yield: ({ share, kind }) => ({
    title: kind === 'axial' ? 'Stud above its yield strength' : 'Stud above its yield strength with torsion',
    detail:
      kind === 'axial'
        ? `Axial stress on the tensile area is ${share} of yield.`
        : `Tension and torsion together are ${share} of yield (${kind.replace('combined, ', '')} section modulus).`,
    remedy: 'Lower the target, or use a lubricant with less friction.',
  }),
  stud_short: ({ protrusion }) => ({
    title: 'Stud too short',
    detail: `The stud ends ${protrusion} inside each nut when it is centred; the nuts are not fully engaged.`,
    remedy: 'Fit longer studs, or check grip and stud length.',
  }),
  stud_protrusion_low: ({ threads }) => ({
    title: 'Less than one thread showing',
    detail: `The centred stud shows ${threads} threads at each end.`,
    remedy: 'Check that both nuts are fully engaged before the first pass.',
  }),
  stud_protrusion_unusual: ({ threads }) => ({
    title: 'Stud protrusion outside two to three threads',
    detail: `The centred stud shows ${threads} threads at each end. Standard stud lengths often give one to two.`,
    remedy: 'Centre the studs; look for the wrong stud length where the number is large.',
  }),
  installed_torque_unknown: ({ instead }) => ({
    title: 'Installed torque not known',
    detail:
      instead === null
        ? 'No tightening of this joint is recorded and its target can’t be computed.'
        : `No tightening of this joint is recorded. Its target torque of ${instead} stands in for it and is an assumption.`,
    remedy: 'Look for the record of the last tightening and enter it.',
  }),
  breakout_above_wrench: ({ allowance, capacity }) => ({
    title: 'Breakout may need more than this set can give',
    detail: `Common practice allows for ${allowance}; this set reaches ${capacity}.`,
    remedy: 'Have a larger set or another method ready before the first nut.',
  }),
  breakout_above_stud: ({ allowance, elastic, plastic }) => ({
    title: 'A seized stud may shear before it turns',
    detail: `Common practice allows for ${allowance}; a stud seized in its thread yields at ${elastic} (first yield) to ${plastic} (fully plastic) if it still carries its load.`,
    remedy:
      'Stop at the highest pressure given and take another method: split or cut the nut, or heat under permit.',
  }),
  job_ends_before_start: ({ startsOn, endsOn }) => ({
    title: 'Job ends before it starts',
    detail: `Start ${startsOn}, end ${endsOn}.`,
    remedy: 'Set the last day to the first day or later.',
  }),
  plan_unknown: ({ plan }) => ({
    title: 'Pass plan not known',
    detail: plan === '' ? 'No pass plan is chosen.' : `This program has no pass plan “${plan}”.`,
    remedy: 'Choose one of the pass plans offered.',
  }),
  plan_not_approved: ({ plan, version }) => ({
    title: 'Pass plan not approved',
    detail: `Nobody has approved version ${version} of the site’s plan “${plan}”.`,
    remedy: 'Choose an approved plan, or have this version approved by the engineer responsible for it.',
  }),
};
