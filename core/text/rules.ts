import type { RetighteningView, Rule } from '../contract/card-views.ts';
import { LEAST_DWELL } from '../sequence/dwell.ts';
import { NO_TURN_MEANING } from '../sequence/no-turn.ts';
import { COMMON_STOP } from '../sequence/stop-rule.ts';
import { showQuantity } from './number.ts';

const COMMON_PRACTICE = 'common practice';

/**
 * Rules for the people at the joint: when a nut is done, when to stop, when to wait, and what trying a nut proves.
 *
 * @param hydraulic true when a pressure is dialled
 * @param wait shortest wait before a pass of the plan, s, at least 0; null for a plan without one
 * @returns rules in the order they matter, each with its source
 * @example rulesFor(true, null).map((rule) => rule.kind) // ['stop', 'stop', 'no turn']
 * @source each rule names its own
 */
export function rulesFor(hydraulic: boolean, wait: number | null): Rule[] {
  const setValue = hydraulic ? 'pressure' : 'value';
  return [
    {
      kind: 'stop',
      text: `A nut is done in a pass when it has turned and one more stroke at the set ${setValue} turns it by no more than ${COMMON_STOP.stillRotation}°, the play of the drive.`,
      source: COMMON_PRACTICE,
    },
    {
      kind: 'stop',
      text: `Stop and ask when a nut does not move at all in the first pass at the set ${setValue}, when the tool stalls below it, or when a nut goes on turning stroke after stroke. The ${setValue} is never raised to make a nut move.`,
      source: COMMON_PRACTICE,
    },
    ...(wait === null
      ? []
      : [
          {
            kind: 'dwell' as const,
            text: `Wait at least ${hours(Math.max(wait, LEAST_DWELL))} after the last full pass, then go round once more at the full ${setValue} while the bolts are at ambient temperature.`,
            source: 'ASME PCC-1-2013, section 12 and Table 2 (from memory)',
          },
        ]),
    { kind: 'no turn', text: NO_TURN_MEANING, source: 'friction holds a nut; common practice' },
  ];
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
