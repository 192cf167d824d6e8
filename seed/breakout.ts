import type { Random } from './random.ts';
import { type ChosenSet, dialFor } from './toolroom.ts';
import type { DemoBreakout } from './types.ts';

/**
 * How breakout relates to installed torque by service temperature: median of R, scatter of ln R over all studs, and
 * share of studs that have to be cut. Assumed for the demo, not measured anywhere.
 */
interface BreakoutClass {
  readonly median: number;
  readonly sigma: number;
  readonly cut: number;
}

export function breakoutClass(temperature: number): BreakoutClass {
  if (temperature <= 120) return { median: 0.82, sigma: 0.1, cut: 0.01 };
  if (temperature <= 300) return { median: 1.1, sigma: 0.2, cut: 0.03 };
  return { median: 1.45, sigma: 0.28, cut: 0.08 };
}

/** Correlation of ln R between the studs of one joint: half of the scatter is the joint's own. */
const CORRELATION = 0.5;

/** Breakout ratio of each stud of one joint, lognormal about the median. */
export function breakoutRatios(studs: number, { median, sigma }: BreakoutClass, random: Random): number[] {
  const joint = Math.sqrt(CORRELATION) * random.normal();
  return Array.from({ length: studs }, () => {
    const stud = Math.sqrt(1 - CORRELATION) * random.normal();
    return median * Math.exp(sigma * (joint + stud));
  });
}

type Readings = DemoBreakout['readings'];

/** Readings as they are written down at the joint: pressure on the gauge, or torque with a hand wrench. */
export function breakoutReadings(
  torques: readonly number[],
  mustBeCut: (torque: number) => boolean,
  set: ChosenSet | null,
): Readings {
  return torques.map((torque, index): Readings[number] => {
    const bolt = index + 1;
    if (mustBeCut(torque)) return { bolt, outcome: 'cut', torque: null, dialled: null };
    if (set === null) {
      return {
        bolt,
        outcome: 'turned',
        torque: { text: String(Math.round(torque)), unit: 'N.m' },
        dialled: null,
      };
    }
    const { dialled, beyond } = dialFor(set, torque);
    return { bolt, outcome: beyond ? 'would not turn' : 'turned', torque: null, dialled };
  });
}
