import type { GasketData } from '../contract/gasket.ts';
import type { JointData } from '../contract/joint.ts';
import type { Outcome } from '../findings/outcome.ts';
import type { GasketContact } from './code-minimum.ts';
import type { ComponentData, PressureCase } from './component-checks.ts';
import { gasketArea, ringArea } from './gasket-area.ts';
import type { ResolvedJoint } from './resolve.ts';
import { areaOf } from './target.ts';

/** A gasket of the joint with what its relations start from; nulls are not known. */
export interface JointGasket {
  readonly name: string;
  readonly data: GasketData;
  /** Ag, m² */
  readonly area: Outcome<number>;
  /** Gid, m: the pitch diameter stands for it in a ring joint. */
  readonly inside: number | null;
  readonly contact: GasketContact;
}

/**
 * Gaskets of a joint, one behind the other.
 *
 * Equation: Ag = (π/4)·(Dod² − Did²) + s·Apartition.
 * @param data joint as stored
 * @returns the gaskets with area and contact; none when no gasket is entered
 * @example jointGaskets(data)[0]?.area.value // 0.0118 m²
 * @source plane geometry; site rule for the counted part of the bars
 */
export function jointGaskets(data: Pick<JointData, 'gasket' | 'furtherGaskets'>): JointGasket[] {
  if (data.gasket === null) return [];
  const all = [data.gasket, ...data.furtherGaskets];
  return all.map((gasket, index) => ({
    name: all.length === 1 ? gasket.type : `gasket ${index + 1}, ${gasket.type}`,
    data: gasket,
    area: sealingArea(gasket),
    inside: gasket.contactInside?.si ?? (gasket.kind === 'ring joint' ? si(gasket.pitchDiameter) : null),
    contact: contactOf(gasket),
  }));
}

function sealingArea(gasket: GasketData): Outcome<number> {
  const ring = ringArea(si(gasket.contactOutside), si(gasket.contactInside));
  if (ring.value === null || gasket.partitionArea === null || gasket.partitionArea.si === 0) return ring;
  // The bars' area is measured as a whole: one bar of that area stands for all.
  return gasketArea(ring.value, [{ length: gasket.partitionArea.si, width: 1 }], si(gasket.partitionShare));
}

function contactOf(gasket: GasketData): GasketContact {
  return gasket.kind === 'ring joint'
    ? { kind: 'ring joint', pitchDiameter: si(gasket.pitchDiameter), ringWidth: si(gasket.ringWidth) }
    : {
        kind: 'flat ring or spiral wound',
        outside: si(gasket.contactOutside),
        inside: si(gasket.contactInside),
      };
}

/**
 * What the component approach looks at for one gasket of a joint, site limits turned to the root area.
 *
 * Equation: S(root) = S(area)·A(area)/A(root).
 * @param data joint as stored
 * @param joint the same joint resolved
 * @param gasket one of its gaskets
 * @returns data of `selectBoltStress`, SI, stresses on the root area
 * @example componentData(data, joint, gasket).boltStressMax // 489e6 for 445 MPa on the tensile area of 7/8 in
 * @source definition of stress
 */
export function componentData(data: JointData, joint: ResolvedJoint, gasket: JointGasket): ComponentData {
  const { limits } = data;
  const thread = joint.thread?.value ?? null;
  const toRoot = thread === null ? null : areaOf(thread, limits.boltStressArea) / thread.rootArea;
  const onRoot = (stress: { readonly si: number } | null) =>
    stress === null || toRoot === null ? null : stress.si * toRoot;
  return {
    boltCount: joint.boltCount,
    boltRootArea: thread?.rootArea ?? null,
    gasketArea: gasket.area.value,
    gasketInside: gasket.inside,
    gasketTarget: si(gasket.data.targetStress),
    gasketSeating: si(gasket.data.seatingStress),
    gasketOperating: si(gasket.data.operatingStress),
    gasketMax: si(gasket.data.stressMax),
    boltStressMax: onRoot(limits.boltStressMax),
    boltStressMin: onRoot(limits.boltStressMin),
    flangeStressMax: onRoot(limits.flangeBoltStressMax),
    flangeRotation: si(limits.flangeRotationMax),
    gasketRotation: si(gasket.data.rotationMax),
    cases: pressureCasesOf(data, gasket.data),
  };
}

/** Design, operating and test case with the part of the gasket stress that is left in each. */
export function pressureCasesOf(
  { pressures }: Pick<JointData, 'pressures'>,
  gasket: Pick<GasketData, 'retainedOperating' | 'retainedTest'>,
): PressureCase[] {
  return (['design', 'operating', 'test'] as const).map((name) => ({
    name,
    pressure: si(pressures[name].pressure),
    retained: si(name === 'test' ? gasket.retainedTest : gasket.retainedOperating),
  }));
}

function si(value: { readonly si: number } | null): number | null {
  return value?.si ?? null;
}
