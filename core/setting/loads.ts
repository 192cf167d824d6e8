import { axialStress, equivalentStress, type TorsionModel, torsionalStress } from '../bolting/stress.ts';
import { torqueSplit } from '../bolting/torque.ts';
import type { Basis } from './basis.ts';

/** Stresses in one stud under a load; nulls are not known. */
export interface StudStress {
  readonly load: number;
  readonly tensile: number | null;
  readonly root: number | null;
  readonly axialOfYield: number | null;
  readonly combinedElasticOfYield: number | null;
  readonly combinedPlasticOfYield: number | null;
  /** Torque through the thread, N·m. */
  readonly threadTorque: number | null;
}

/**
 * Stresses in one stud under a load, torsion from the pair of friction coefficients.
 *
 * Equation: σ = F/A; τ = Tthread/Wp; σeq = √(σ² + 3·τ²).
 * @param basis what the joint alone says
 * @param load F, N, at least 0
 * @returns stresses in Pa and as parts of yield; null where an input is not known
 * @example studStress(basis, 107829).tensile // 362.0e6 Pa
 * @source VDI 2230-1:2003
 */
export function studStress({ joint, friction }: Basis, load: number): StudStress {
  const thread = joint.thread?.value ?? null;
  const yieldStrength = joint.yieldStrength?.value ?? null;
  if (thread === null) {
    return {
      load,
      tensile: null,
      root: null,
      axialOfYield: null,
      combinedElasticOfYield: null,
      combinedPlasticOfYield: null,
      threadTorque: null,
    };
  }
  const tensile = axialStress(load, thread.tensileArea);
  const split =
    friction.pair === null
      ? null
      : torqueSplit(load, thread, friction.bearingDiameter ?? 0, friction.pair.thread, friction.pair.bearing);
  const threadTorque = split === null ? null : split.stretch + split.thread;
  const combined = (model: TorsionModel) =>
    threadTorque === null || yieldStrength === null
      ? null
      : equivalentStress(tensile, torsionalStress(threadTorque, thread.stressDiameter, model)) /
        yieldStrength;
  return {
    load,
    tensile,
    root: axialStress(load, thread.rootArea),
    axialOfYield: yieldStrength === null ? null : tensile / yieldStrength,
    combinedElasticOfYield: combined('elastic'),
    combinedPlasticOfYield: combined('plastic'),
    threadTorque,
  };
}
