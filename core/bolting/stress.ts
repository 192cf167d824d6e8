import type { Thread } from './thread.ts';
import { torqueSplit } from './torque.ts';

/** Which section modulus a torsional stress is computed with: first yield at the surface, or the section fully plastic. */
export type TorsionModel = 'elastic' | 'plastic';

/**
 * Axial stress.
 *
 * Equation: σ = F/A.
 * @param load F, N, at least 0
 * @param area tensile or root area, m², above 0; the result’s name has to say which
 * @returns σ, Pa
 * @example axialStress(107829, 0.00029789) // 361.98e6 Pa
 * @source definition
 */
export function axialStress(load: number, area: number): number {
  return load / area;
}

/**
 * Torsional section modulus of the thread.
 *
 * Equation: Wp = π·ds³/16 elastic, π·ds³/12 plastic.
 * @param stressDiameter ds = (d2 + d3)/2, m, above 0
 * @param model elastic (first yield at the surface) or plastic
 * @returns Wp, m³
 * @example torsionModulus(0.010827, 'plastic') // 332.3e-9 m³
 * @source VDI 2230-1: elastic in the editions before 2001, plastic since
 */
export function torsionModulus(stressDiameter: number, model: TorsionModel): number {
  return (Math.PI * stressDiameter ** 3) / (model === 'elastic' ? 16 : 12);
}

/**
 * Torsional stress from the torque that passes through the thread.
 *
 * Equation: τ = Tthread/Wp.
 * @param threadTorque stretch and thread-friction part of the torque, N·m, at least 0; the bearing part stays in the
 * nut
 * @param stressDiameter ds, m, above 0
 * @param model elastic or plastic
 * @returns τ, Pa
 * @example torsionalStress(46.81, 0.010827, 'plastic') // 140.9e6 Pa
 * @source VDI 2230-1:2003
 */
export function torsionalStress(threadTorque: number, stressDiameter: number, model: TorsionModel): number {
  return threadTorque / torsionModulus(stressDiameter, model);
}

/**
 * Equivalent stress of tension and torsion.
 *
 * Equation: σeq = √(σ² + 3·τ²).
 * @param axial σ, Pa, either sign
 * @param torsional τ, Pa, either sign
 * @returns σeq, Pa
 * @example equivalentStress(521.8e6, 140.9e6) // 576.1e6 Pa
 * @source von Mises; VDI 2230-1:2003
 */
export function equivalentStress(axial: number, torsional: number): number {
  return Math.sqrt(axial * axial + 3 * torsional * torsional);
}

/**
 * Thread torque at which tension and torsion together reach yield.
 *
 * Equation: Tmax = Wp·√((Re² − σ²)/3).
 * @param yieldStrength Re, Pa, above 0
 * @param axial σ from the load that stays in the stud, Pa, at least 0
 * @param stressDiameter ds, m, above 0
 * @param model elastic or plastic
 * @returns torque through the thread, N·m; 0 when the axial stress alone reaches yield
 * @example threadTorqueAtYield(724e6, 325e6, 0.035, 'elastic') // 3144 N·m
 * @source von Mises, solved for the torque; VDI 2230-1:2003
 */
export function threadTorqueAtYield(
  yieldStrength: number,
  axial: number,
  stressDiameter: number,
  model: TorsionModel,
): number {
  const room = yieldStrength * yieldStrength - axial * axial;
  return room <= 0 ? 0 : torsionModulus(stressDiameter, model) * Math.sqrt(room / 3);
}

/**
 * Bolt load at which tension and the torsion of tightening together reach a share of yield.
 *
 * Equation: F = ν·Re/√((1/A0)² + 3·(t/Wp)²) with t = P/(2π) + μt·d2/(2·cos 30°) and A0 = (π/4)·ds².
 * @param thread thread of the bolt
 * @param yieldStrength Re, Pa, above 0
 * @param share ν, 1, above 0 to 1; 0.9 in the tables of VDI 2230
 * @param frictionThread μt, 1, at least 0
 * @param model elastic or plastic section modulus
 * @returns F, N
 * @example assemblyLoad(metricThread(12, 1.25), 640e6, 0.9, 0.12, 'plastic') // 48.0e3 N
 * @source VDI 2230-1:2003, assembly preload with the plastic section modulus
 */
export function assemblyLoad(
  thread: Thread,
  yieldStrength: number,
  share: number,
  frictionThread: number,
  model: TorsionModel,
): number {
  const split = torqueSplit(1, thread, 0, frictionThread, 0);
  const area = (Math.PI / 4) * thread.stressDiameter ** 2;
  const torsional = torsionalStress(split.stretch + split.thread, thread.stressDiameter, model);
  return (share * yieldStrength) / equivalentStress(1 / area, torsional);
}
