import { axialStress, type TorsionModel, threadTorqueAtYield } from '../bolting/stress.ts';
import type { Thread } from '../bolting/thread.ts';

/** Common practice, no published source known: breakout may take up to this many times the installed torque. */
export const COMMON_RATIO = 2.5;

/**
 * Breakout torque to be ready for.
 *
 * Equation: T = 2.5·T_installed.
 * @param installed torque it was tightened with, N·m, at least 0
 * @returns allowance, N·m
 * @example breakoutAllowance(400) // 1000 N·m
 * @source common practice
 */
export function breakoutAllowance(installed: number): number {
  return COMMON_RATIO * installed;
}

/**
 * Torque on the nut at which a stud seized in its thread yields: what the shank can carry in torsion beside its
 * residual load, and the friction of the nut face under that load. The residual load is taken as the installed one, the
 * worst case.
 *
 * Equation: T = Wp·√((Re² − (F/As)²)/3) + F·μb·Db/2.
 * @param thread thread of the stud
 * @param yieldStrength Re, Pa, above 0
 * @param load residual load F, N, at least 0
 * @param frictionBearing μb, 1, at least 0
 * @param bearingDiameter Db, m, at least 0
 * @param model elastic (first yield at the surface) or plastic section modulus
 * @returns torque, N·m
 * @example seizedStudCeiling(unifiedThread(1.5, 8), 724e6, 312800, 0.16, 0.0492, 'elastic') // 4377 N·m
 * @source von Mises with the section moduli of VDI 2230-1
 */
export function seizedStudCeiling(
  thread: Thread,
  yieldStrength: number,
  load: number,
  frictionBearing: number,
  bearingDiameter: number,
  model: TorsionModel,
): number {
  const axial = axialStress(load, thread.tensileArea);
  const shank = threadTorqueAtYield(yieldStrength, axial, thread.stressDiameter, model);
  return shank + (load * frictionBearing * bearingDiameter) / 2;
}
