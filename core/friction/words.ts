import type { FrictionEvidence, FrictionGroup } from '../contract/friction.ts';

const percent = (part: number) => `${(part * 100).toFixed(Math.abs(part) < 0.1 ? 1 : 0)} %`;
const many = (count: number, noun: string) => `${count} ${noun}${count === 1 ? '' : 's'}`;

/**
 * What a group of measured nut factors says, in a sentence or two.
 *
 * @param group as worked out
 * @returns words; says plainly what too few tightenings can't say
 * @example groupWords({ name: '', events: 1, joints: 1, bolts: 4, mean: 0.16, within: 0.01, between: null, lowest: 0.15, highest: 0.17, meanInterval: null, nextBolt: null, assumed: null, loadShare: null, trend: null }).startsWith('Too few to say') // true
 * @source rule of this program
 */
export function groupWords(group: Omit<FrictionGroup, 'words'>): string {
  const { events, nextBolt, assumed, loadShare, trend, meanInterval } = group;
  if (nextBolt === null || meanInterval === null) {
    return `Too few to say what the next tightening will have: ${many(events, 'tightening')} of at least 3.`;
  }
  return [
    `A bolt of the next tightening: K ${nextBolt.low.toFixed(3)} to ${nextBolt.high.toFixed(3)}, nine times of ten.`,
    assumed === null || loadShare === null
      ? 'No nut factor was assumed for them.'
      : assumed >= meanInterval.low && assumed <= meanInterval.high
        ? `The assumed ${assumed.toFixed(3)} lies in the interval of the mean.`
        : `The assumed ${assumed.toFixed(3)} lies outside the interval of the mean: the load was ${percent(loadShare.middle)} of the one it promised.`,
    ...(trend === null
      ? []
      : trend.low > 0
        ? [`Rising by ${percent(trend.slope)} a year.`]
        : trend.high < 0
          ? [`Falling by ${percent(-trend.slope)} a year.`]
          : []),
  ].join(' ');
}

/**
 * Measured friction in one sentence.
 *
 * @param groups groups as worked out
 * @param leftOut tightenings with measured loads that gave no nut factor
 * @returns a sentence
 * @example frictionFinding([], []) // 'No bolt load has been measured beside a torque yet.'
 * @source rule of this program
 */
export function frictionFinding(
  groups: readonly FrictionGroup[],
  leftOut: FrictionEvidence['leftOut'],
): string {
  const rest =
    leftOut.length === 0
      ? ''
      : ` ${many(leftOut.length, 'tightening')} with measured loads could not be used.`;
  if (groups.length === 0) return `No bolt load has been measured beside a torque yet.${rest}`;
  const bolts = groups.reduce((sum, group) => sum + group.bolts, 0);
  const events = groups.reduce((sum, group) => sum + group.events, 0);
  const off = groups.filter(
    ({ assumed, meanInterval }) =>
      assumed !== null &&
      meanInterval !== null &&
      (assumed < meanInterval.low || assumed > meanInterval.high),
  );
  const verdict =
    off.length === 0
      ? 'no assumed nut factor is contradicted'
      : `the assumed nut factor is contradicted for ${off.map(({ name }) => name).join('; ')}`;
  return `${many(bolts, 'measured bolt')} of ${many(events, 'tightening')}: ${verdict}.${rest}`;
}
