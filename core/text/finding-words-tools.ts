import type { Words } from './finding-facts.ts';

type ToolCode =
  | 'looseness_unknown'
  | 'clearance_unknown'
  | 'rating_unknown'
  | 'part_missing'
  | 'gauge_certificate_points_missing'
  | 'opening_too_small'
  | 'opening_too_large'
  | 'reducer_does_not_fit'
  | 'family_differs'
  | 'neighbour_in_the_way'
  | 'hub_in_the_way'
  | 'torque_above_rating'
  | 'pressure_above_rating'
  | 'hose_age'
  | 'above_gauge_scale'
  | 'gauge_scale_end'
  | 'rounding_large'
  | 'certificate_missing'
  | 'certificate_lapsed'
  | 'certificate_lapses_during_job'
  | 'certificate_later_than_job'
  | 'certificate_outside_limits'
  | 'combination_not_certified'
  | 'reference_uncertainty_unknown'
  | 'certificate_not_straight'
  | 'above_certified_points'
  | 'below_certified_points'
  | 'tool_not_available'
  | 'tool_barred'
  | 'torque_tool_unknown'
  | 'torque_tool_unsuitable'
  | 'further_tools_unchecked'
  | 'tension_has_no_torque';

function fitRemedy(remedies: readonly string[]): string {
  return remedies.length === 0
    ? 'Nothing on the register fits this nut; enter or hire a cassette of the right size.'
    : `On the register: ${remedies.join('; ')}.`;
}

const UNKNOWN_ROOM = {
  neighbour: 'Space to the neighbour not known',
  hub: 'Space to hub or pipe not known',
  stud: 'Room for the stud in the head not known',
  'along the stud': 'Space along the stud not known',
} as const;

