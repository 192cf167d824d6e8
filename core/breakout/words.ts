import type { Forecast, Opening } from '../contract/forecast.ts';
import { showQuantity } from '../text/number.ts';
import type { ForecastEvidence } from './forecast.ts';

const many = (count: number, one: string, more = `${one}s`) => `${count} ${count === 1 ? one : more}`;

/**
 * A history of openings in one sentence.
 *
 * @param openings in order of time
 * @returns a sentence; says what is missing where there is too little to compare
 * @example historyFinding([]) // 'No breakout has been recorded.'
 * @source median and largest reading against the torque before
 */
export function historyFinding(openings: readonly Opening[]): string {
  const last = openings.at(-1);
  if (last === undefined) return 'No breakout has been recorded.';
  const withRatio = openings.filter(({ median }) => median !== null);
  const newest = withRatio.at(-1);
  if (newest === undefined || newest.median === null) {
    return `${many(openings.length, 'opening')}, none with a ratio: ${last.whyNoRatio ?? 'no stud turned'}.`;
  }
  const clean =
    newest.cleanRatio === null
      ? 'clean value not known'
      : `${newest.standing}, ${newest.cleanRatio.toFixed(2)}`;
  const stuck = openings.reduce((sum, { notTurned }) => sum + notTurned, 0);
  const without = openings.length - withRatio.length;
  return [
    `Newest of ${many(withRatio.length, 'opening')} with a ratio: ${newest.median.toFixed(2)} × the installed torque in the middle, ${(newest.highest ?? newest.median).toFixed(2)} × at most (${clean}).`,
    ...(stuck === 0 ? [] : [`${many(stuck, 'stud was', 'studs were')} cut or would not turn in all.`]),
    ...(without === 0 ? [] : [`${many(without, 'opening has', 'openings have')} no ratio.`]),
  ].join(' ');
}

/**
 * What a forecast rests on, in words.
 *
 * @param evidence counts behind it
 * @param className words of the class
 * @returns a sentence or two; says plainly when it is too little
 * @example evidenceWords({ sufficiency: 'too few to say', ownOpenings: 0, ownReadings: 0, classJoints: 0, classOpenings: 0, classReadings: 0, effective: 0 }, 'all openings of the plant').startsWith('Too few to say') // true
 * @source rule of this program
 */
export function evidenceWords(evidence: ForecastEvidence, className: string): string {
  const { sufficiency, ownOpenings, classJoints, classOpenings, classReadings, effective } = evidence;
  const base = `${className}: ${many(classReadings, 'reading')} from ${many(classOpenings, 'opening')} of ${many(classJoints, 'joint')}, worth ${effective.toFixed(1)} independent ones; ${ownOpenings === 0 ? 'none' : ownOpenings} of this joint.`;
  if (sufficiency === 'too few to say') {
    return `Too few to say from this plant’s own openings; the numbers are common practice. ${base}`;
  }
  return sufficiency === 'few' ? `Few: expect the numbers to move. ${base}` : base;
}

/**
 * A forecast in one sentence.
 *
 * @param forecast its ratios, torques and evidence
 * @returns a sentence
 * @example forecastFinding({ ratio: null, torque: null, evidence: { sufficiency: 'few' }, missing: ['number of bolts'] }) // 'No forecast: number of bolts not known.'
 * @source rule of this program
 */
export function forecastFinding({
  ratio,
  torque,
  evidence,
  missing,
}: Pick<Forecast, 'ratio' | 'torque' | 'missing'> & {
  readonly evidence: Pick<Forecast['evidence'], 'sufficiency'>;
}): string {
  if (ratio === null) return `No forecast: ${missing.join(', ')} not known.`;
  const thin =
    evidence.sufficiency === 'too few to say' ? 'By common practice alone, ' : 'In 95 of 100 openings ';
  const of = `the worst bolt takes at most ${ratio.worstBolt.high.toFixed(2)} × the installed torque`;
  const size =
    torque === null
      ? '; the installed torque is not known'
      : `, ${showQuantity(torque.worstBolt.high, 'N.m', 3)}`;
  return `${thin}${of}${size}; a middling bolt ${ratio.oneBolt.median.toFixed(2)} ×.`;
}
