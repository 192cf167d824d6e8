import type { Thread } from '../bolting/thread.ts';
import { equalFriction, FLANK_ANGLE, meanBearingDiameter, nutFactorOf } from '../bolting/torque.ts';
import type { JointData, OriginMark } from '../contract/joint.ts';
import type { Known } from './known.ts';
import type { ResolvedJoint } from './resolve.ts';

/** Friction of a joint as the calculations use it; null members are not known. */
export interface Friction {
  readonly nutFactor: Known<number> | null;
  /** Why there is no nut factor. */
  readonly missing: 'lubricant' | 'coefficients' | 'bearing face' | null;
  /** Thread and bearing coefficients and the rule that gave the pair. */
  readonly pair: { readonly thread: number; readonly bearing: number; readonly rule: string } | null;
  /** Mean diameter of the bearing face, m. */
  readonly bearingDiameter: number | null;
  /** Coefficient of variation of K between studs. */
  readonly scatter: number | null;
  readonly assumed: boolean;
}

/**
 * Friction of a joint from whichever form was entered. An entered nut factor governs the torque; the pair of
 * coefficients governs how much of it twists the stud.
 *
 * Equation: K from the pair by the long form; pair from K by μt = μb, or with the one that was entered kept.
 * @param data joint as stored
 * @param joint the same joint resolved
 * @returns nut factor, pair and bearing diameter, each with what is missing
 * @example resolveFriction(data, joint).nutFactor?.value // 0.16
 * @source VDI 2230-1:2003; ASME PCC-1-2013, Appendices J and K
 */
export function resolveFriction(data: JointData, joint: ResolvedJoint): Friction {
  const thread = joint.thread?.value ?? null;
  const nut = joint.nut?.value ?? null;
  const bearingDiameter =
    thread === null || nut === null ? null : meanBearingDiameter(nut.bearingOutside, thread.diameter);
  const { lubricant } = data;
  const none = { nutFactor: null, pair: null, bearingDiameter, scatter: null, assumed: false };
  if (lubricant === null) return { ...none, missing: 'lubricant' };
  const origin: OriginMark = lubricant.evidence === 'assumed' ? 'assumed' : 'entered';
  const common = {
    bearingDiameter,
    scatter: lubricant.nutFactorCv?.si ?? null,
    assumed: lubricant.evidence === 'assumed',
  };
  const source = lubricant.source === '' ? `${lubricant.name}, ${lubricant.evidence}` : lubricant.source;
  const threadFriction = lubricant.frictionThread?.si ?? null;
  const bearingFriction = lubricant.frictionBearing?.si ?? null;
  if (lubricant.nutFactor !== null) {
    const value = lubricant.nutFactor.si;
    return {
      ...common,
      nutFactor: { value, origin, source, status: null, note: '' },
      missing: null,
      pair:
        thread === null || bearingDiameter === null
          ? null
          : pairOf(value, thread, bearingDiameter, threadFriction, bearingFriction),
    };
  }
  if (threadFriction === null || bearingFriction === null) return { ...none, missing: 'coefficients' };
  const pair = { thread: threadFriction, bearing: bearingFriction, rule: 'both as entered' };
  if (thread === null || bearingDiameter === null) {
    return { ...common, nutFactor: null, missing: 'bearing face', pair };
  }
  const value = nutFactorOf(thread, bearingDiameter, threadFriction, bearingFriction);
  const computed: OriginMark = origin === 'assumed' ? 'assumed' : 'calculated';
  return {
    ...common,
    nutFactor: { value, origin: computed, source: `long form from μ of ${source}`, status: null, note: '' },
    missing: null,
    pair,
  };
}

function pairOf(
  nutFactor: number,
  thread: Thread,
  bearingDiameter: number,
  threadFriction: number | null,
  bearingFriction: number | null,
): Friction['pair'] {
  if (threadFriction !== null && bearingFriction !== null) {
    return { thread: threadFriction, bearing: bearingFriction, rule: 'both as entered' };
  }
  const arm = thread.pitchDiameter / (2 * Math.cos(FLANK_ANGLE));
  const left = nutFactor * thread.diameter - thread.pitch / (2 * Math.PI);
  if (threadFriction !== null) {
    const bearing = (left - threadFriction * arm) / (bearingDiameter / 2);
    if (bearing > 0) return { thread: threadFriction, bearing, rule: 'μt as entered, μb from K' };
  }
  if (bearingFriction !== null) {
    const inThread = (left - (bearingFriction * bearingDiameter) / 2) / arm;
    if (inThread > 0) return { thread: inThread, bearing: bearingFriction, rule: 'μb as entered, μt from K' };
  }
  const equal = equalFriction(nutFactor, thread, bearingDiameter);
  return equal === null ? null : { thread: equal, bearing: equal, rule: 'μt = μb, from K' };
}
