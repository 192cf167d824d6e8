import type { Thread } from '../bolting/thread.ts';
import { loadByNutFactor } from '../bolting/torque.ts';
import type { JointData, StressArea } from '../contract/joint.ts';

type Target = NonNullable<JointData['target']>;

/** Targets that start from the gasket and need its data. */
export type GasketTarget = Extract<Target, { mode: 'gasket stress' | 'component limits' }>;
/** Targets whose load follows from what was entered. */
export type SiteTarget = Exclude<Target, GasketTarget>;
type Limits = JointData['limits'];

/**
 * Whether a target starts from the gasket and so needs its data.
 *
 * @param target target as stored
 * @returns true for gasket stress and component limits
 * @example startsFromGasket({ mode: 'gasket stress' }) // true
 * @source rule of this program
 */
export function startsFromGasket(target: Target): target is GasketTarget {
  return target.mode === 'gasket stress' || target.mode === 'component limits';
}

/** Bolt load a target stands for; null with the input that is missing. */
export type TargetLoad =
  | { readonly load: number; readonly missing: null }
  | { readonly load: null; readonly missing: 'yield' | 'thread' | 'friction' };

/**
 * Cross-section that a named area stands for.
 *
 * Equation: A = As for the tensile area, A3 or Ar for the root area.
 * @param thread thread of the stud
 * @param area tensile or root
 * @returns A, m²
 * @example areaOf(thread, 'root') // 270.5e-6 m²
 * @source ASME B1.1; ISO 898-1; ASME PCC-1-2013, Appendix H (from memory)
 */
export function areaOf(thread: Thread, area: StressArea): number {
  return area === 'tensile' ? thread.tensileArea : thread.rootArea;
}

/**
 * Bolt load of a target.
 *
 * Equation: percent of yield F = x·Re·A; bolt stress F = σ·A; bolt load F; torque F = T/(K·D).
 * @param target one of the site's four modes, with its area where it has one
 * @param thread thread of the stud, or null
 * @param yieldStrength Re, Pa, above 0, or null
 * @param nutFactor K, 1, above 0, or null
 * @returns load in N, or which input is missing
 * @example targetLoad(data.target, thread, 723.95e6, 0.16).load // 107.83e3 N
 * @source ASME PCC-1-2013, Appendix O, for the bolt-stress form (from memory)
 */
export function targetLoad(
  target: SiteTarget,
  thread: Thread | null,
  yieldStrength: number | null,
  nutFactor: number | null,
): TargetLoad {
  if (target.mode === 'bolt load') return { load: target.load.si, missing: null };
  if (thread === null) return { load: null, missing: 'thread' };
  if (target.mode === 'bolt stress') {
    return { load: target.stress.si * areaOf(thread, target.area), missing: null };
  }
  if (target.mode === 'percent of yield') {
    if (yieldStrength === null) return { load: null, missing: 'yield' };
    return { load: target.percent.si * yieldStrength * areaOf(thread, target.area), missing: null };
  }
  if (nutFactor === null) return { load: null, missing: 'friction' };
  return { load: loadByNutFactor(nutFactor, target.torque.si, thread.diameter), missing: null };
}

/**
 * Whether the limits leave any room: least bolt stress above the largest one, or above the flange's.
 *
 * Equation: conflict when Sb,min > Sb,max or Sb,min > Sf,max.
 * @param limits site limits; null ones are not known and can't conflict
 * @returns the upper limit in conflict with the lower one, or null
 * @example limitsConflict(complete.joint.data.limits) // null
 * @source ASME PCC-1-2013, Appendix O (from memory)
 */
export function limitsConflict(limits: Limits): 'bolt' | 'flange' | null {
  const least = limits.boltStressMin?.si;
  if (least === undefined) return null;
  if (limits.boltStressMax !== null && least > limits.boltStressMax.si) return 'bolt';
  if (limits.flangeBoltStressMax !== null && least > limits.flangeBoltStressMax.si) return 'flange';
  return null;
}

/**
 * Largest bolt load the limits allow.
 *
 * Equation: F = min(Sb,max, Sf,max)·A, A the area the limits refer to.
 * @param limits site limits, Pa; null ones are not known
 * @param thread thread of the stud
 * @returns load in N with the limit that governs, or null when none is known
 * @example upperLoad(complete.joint.data.limits, thread)?.governing // 'flange'
 * @source ASME PCC-1-2013, Appendix O (from memory)
 */
export function upperLoad(
  limits: Limits,
  thread: Thread,
): { readonly load: number; readonly governing: 'bolt' | 'flange' } | null {
  const area = areaOf(thread, limits.boltStressArea);
  const bolt = limits.boltStressMax === null ? Number.POSITIVE_INFINITY : limits.boltStressMax.si * area;
  const flange =
    limits.flangeBoltStressMax === null ? Number.POSITIVE_INFINITY : limits.flangeBoltStressMax.si * area;
  const load = Math.min(bolt, flange);
  return Number.isFinite(load) ? { load, governing: bolt <= flange ? 'bolt' : 'flange' } : null;
}
