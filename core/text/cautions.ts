import type { WorkKind } from '../contract/setting.ts';

/** Decisions at the joint, each with the cautions that belong before it. */
export type JointStep = 'joint' | 'tools' | 'setting' | 'bolt' | 'stuck' | 'stop';

interface Caution {
  readonly text: string;
  readonly source: string;
  readonly work: readonly WorkKind[];
  readonly step: JointStep;
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
    step: 'joint',
  },
  {
    text: 'Loosen in stages and treat the first opening as live: way out, gas test and protection as the permit says.',
    source: 'HSE HSG253 and common practice',
    work: BREAKOUT,
    step: 'bolt',
  },
  {
    text: 'A stuck stud or a flange that moves holds stored pipe load. Stop and have it supported.',
    source: 'common practice',
    work: BREAKOUT,
    step: 'stuck',
  },
  {
    text: 'Breakout may take more torque than tightening did and lets go suddenly. Stay below the highest pressure given; no extensions, no blows.',
    source: 'common practice',
    work: BREAKOUT,
    step: 'setting',
  },
  {
    text: 'Heat or flame on studs only under permit. A stud that was heated is replaced.',
    source: 'common practice',
    work: BREAKOUT,
    step: 'stuck',
  },
  {
    text: 'Look over hoses, couplers, swivels and fittings for damage and age before pressure. With a defect no pressure is safe.',
    source: 'common practice',
    work: BOTH,
    step: 'tools',
  },
  {
    text: 'Never go above the lowest-rated part. Set the relief valve first, with the tool off the nut, then raise.',
    source: 'common practice',
    work: BOTH,
    step: 'setting',
  },
  {
    text: 'Push couplers fully home on both lines and let the tool retract once before it is loaded.',
    source: 'common practice',
    work: BOTH,
    step: 'tools',
  },
  {
    text: 'Read the unit on the gauge’s face. A second person confirms the setting before the first nut.',
    source: 'common practice',
    work: BOTH,
    step: 'setting',
  },
  ...REACTION_CAUTIONS.map((caution, at) => ({
    ...caution,
    work: BOTH,
    // Hands first: it is said at every bolt; where the member bears is looked at before the pump runs.
    step: at === 0 ? ('bolt' as const) : ('tools' as const),
  })),
  {
    text: 'Do not hold, steady or lean on a tool while it works. Stand out of line with its travel and with a stud or socket that may fail.',
    source: 'public safety guidance on powered torque tools',
    work: BOTH,
    step: 'bolt',
  },
  {
    text: 'One person commands tool and pump. Signals are agreed; whoever runs the pump sees the tool or holds a dead-man switch.',
    source: 'common practice',
    work: BOTH,
    step: 'tools',
  },
  {
    text: 'Only named, briefed and trained people inside the barrier.',
    source: 'public safety guidance on powered torque tools',
    work: BOTH,
    step: 'tools',
  },
  {
    text: 'Secure the wrench that holds the far nut. It moves until it lands and can trap a hand.',
    source: 'common practice',
    work: BOTH,
    step: 'tools',
  },
  {
    text: 'Bleed to zero and see it on the gauge before moving the tool, changing a cassette or uncoupling a hose.',
    source: 'ISO 4413, from memory',
    work: BOTH,
    step: 'stop',
  },
  {
    text: 'Fluid under the skin is a surgical emergency even when it looks small. Never feel for leaks.',
    source: 'public safety alerts on fluid injection',
    work: BOTH,
    step: 'tools',
  },
  {
    text: 'Secure tools and studs at height and keep people out from below.',
    source: 'common practice',
    work: BOTH,
    step: 'tools',
  },
  {
    text: 'Live tightening and hot bolting are outside this sheet. They need their own site procedure and signature.',
    source: 'common practice',
    work: TIGHTENING,
    step: 'joint',
  },
  {
    text: 'Mind hot surfaces, weight, noise, vibration and the ignition rating of an electric pump.',
    source: 'common practice',
    work: BOTH,
    step: 'joint',
  },
];

/** Said at the joint alone, where it is decided; the card says it among its rules. */
const AT_THE_JOINT: readonly Caution[] = [
  {
    text: 'A nut that does not move is not moved by more pressure. Stop and ask; the setting stays as it is.',
    source: 'common practice',
    work: TIGHTENING,
    step: 'stuck',
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

/**
 * Chooses the cautions for one decision at the joint, so that they stand before it and nowhere else.
 *
 * @param kind tightening or breakout
 * @param step what is about to be decided
 * @returns texts with their sources
 * @example cautionsAt('tightening', 'stop')[0]?.source // 'ISO 4413, from memory'
 * @source each caution names its own
 */
export function cautionsAt(kind: WorkKind, step: JointStep): { text: string; source: string }[] {
  return [...CAUTIONS, ...AT_THE_JOINT]
    .filter((caution) => caution.step === step && caution.work.includes(kind))
    .map(({ text, source }) => ({ text, source }));
}
