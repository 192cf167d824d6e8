import type { WorkKind } from '../contract/setting.ts';

interface Caution {
  readonly text: string;
  readonly source: string;
  readonly work: readonly WorkKind[];
}

const BOTH: readonly WorkKind[] = ['tightening', 'breakout'];
const BREAKOUT: readonly WorkKind[] = ['breakout'];
const TIGHTENING: readonly WorkKind[] = ['tightening'];

/** What stands beside the force at the reaction point, and on the list of every card. */
export const REACTION_CAUTIONS: readonly { readonly text: string; readonly source: string }[] = [
  {
    text: 'Keep hands, arms and feet away from the reaction member and what it bears on whenever the pump can build pressure.',
    source: 'public safety guidance on powered torque tools',
  },
  {
    text: 'The reaction member sits square on solid metal: no packers, no loose plates, no stud end or nut that is not meant for it.',
    source: 'public safety guidance on powered torque tools',
  },
];

/** Cautions in the order they matter at the joint. */
const CAUTIONS: readonly Caution[] = [
  {
    text: 'Check that this is the joint on the sheet: tag, side of the valve, zero energy, permit in date.',
    source: 'common practice',
    work: BOTH,
  },
  {
    text: 'Loosen in stages and treat the first opening as live: way out, gas test and protection as the permit says.',
    source: 'HSE HSG253 and common practice',
    work: BREAKOUT,
  },
  {
    text: 'A stuck stud or a flange that moves holds stored pipe load. Stop and have it supported.',
    source: 'common practice',
    work: BREAKOUT,
  },
  {
    text: 'Breakout may take more torque than tightening did and lets go suddenly. Stay below the highest pressure given; no extensions, no blows.',
    source: 'common practice',
    work: BREAKOUT,
  },
  {
    text: 'Heat or flame on studs only under permit. A stud that was heated is replaced.',
    source: 'common practice',
    work: BREAKOUT,
  },
  {
    text: 'Look over hoses, couplers, swivels and fittings for damage and age before pressure. With a defect no pressure is safe.',
    source: 'common practice',
    work: BOTH,
  },
  {
    text: 'Never go above the lowest-rated part. Set the relief valve first, with the tool off the nut, then raise.',
    source: 'common practice',
    work: BOTH,
  },
  {
    text: 'Push couplers fully home on both lines and let the tool retract once before it is loaded.',
    source: 'common practice',
    work: BOTH,
  },
  {
    text: 'Read the unit on the gauge’s face. A second person confirms the setting before the first nut.',
    source: 'common practice',
    work: BOTH,
  },
  ...REACTION_CAUTIONS.map((caution) => ({ ...caution, work: BOTH })),
  {
    text: 'Do not hold, steady or lean on a tool while it works. Stand out of line with its travel and with a stud or socket that may fail.',
    source: 'public safety guidance on powered torque tools',
    work: BOTH,
  },
  {
    text: 'One person commands tool and pump. Signals are agreed; whoever runs the pump sees the tool or holds a dead-man switch.',
    source: 'common practice',
    work: BOTH,
  },
  {
    text: 'Only named, briefed and trained people inside the barrier.',
    source: 'public safety guidance on powered torque tools',
    work: BOTH,
  },
  {
    text: 'Secure the wrench that holds the far nut. It moves until it lands and can trap a hand.',
    source: 'common practice',
    work: BOTH,
  },
  {
    text: 'Bleed to zero and see it on the gauge before moving the tool, changing a cassette or uncoupling a hose.',
    source: 'ISO 4413, from memory',
    work: BOTH,
  },
  {
    text: 'Fluid under the skin is a surgical emergency even when it looks small. Never feel for leaks.',
    source: 'public safety alerts on fluid injection',
    work: BOTH,
  },
  {
    text: 'Secure tools and studs at height and keep people out from below.',
    source: 'common practice',
    work: BOTH,
  },
  {
    text: 'Live tightening and hot bolting are outside this sheet. They need their own site procedure and signature.',
    source: 'common practice',
    work: TIGHTENING,
  },
  {
    text: 'Mind hot surfaces, weight, noise, vibration and the ignition rating of an electric pump.',
    source: 'common practice',
    work: BOTH,
  },
];

/**
 * Chooses the cautions for a kind of work, first the ones that come first at the joint.
 *
 * @param kind tightening or breakout
 * @returns texts with their sources
 * @example cautionsFor('breakout')[0]?.source // 'common practice'
 * @source each caution names its own
 */
export function cautionsFor(kind: WorkKind): { text: string; source: string }[] {
  return CAUTIONS.filter((caution) => caution.work.includes(kind)).map(({ text, source }) => ({
    text,
    source,
  }));
}
