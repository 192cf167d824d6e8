import type { SettingCard, Working } from '../contract/setting.ts';
import type { Raised } from '../findings/finding.ts';
import { atTool, raise } from '../findings/raise.ts';
import { REACTION_CAUTIONS } from '../text/cautions.ts';
import { reactionForce } from '../tools/reaction.ts';
import type { AnyTool, CardInput } from './input.ts';
import { torqueUnit } from './show.ts';
import type { Work } from './work.ts';
import { number, result } from './working.ts';

/** Where the reaction member bears: the head's own arm, or else the drive unit's. */
function armOf({ set: { cassette, drive } }: CardInput): { arm: number; tool: AnyTool } | null {
  const own = cassette?.data.properties.reactionArm ?? null;
  if (cassette !== null && own !== null) return { arm: own.si, tool: cassette };
  const drives = drive?.data.properties.reactionArm ?? null;
  return drive === null || drives === null ? null : { arm: drives.si, tool: drive };
}

/** Largest torque the card lets be turned: a breakout may go on up to its ceiling. */
function largestTorque({ breakout, dialled, torque }: Work): number | null {
  if (breakout === null) return dialled?.torque ?? torque;
  const ceilings = [breakout.capacity, breakout.studCeilingElastic].filter((each) => each !== null);
  return ceilings.length === 0 ? breakout.allowance : Math.min(...ceilings);
}

/**
 * Force where the reaction member bears at the largest torque of the card, with the cautions of that place.
 *
 * Equation: F = T/r.
 * @param input input of the card
 * @param work what tightening or breakout comes to
 * @returns view of the reaction, or null for a method without a hydraulic wrench
 * @example reactionView({ ...input, method: 'tensioner' }, { breakout: null, dialled: null, torque: 384 }) // null
 * @source statics: the moment about the nut’s axis
 */
export function reactionView(input: CardInput, work: Work): SettingCard['reaction'] {
  if (input.method !== 'hydraulic wrench') return null;
  const torque = largestTorque(work);
  const known = armOf(input);
  return {
    torque,
    arm: known?.arm ?? null,
    force: known === null || torque === null ? null : reactionForce(torque, known.arm),
    tool: known?.tool.data.number ?? null,
    needs: known === null ? NEEDS : null,
    cautions: REACTION_CAUTIONS.map((caution) => ({ ...caution })),
  };
}

const NEEDS =
  'measure the distance from the nut’s axis to where the reaction member bears, and enter it for the tool';

/**
 * Says that the force at the reaction point is not known.
 *
 * @param input input of the card
 * @returns one note while the arm of the chosen wrench is not known
 * @example checkReaction(complete).length // 0
 * @source rule of this program
 */
export function checkReaction(input: CardInput): Raised[] {
  const { cassette, drive } = input.set;
  const tool = cassette ?? drive;
  if (tool === null || armOf(input) !== null) return [];
  return [
    raise('reaction_unknown', () => ({ part: `${tool.data.properties.class} ${tool.data.number}` }), {
      severity: 'note',
      subject: tool.data.number,
      place: atTool(tool, 'reactionArm'),
      source: 'statics: force is torque over arm',
    }),
  ];
}

/**
 * Shows how the force at the reaction point came about.
 *
 * @param input input of the card
 * @param view reaction as the card shows it
 * @returns working, or null while the force is not known
 * @example reactionWorking(input, null) // null
 * @source statics: the moment about the nut’s axis
 */
export function reactionWorking(input: CardInput, view: SettingCard['reaction']): Working | null {
  if (view === null || view.force === null || view.torque === null) return null;
  return {
    of: 'reaction',
    title: 'Force where the reaction member bears',
    relation: 'F = T / r',
    inputs: [
      number('T', 'largest torque of this card', view.torque, torqueUnit(input), 'calculated', 'this card'),
      number('r', 'nut’s axis to the reaction point', view.arm, 'mm', 'entered', `tool ${view.tool ?? ''}`),
    ],
    result: result('F', 'force', view.force, 'kN'),
    source: 'statics: the moment about the nut’s axis',
  };
}
