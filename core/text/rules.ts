import type { RetighteningView, Rule } from '../contract/card-views.ts';
import type { Method } from '../contract/setting.ts';
import { LEAST_DWELL } from '../sequence/dwell.ts';
import { NO_TURN_MEANING } from '../sequence/no-turn.ts';
import { COMMON_STOP } from '../sequence/stop-rule.ts';
import { showQuantity } from './number.ts';

const COMMON_PRACTICE = 'common practice';

/**
 * Rules for the people at the joint: when a nut is done, when to stop, when to wait, and what trying a nut proves.
 *
 * @param method what the load is brought in with
 * @param wait shortest wait before a pass of the plan, s, at least 0; null for a plan without one
 * @returns rules in the order they matter, each with its source
 * @example rulesFor('hydraulic wrench', null).map((rule) => rule.kind) // ['stop', 'stop', 'no turn']
 * @source each rule names its own
 */
export function rulesFor(method: Method, wait: number | null): Rule[] {
  const set = SET[method] ?? 'value';
  const dwell: Rule[] = wait === null ? [] : [dwellRule(wait, set)];
  if (method === 'tensioner') return [...TENSION_STOPS, ...dwell];
  return [
    {
      kind: 'stop',
      text: `A nut is done in a pass when it has turned and one more stroke at the set ${set} turns it by no more than ${COMMON_STOP.stillRotation}°, the play of the drive.`,
      source: COMMON_PRACTICE,
    },
    {
      kind: 'stop',
      text: `Stop and ask when a nut does not move at all in the first pass at the set ${set}, when the tool stalls below it, or when a nut goes on turning stroke after stroke. The ${set} is never raised to make a nut move.`,
      source: COMMON_PRACTICE,
    },
    ...dwell,
    { kind: 'no turn', text: NO_TURN_MEANING, source: 'friction holds a nut; common practice' },
  ];
}

const SET: Readonly<Partial<Record<Method, string>>> = { 'hydraulic wrench': 'pressure', tensioner: 'load' };

/** A tensioner stretches the stud; nothing turns against friction, so trying a nut proves nothing here. */
const TENSION_STOPS: readonly Rule[] = [
  {
    kind: 'stop',
    text: 'A stud is done in a pass when its nut was run down to firm contact while the load stood, and the tensioner was let off after that.',
    source: `${COMMON_PRACTICE}; the tensioner’s own instructions come first`,
  },
  {
    kind: 'stop',
    text: 'Stop and ask when a nut does not run down freely, when the load does not stand, or when a stud goes on stretching without the load rising. The load is never raised to free a nut.',
    source: COMMON_PRACTICE,
  },
];

function dwellRule(wait: number, set: string): Rule {
  return {
    kind: 'dwell',
    text: `Wait at least ${hours(Math.max(wait, LEAST_DWELL))} after the last full pass, then go round once more at the full ${set} while the bolts are at ambient temperature.`,
    source: 'ASME PCC-1-2013, section 12 and Table 2 (from memory)',
  };
}

function hours(seconds: number): string {
  const count = seconds / 3600;
  return `${count} ${count === 1 ? 'hour' : 'hours'}`;
}

/**
 * Words the start-up window; it never says that a retightening is allowed.
 *
 * @param window bolt-metal temperatures, °C
 * @param torque torque of the last full pass, N·m, above 0; null when not known
 * @returns text for the sheet
 * @example retighteningText({ from: 120, to: 230 }, null).includes('only by the site’s procedure') // true
 * @source COMMON_WINDOW or the site’s window
 */
export function retighteningText(
  { from, to }: Pick<RetighteningView, 'from' | 'to'>,
  torque: number | null,
): string {
  const back =
    torque === null
      ? 'back to the torque of the last full pass'
      : `back to ${showQuantity(torque, 'N.m', 3)}`;
  return `Retightening at start-up is work of its own: only by the site’s procedure, bolt metal measured between ${showQuantity(from, 'degC')} and ${showQuantity(to, 'degC')}, ${back} and never above. Gaskets the site excludes stay as they are.`;
}
