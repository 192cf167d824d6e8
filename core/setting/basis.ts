import { loadByNutFactor, torqueByNutFactor } from '../bolting/torque.ts';
import { type Friction, resolveFriction } from '../joint/friction.ts';
import { type ResolvedJoint, resolveJoint } from '../joint/resolve.ts';
import { type TargetLoad, targetLoad } from '../joint/target.ts';
import type { CardInput } from './input.ts';

/** What the joint alone says: bolting, friction, and the load and torque to aim at. */
export interface Basis {
  readonly joint: ResolvedJoint;
  readonly friction: Friction;
  readonly target: TargetLoad | null;
  /** N */
  readonly targetLoad: number | null;
  /** N·m */
  readonly targetTorque: number | null;
}

/** Load and torque to aim at; a torque target is taken as it stands and its load computed back. */
export function basisOf({ joint: { data } }: Pick<CardInput, 'joint'>): Basis {
  const joint = resolveJoint(data);
  const friction = resolveFriction(data, joint);
  const thread = joint.thread?.value ?? null;
  const nutFactor = friction.nutFactor?.value ?? null;
  const target =
    data.target === null
      ? null
      : targetLoad(data.target, thread, joint.yieldStrength?.value ?? null, nutFactor);
  const load = target?.load ?? null;
  const torque =
    data.target?.mode === 'torque'
      ? data.target.torque.si
      : load === null || nutFactor === null || thread === null
        ? null
        : torqueByNutFactor(nutFactor, load, thread.diameter);
  return { joint, friction, target, targetLoad: load, targetTorque: torque };
}

/** Bolt load a torque gives in this joint, N; null while thread or friction are not known. */
export function loadOf(basis: Basis, torque: number): number | null {
  const thread = basis.joint.thread?.value;
  const nutFactor = basis.friction.nutFactor?.value;
  return thread === undefined || nutFactor === undefined
    ? null
    : loadByNutFactor(nutFactor, torque, thread.diameter);
}

/** Torque that gives a bolt load in this joint, N·m; null while thread or friction are not known. */
export function torqueOf(basis: Basis, load: number): number | null {
  const thread = basis.joint.thread?.value;
  const nutFactor = basis.friction.nutFactor?.value;
  return thread === undefined || nutFactor === undefined
    ? null
    : torqueByNutFactor(nutFactor, load, thread.diameter);
}
