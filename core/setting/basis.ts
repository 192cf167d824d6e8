import { loadByNutFactor, torqueByNutFactor } from '../bolting/torque.ts';
import { type Friction, resolveFriction } from '../joint/friction.ts';
import { type JointGasket, jointGaskets } from '../joint/gaskets.ts';
import { type ResolvedJoint, resolveJoint } from '../joint/resolve.ts';
import { selectForTarget, type TargetSelection } from '../joint/selection.ts';
import { startsFromGasket, targetLoad } from '../joint/target.ts';
import type { CardInput } from './input.ts';
import type { SetShare } from './set-share.ts';

/** What the joint alone says: bolting, friction, and the load and torque to aim at. */
export interface Basis {
  readonly joint: ResolvedJoint;
  readonly friction: Friction;
  readonly gaskets: readonly JointGasket[];
  /** Further bolt sets that load the gasket beside the one looked at, each at its own target. */
  readonly others: readonly SetShare[];
  /** How a target that starts from the gasket came to its bolt stress; null for the other targets. */
  readonly selection: TargetSelection | null;
  /** N */
  readonly targetLoad: number | null;
  /** N·m */
  readonly targetTorque: number | null;
}

/**
 * Load and torque to aim at; a torque target is taken as it stands and its load computed back.
 *
 * @param input joint and site tables
 * @returns bolting, friction, gaskets, load in N and torque in N·m to aim at; null where data are missing
 * @example basisOf(input).targetTorque // 383.4 N·m
 * @source each relation names its own
 */
export function basisOf({ joint: { data }, site }: Pick<CardInput, 'joint' | 'site'>): Basis {
  const joint = resolveJoint(data, site);
  const friction = resolveFriction(data, joint);
  const gaskets = jointGaskets(data);
  const thread = joint.thread?.value ?? null;
  const nutFactor = friction.nutFactor?.value ?? null;
  const { target } = data;
  const selection =
    target !== null && startsFromGasket(target) ? selectForTarget(data, joint, gaskets, target.mode) : null;
  const load = loadToAimAt(data, joint, selection, nutFactor);
  const torque =
    target?.mode === 'torque'
      ? target.torque.si
      : load === null || nutFactor === null || thread === null
        ? null
        : torqueByNutFactor(nutFactor, load, thread.diameter);
  return { joint, friction, gaskets, others: [], selection, targetLoad: load, targetTorque: torque };
}

function loadToAimAt(
  { target }: CardInput['joint']['data'],
  { thread, yieldStrength }: ResolvedJoint,
  selection: TargetSelection | null,
  nutFactor: number | null,
): number | null {
  if (target === null) return null;
  if (!startsFromGasket(target)) {
    return targetLoad(target, thread?.value ?? null, yieldStrength?.value ?? null, nutFactor).load;
  }
  const selected = selection?.selected ?? null;
  return selected === null || thread === null ? null : selected * thread.value.rootArea;
}

/**
 * Bolt load a torque gives in this joint.
 *
 * Equation: F = T/(K·D).
 * @param basis what the joint alone says
 * @param torque T, N·m, at least 0
 * @returns F, N; null while thread or friction are not known
 * @example loadOf(basis, 383.441) // 107829 N
 * @source R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th ed., equation 8-27
 */
export function loadOf(basis: Basis, torque: number): number | null {
  const thread = basis.joint.thread?.value;
  const nutFactor = basis.friction.nutFactor?.value;
  return thread === undefined || nutFactor === undefined
    ? null
    : loadByNutFactor(nutFactor, torque, thread.diameter);
}

/**
 * Torque that gives a bolt load in this joint.
 *
 * Equation: T = K·F·D.
 * @param basis what the joint alone says
 * @param load F, N, at least 0
 * @returns T, N·m; null while thread or friction are not known
 * @example torqueOf(basis, 107829) // 383.44 N·m
 * @source R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th ed., equation 8-27
 */
export function torqueOf(basis: Basis, load: number): number | null {
  const thread = basis.joint.thread?.value;
  const nutFactor = basis.friction.nutFactor?.value;
  return thread === undefined || nutFactor === undefined
    ? null
    : torqueByNutFactor(nutFactor, load, thread.diameter);
}
