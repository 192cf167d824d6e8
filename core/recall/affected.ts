import type { AffectedEvent } from '../contract/recall.ts';
import { type Basis, loadOf } from '../setting/basis.ts';
import type { CardInput } from '../setting/input.ts';
import { type Delivered, deliveredIn, type ErrorSource, type SuspectUse } from './delivered.ts';
import { jointLimits } from './joint-limits.ts';
import { type LoadSpread, realLoads } from './real-load.ts';
import { standingOf } from './standing.ts';

/** A tightening the subject had a part in, with the joint as it stood then. */
export interface AffectedUse extends SuspectUse {
  readonly source: ErrorSource;
  /** What the error is taken over from without having been shown for this use; empty where it was shown. */
  readonly assumption: string;
  /** Limits of the joint can't be held against a load when the batch that is wrong is what they rest on. */
  readonly limitsKnown: boolean;
  /** Joint as its bolt set sees it; null when the set or the joint's version is not on the register. */
  readonly joint: { readonly data: CardInput['joint']['data']; readonly basis: Basis } | null;
  /** Load of a tensioning record, N; null for work with torque. */
  readonly tensionedLoad: number | null;
}

export type LoadFacts = Pick<
  AffectedEvent,
  | 'intendedTorque'
  | 'deliveredTorque'
  | 'error'
  | 'errorUncertainty'
  | 'intendedLoad'
  | 'realLoad'
  | 'interval'
  | 'limits'
  | 'worst'
  | 'basis'
>;

/**
 * Load the joint really got in one use, held against the joint's limits.
 *
 * Equation: F = T/(K·D); F' = F·(1 + e).
 * @param use use as recorded with joint and evidence, SI
 * @returns torques, error, loads with a 95 % interval and standings; what is not known is null and said in `basis`
 * @example affectedLoad({ dialled: 3e7, pressure: 3e7, torque: 450, line, nutFactor: 0.16, gauge: null, source: { kind:
 * 'stated', name: 'as stated', error: -0.08 }, assumption: '', limitsKnown: true, joint: { data, basis }, tensionedLoad:
 * null }).realLoad // 116423
 * @source each relation names its own
 */
export function affectedLoad(use: AffectedUse): LoadFacts {
  const delivered = deliveredIn(use, use.source);
  const { intendedTorque, deliveredTorque, error, uncertainty: errorUncertainty } = delivered;
  const facts = { intendedTorque, deliveredTorque, error, errorUncertainty };
  const notKnown = (intendedLoad: number | null, why: string): LoadFacts => ({
    ...facts,
    intendedLoad,
    realLoad: null,
    interval: null,
    limits: [],
    worst: 'not known',
    basis: why === '' ? delivered.basis : `${delivered.basis}; ${why}`,
  });
  const { joint } = use;
  if (joint === null) return notKnown(null, 'the joint as it stood then is not known');
  const intendedLoad =
    use.tensionedLoad ?? (intendedTorque === null ? null : loadOf(joint.basis, intendedTorque));
  if (error === null) return notKnown(intendedLoad, '');
  if (intendedLoad === null) {
    return notKnown(null, intendedTorque === null ? 'torque not known' : 'thread or friction not known');
  }
  const spread = withFriction(delivered.spread, joint);
  const real = realLoads(intendedLoad, error, spread, joint.basis.joint.boltCount).value;
  if (real === null) return notKnown(intendedLoad, 'a use that gave nothing leaves no load');
  const loads = {
    ...facts,
    intendedLoad,
    realLoad: real.load,
    interval: real.singleBolt === null ? null : { low: real.singleBolt[0], high: real.singleBolt[1] },
  };
  if (!use.limitsKnown) {
    return { ...loads, limits: [], worst: 'not known', basis: basisOf(delivered, joint, NO_LIMITS, use) };
  }
  const standing = standingOf(real, error, jointLimits(joint.data, joint.basis), use.assumption);
  return {
    ...loads,
    limits: standing.limits,
    worst: standing.worst,
    basis: basisOf(delivered, joint, standing.open, use),
  };
}

const NO_LIMITS = 'the load is as it was meant; what the joint may stand with this batch is not stated';

type Joint = NonNullable<AffectedUse['joint']>;

/** Friction differs from stud to stud, and from batch to batch where that was entered. */
function withFriction({ common, perBolt }: LoadSpread, { data, basis }: Joint): LoadSpread {
  const { scatter } = basis.friction;
  const batch = data.lubricant?.nutFactorBatchCv?.si ?? 0;
  return {
    common: common === null ? null : Math.hypot(common, batch),
    perBolt: perBolt === null || scatter === null ? null : Math.hypot(perBolt, scatter),
  };
}

function basisOf(delivered: Delivered, { basis }: Joint, open: string, { assumption }: AffectedUse): string {
  const friction = basis.friction.scatter === null ? 'scatter of friction not entered' : '';
  const parts = [delivered.basis, friction, assumption, open].filter((part) => part !== '');
  return [...new Set(parts)].join('; ');
}