export const TOOL_WORDS: Words<ToolCode> = {
  looseness_unknown: ({ opening }) => ({
    title: 'Looseness of the opening not known',
    detail: `How far the ${opening} opening stands above its nominal size is not known. A loose opening rounds the nut’s corners.`,
    remedy: 'Measure the opening across flats and enter how far it is above nominal.',
  }),
  clearance_unknown: ({ check, missing }) => ({
    title: UNKNOWN_ROOM[check],
    detail: `Not known: ${missing.join(', ')}. The check was not made.`,
    remedy: 'Measure what is missing, or try the tool on the joint before the job.',
  }),
  rating_unknown: ({ part }) => ({
    title: 'Torque rating not known',
    detail: `${part} has no torque rating entered; it was not checked.`,
    remedy: 'Read the rating off the part or its papers and enter it.',
  }),
  part_missing: ({ part }) => ({
    title: `No ${part} chosen`,
    detail: `Nothing about the ${part} was checked.`,
    remedy: `Choose the ${part} that will be used.`,
  }),
  gauge_certificate_points_missing: ({ reason }) => ({
    title: 'Gauge reading not corrected',
    detail:
      reason === 'no points'
        ? 'The gauge’s certificate has no points entered, so its error is taken as zero.'
        : 'The pressure lies outside the points of the gauge’s certificate, so its error is taken as zero.',
    remedy: 'Enter indicated and reference pressure from the certificate.',
  }),
  opening_too_small: ({ opening, nut, remedies }) => ({
    title: 'Opening too small for the nut',
    detail: `Opening ${opening}, nut ${nut} across flats.`,
    remedy: fitRemedy(remedies),
  }),
  opening_too_large: ({ opening, nut, remedies }) => ({
    title: 'Opening too large for the nut',
    detail: `Opening ${opening}, nut ${nut} across flats; no stated looseness reaches that far.`,
    remedy: fitRemedy(remedies),
  }),
  reducer_does_not_fit: ({ reducer, into }) => ({
    title: 'Reducer does not fit',
    detail: `Outside of the reducer ${reducer}, opening it goes into ${into}.`,
    remedy: 'Choose a reducer whose outside is the size of that opening.',
  }),
  family_differs: ({ drive, cassette }) => ({
    title: 'Drive unit and cassette do not belong together',
    detail: `Drive unit of family “${drive}”, cassette of family “${cassette}”.`,
    remedy: 'Choose a cassette of the drive unit’s family.',
  }),
  neighbour_in_the_way: ({ overlap }) => ({
    title: 'Neighbouring nut in the way',
    detail: `The head and the corner of the neighbour’s nut overlap by ${overlap}.`,
    remedy: 'Choose a head with a smaller radius.',
  }),
  hub_in_the_way: ({ head, gap }) => ({
    title: 'Hub or pipe in the way',
    detail: `Head radius ${head}, free distance from the stud’s centre ${gap}.`,
    remedy: 'Choose a head with a smaller radius.',
  }),
  torque_above_rating: ({ part, torque, rating }) => ({
    title: 'Torque above a rating',
    detail: `${part}: ${torque} needed, ${rating} allowed.`,
    remedy: 'Choose a part with a higher rating. Nobody can release this.',
  }),
  pressure_above_rating: ({ part, pressure, rating }) => ({
    title: 'Pressure above a rating',
    detail: `${part}: ${pressure} needed, ${rating} allowed.`,
    remedy: 'Choose a larger drive unit or a part with a higher rating. Nobody can release this.',
  }),
  hose_age: ({ hose, made, endsOn }) => ({
    title: made === null ? 'Age of the hose not known' : 'Hose too old',
    detail:
      made === null
        ? `${hose}: the day it was made is not known. That is not a pass.`
        : `${hose}: made on ${made.on}, to be used until ${made.until} at the latest; the job ends on ${endsOn}.`,
    remedy:
      made === null
        ? 'Read the date on the hose assembly and enter it, or choose another hose.'
        : 'Choose a younger hose and have this one replaced. The site’s procedure may ask for less than six years.',
  }),
  above_gauge_scale: ({ pressure, scale }) => ({
    title: 'Pressure beyond the gauge’s scale',
    detail: `${pressure} needed, the scale ends at ${scale}.`,
    remedy: 'Choose a gauge with a longer scale.',
  }),
  gauge_scale_end: ({ pressure, scale, end }) => ({
    title: end === 'low' ? 'Pressure low on the gauge’s scale' : 'Pressure high on the gauge’s scale',
    detail: `${pressure} on a scale to ${scale}. Gauges are read well between 20 and 90 % of their scale.`,
    remedy: 'Choose a gauge on which the pressure lies nearer the middle.',
  }),
  rounding_large: ({ wanted, given, share }) => ({
    title: 'Rounding to the gauge’s mark is coarse',
    detail: `Wanted ${wanted}, the mark gives ${given}: ${share} apart.`,
    remedy: 'Choose a gauge with finer marks or a smaller drive unit.',
  }),
  certificate_missing: ({ part, reason }) => ({
    title: 'No certificate',
    detail:
      reason === 'none'
        ? `${part} has no certificate on the register.`
        : `The certificate of ${part} has no points that give a rising line of torque over pressure.`,
    remedy: 'Enter the certificate with its points, or choose another one of its kind.',
  }),
  certificate_lapsed: ({ certificate, validUntil, startsOn }) => ({
    title: 'Certificate lapsed',
    detail: `Certificate ${certificate} was valid until ${validUntil}; the job starts on ${startsOn}.`,
    remedy: 'Have it calibrated, or choose another one of its kind.',
  }),
  certificate_lapses_during_job: ({ certificate, validUntil, endsOn }) => ({
    title: 'Certificate lapses before the job ends',
    detail: `Certificate ${certificate} is valid until ${validUntil}; the job ends on ${endsOn}.`,
    remedy: 'Finish by that day, have it calibrated before, or choose another one of its kind.',
  }),
  certificate_later_than_job: ({ certificate, calibratedOn, startsOn }) => ({
    title: 'Certificate is later than the job',
    detail: `Certificate ${certificate} is of ${calibratedOn}; the job starts on ${startsOn}.`,
    remedy: 'Enter the certificate that was in force then, or correct the dates.',
  }),
  certificate_outside_limits: ({ certificate, condition }) => ({
    title: 'Certificate says outside limits',
    detail: `Certificate ${certificate}, ${condition}: outside limits.`,
    remedy: 'Have it adjusted and calibrated again, or choose another one of its kind.',
  }),
  combination_not_certified: ({ certificate }) => ({
    title: 'Combination never certified together',
    detail: `Certificate ${certificate} does not name the cassette and reducers chosen here.`,
    remedy: 'Have this combination calibrated, or use the one the certificate names.',
  }),
  certificate_not_straight: ({ certificate, residual, share }) => ({
    title: 'Certificate’s points do not lie on a line',
    detail: `A point of certificate ${certificate} lies ${residual} from the line through all of them, ${share} of the highest torque. The line can't be trusted to turn torque into pressure.`,
    remedy: 'Compare the points with the printed certificate; enter it anew, or have the wrench calibrated.',
  }),
  reference_uncertainty_unknown: ({ certificate }) => ({
    title: 'Uncertainty of the reference not known',
    detail: `Certificate ${certificate} states no uncertainty; the budget leaves that part out and is too small.`,
    remedy: 'Ask the laboratory for it and enter it.',
  }),
  above_certified_points: ({ pressure, highest }) => ({
    title: 'Pressure above the certified points',
    detail: `${pressure} needed, certified up to ${highest}. The line is not extended beyond it.`,
    remedy: 'Choose a larger drive unit, or have this one calibrated higher.',
  }),
  below_certified_points: ({ pressure, lowest, passes, final }) => ({
    title: 'Pressure below the certified points',
    detail: `${pressure} in ${passes.join(', ')}, certified from ${lowest} up. The torque there is an extension of the line.`,
    remedy: final
      ? 'Choose a smaller drive unit, or have this one calibrated lower.'
      : 'Accepted before the final pass; the certified range begins above it.',
  }),
  tool_not_available: ({ part, status }) => ({
    title: 'Not in the tool room',
    detail: `${part}: ${status}.`,
    remedy: 'Make sure that it is back in time, or choose another one.',
  }),
  tool_barred: ({ part, status }) => ({
    title: 'Barred from use',
    detail: `${part}: ${status}. Nobody can release this for a job.`,
    remedy: 'Choose another one.',
  }),
  torque_tool_unknown: ({ method }) => ({
    title: 'Tool not entered',
    detail: `The ${method} has no scale entered, so nothing can be set on it.`,
    remedy: 'Enter the tool with its scale or steps and its certificate.',
  }),
  torque_tool_unsuitable: ({ tool, reason }) => ({
    title: 'This torque can’t be set on the tool',
    detail: `${tool}: ${reason}.`,
    remedy: 'Choose another tool, or check target and limits.',
  }),
  further_tools_unchecked: ({ tools, chosen }) => ({
    title: `${tools} tools at the same time, ${chosen === 1 ? 'one' : chosen} of them checked`,
    detail:
      'One pressure serves all tools only where their certificates agree at it. Only the wrenches chosen here were looked at.',
    remedy:
      'Choose the further wrenches of this pump, so that their certificates are compared at this pressure.',
  }),
  tension_has_no_torque: () => ({
    title: 'Tensioned: no torque belongs to this joint',
    detail:
      'The load is brought in by stretching the studs; the pressure on the tensioner comes from its own procedure.',
    remedy: 'Record the residual bolt load that the tensioning procedure gives.',
  }),
};
