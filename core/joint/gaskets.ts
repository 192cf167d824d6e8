import type { GasketData } from '../contract/gasket.ts';
import type { JointData } from '../contract/joint.ts';
import type { Outcome } from '../findings/outcome.ts';
import type { GasketContact } from './code-minimum.ts';
import { type ComponentData, ceilingStress, type PressureCase, rotationStress } from './component-checks.ts';
import { gasketArea, ringArea } from './gasket-area.ts';
import { type GasketValues, gasketValues } from './gasket-values.ts';
import type { ResolvedJoint } from './resolve.ts';
import { areaOf } from './target.ts';

/** A gasket of the joint with what its relations start from; nulls are not known. */
export interface JointGasket {
  readonly name: string;
  readonly data: GasketData;
  readonly values: GasketValues;
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
 * @example jointGaskets(complete.joint.data)[0]?.area.value // 0.0118 m²
 * @source plane geometry; site rule for the counted part of the bars
 */
export function jointGaskets(data: Pick<JointData, 'flange' | 'gasket' | 'furtherGaskets'>): JointGasket[] {
  if (data.gasket === null) return [];
  const all = [data.gasket, ...data.furtherGaskets];
  return all.map((gasket, index) => {
    // The flange standard knows the gasket between two like flanges; a further one of a series is not it.
    const values = gasketValues(gasket, index === 0 ? data.flange : null);
    const ring = gasket.kind === 'ring joint';
    return {
      name: all.length === 1 ? gasket.type : `gasket ${index + 1}, ${gasket.type}`,
      data: gasket,
      values,
      area: sealingArea(gasket, values),
      inside: (values.contactInside ?? (ring ? values.pitchDiameter : null))?.value ?? null,
      contact: contactOf(gasket.kind, values),
    };
  });
}

function sealingArea(gasket: GasketData, values: GasketValues): Outcome<number> {
  const ring = ringArea(values.contactOutside?.value ?? null, values.contactInside?.value ?? null);
  if (ring.value === null || gasket.partitionArea === null || gasket.partitionArea.si === 0) return ring;
  // The bars' area is measured as a whole: one bar of that area stands for all.
  return gasketArea(ring.value, [{ length: gasket.partitionArea.si, width: 1 }], si(gasket.partitionShare));
}

function contactOf(kind: GasketData['kind'], values: GasketValues): GasketContact {
  const { contactInside, contactOutside, pitchDiameter, ringWidth } = values;
  return kind === 'ring joint'
    ? {
        kind: 'ring joint',
        pitchDiameter: pitchDiameter?.value ?? null,
        ringWidth: ringWidth?.value ?? null,
      }
    : {
        kind: 'flat ring or spiral wound',
        outside: contactOutside?.value ?? null,
        inside: contactInside?.value ?? null,
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
 * @example componentData(complete.joint.data, joint, gasket).gasketTarget // 100e6 Pa
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

/**
 * Bolt loads at which a gasket reaches its largest stress or the flange its largest rotation.
 *
 * Equation: F = Sg,max·Ag/nb; F = Sf,max·(θg,max/θf,max)·Ab.
 * @param data joint as stored
 * @param joint the same joint resolved
 * @param gaskets its gaskets
 * @returns loads of one bolt, N; none where the data are not known
 * @example gasketCeilings(complete.joint.data, joint, [gasket])[0] // 197e3 N
 * @source ASME PCC-1-2013, Appendix O, steps 7 and 8 (from memory)
 */
export function gasketCeilings(
  data: JointData,
  joint: ResolvedJoint,
  gaskets: readonly JointGasket[],
): number[] {
  if (data.boltSets.length > 0) return [];
  return gaskets.flatMap((gasket) => {
    if (gasket.data.stressMax === null && gasket.data.rotationMax === null) return [];
    const component = componentData(data, joint, gasket);
    const root = component.boltRootArea;
    const stresses = [ceilingStress(component).value, rotationStress(component).value];
    return root === null ? [] : stresses.flatMap((stress) => (stress === null ? [] : [stress * root]));
  });
}

/**
 * Design, operating and test case with the part of the gasket stress that is left in each.
 *
 * @param data joint with its pressures, Pa
 * @param gasket fractions left in operation and at the test
 * @returns the three cases; what is not known is null in them
 * @example pressureCasesOf(complete.joint.data, complete.joint.data.gasket).map((one) => one.retained) // [0.7, 0.7,
 * 0.9]
 * @source ASME PCC-1-2013, Appendix O, for φg (from memory)
 */
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
