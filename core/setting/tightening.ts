import { gasketCeilings } from '../joint/gaskets.ts';
import { upperLoad } from '../joint/target.ts';
import { type PassSetting, passRows } from '../sequence/passes.ts';
import type { PassPlan } from '../sequence/plans.ts';
import { type Basis, loadOf, torqueOf } from './basis.ts';
import { checkCertifiedRange, gaugeOutsidePoints, type PassPressure } from './check-certificates.ts';
import { checkLimits } from './check-limits.ts';
import { checkStud } from './check-stud.ts';
import { type Dialled, dialFor, type Hydraulics } from './hydraulics.ts';
import type { CardInput } from './input.ts';
import { studStress } from './loads.ts';
import { checkPlan, planOf } from './plan.ts';
import type { Work } from './work.ts';
import { targetLoadWorking, targetTorqueWorking } from './workings-load.ts';
import { dialWorking, torqueWorking } from './workings-pressure.ts';

/**
 * Works out the dials for every pass of the plan, the load they give, and what stands against them.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @param hydraulics chosen set as it stands on the job’s first day
 * @returns passes, dial, load, findings and workings
 * @example tightening(input, basis, hydraulics).dialled?.dial?.value // 260 bar
 * @source each working names its own
 */
export function tightening(input: CardInput, basis: Basis, hydraulics: Hydraulics): Work {
  const plan = planOf(input);
  const { targetTorque } = basis;
  const limits = torqueLimits(input, basis);
  const dialFraction = (fraction: number) =>
    targetTorque === null ? null : dialFor(hydraulics, fraction * targetTorque, limits);
  const dialled = dialFraction(1);
  const dials = new Map<number, Dialled | null>([[1, dialled]]);
  for (const { fraction } of plan?.steps ?? []) {
    if (fraction !== null && !dials.has(fraction)) dials.set(fraction, dialFraction(fraction));
  }
  const settingFor = (fraction: number): PassSetting => {
    const pass = dials.get(fraction) ?? null;
    const torque = pass?.torque ?? (targetTorque === null ? null : fraction * targetTorque);
    return {
      dial: pass?.dial ?? null,
      set: null,
      torque,
      load: torque === null ? null : loadOf(basis, torque),
    };
  };
  const dialledTorque = dialled?.torque ?? null;
  const dialledLoad = dialledTorque === null ? null : loadOf(basis, dialledTorque);
  const load = dialledLoad ?? basis.targetLoad;
  const pressures = passPressures(plan, dials, dialled);
  return {
    planName: plan?.name ?? 'not known',
    torque: targetTorque,
    dialled,
    toolSetting: null,
    load,
    loadName:
      dialledLoad === null ? 'load to aim at; nothing is dialled yet' : 'load at the dialled pressure',
    passes: plan === null ? [] : passRows(plan, basis.joint.boltCount, settingFor),
    pressures,
    breakout: null,
    findings: [
      ...checkPlan(input, plan),
      ...checkLimits(input, load === null ? null : studStress(basis, load)),
      ...checkStud(input, basis),
      ...checkCertifiedRange(input, hydraulics, pressures),
      ...(dialled !== null && !dialled.corrected ? gaugeOutsidePoints(input, dialled.wanted) : []),
    ],
    workings: () => [
      targetLoadWorking(input, basis),
      targetTorqueWorking(input, basis),
      ...(dialled === null || targetTorque === null
        ? []
        : [dialWorking(input, hydraulics, targetTorque, dialled), torqueWorking(input, hydraulics, dialled)]),
    ],
  };
}

/** True pressure of each dialled pass; without a plan the full pressure alone. */
function passPressures(
  plan: PassPlan | null,
  dials: ReadonlyMap<number, Dialled | null>,
  full: Dialled | null,
): PassPressure[] {
  if (full === null) return [];
  if (plan === null) return [{ name: 'Full', pressure: full.pressure ?? full.wanted, final: true }];
  return plan.steps.flatMap(({ name, fraction }) => {
    const pass = fraction === null ? null : (dials.get(fraction) ?? null);
    return pass === null ? [] : [{ name, pressure: pass.pressure ?? pass.wanted, final: fraction === 1 }];
  });
}

/**
 * Torques at which a bolt, flange, gasket or yield limit is reached: rounding must not step over one.
 *
 * Equation: T = K·Flimit·D.
 * @param input input of the card
 * @param basis what the joint alone says
 * @returns torques, N·m
 * @example torqueLimits(input, basis).length // 1: yield
 * @source limits as entered
 */
export function torqueLimits(input: CardInput, basis: Basis): number[] {
  const thread = basis.joint.thread?.value;
  if (thread === undefined) return [];
  const yieldStrength = basis.joint.yieldStrength?.value;
  const loads = [
    upperLoad(input.joint.data.limits, thread)?.load,
    yieldStrength === undefined ? undefined : yieldStrength * thread.tensileArea,
    ...gasketCeilings(input.joint.data, basis.joint, basis.gaskets),
  ];
  return loads.flatMap((load) => {
    const torque = load === undefined ? null : torqueOf(basis, load);
    return torque === null ? [] : [torque];
  });
}
