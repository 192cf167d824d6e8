import type { ScatterData, ScatterValue } from '../contract/scatter.ts';
import { jointLimits } from '../recall/joint-limits.ts';
import type { Basis } from '../setting/basis.ts';
import type { CardInput } from '../setting/input.ts';
import { studMaterial } from '../setting/stud-material.ts';
import { stretchOf } from '../setting/stud-section.ts';
import type { RingJoint } from './bolts.ts';
import { type FlangeRing, rectangularSection } from './ring.ts';

/** What the model is run with, and what is missing before it can be. */
export interface ScatterInputs {
  readonly joint: RingJoint | null;
  /** Each value with its origin, in the order in which they are shown. */
  readonly values: readonly ScatterValue[];
  readonly missing: readonly string[];
  /** N per bolt; null when not known. */
  readonly target: number | null;
  readonly limit: number | null;
  /** Scatter of one bolt's load as a part of it; null when not known. */
  readonly scatter: number | null;
  /** Part of the target that no load moves by any more. */
  readonly tolerance: number;
}

type Source = Omit<ScatterValue, 'name' | 'quantity'>;
type Given = { readonly si: number } | null;

const STEEL_MODULUS = 200e9;
const POISSON = 0.3;
const TOLERANCE = 0.02;
/** Twice the coefficient of variation: about 95 of 100 bolts of a normal scatter. */
const TWICE = 2;

/**
 * Values the ring model is run with: what was entered, else what the joint's data and the tables have, else stated
 * assumptions; without the others nothing is said.
 *
 * Equation: kb = As·E/Leff; RG = (Do + Di)/4, w = (Do − Di)/2 of the gasket's contact.
 * @param data what was entered
 * @param joint joint as the bolt set sees it
 * @param basis what the joint alone says
 * @returns ring joint, values with origin, and what is missing
 * @example scatterInputs(scatterData, complete.joint, basisOf(complete)).missing.includes('Radial width of the ring') // true
 * @source each value names its own; modulus and Poisson’s ratio of steel: common practice
 */
export function scatterInputs(
  data: ScatterData,
  joint: Pick<CardInput, 'joint'>['joint'],
  basis: Basis,
): ScatterInputs {
  const values: ScatterValue[] = [];
  const missing: string[] = [];
  const take = (name: string, quantity: ScatterValue['quantity'], given: Given, known: Source | null) => {
    const { si, origin, source } = given === null ? (known ?? NOWHERE) : entered(given.si);
    values.push({ name, quantity, si, origin, source });
    if (si === null) missing.push(name);
    return si;
  };
  const { flangeRow, circle, count } = basis.joint;
  const gasket = gasketRing(basis);
  const bolts = take('Bolts', 'count', null, count === null ? null : asSource(count));
  const boltRadius = take('Radius of the bolt circle', 'length', data.boltRadius, halved(circle));
  const boltStiffness = take('Stiffness of one bolt', 'stiffness', data.boltStiffness, ownBolt(joint, basis));
  const ringOf = (of: string, ring: ScatterData['ring']): FlangeRing | null => {
    const width = take(`Radial width of ${of}`, 'length', ring.width, null);
    const thickness = take(`Thickness of ${of}`, 'length', ring.thickness, thicknessOf(flangeRow));
    const modulus = take(`Modulus of ${of}`, 'stress', ring.modulus, STEEL);
    const centroidRadius = take(`Radius of the centroid of ${of}`, 'length', ring.radius, null);
    if (width === null || thickness === null || modulus === null || centroidRadius === null) return null;
    return { ...rectangularSection(modulus, width, thickness, POISSON), centroidRadius };
  };
  const first = ringOf('the ring', data.ring);
  const second = data.otherRing === null ? first : ringOf('the other ring', data.otherRing);
  values.push({
    name: 'Poisson’s ratio of the rings',
    quantity: 'ratio',
    si: POISSON,
    origin: 'assumed',
    source: 'steel, common practice',
  });
  const radius = take('Radius of the gasket’s reaction', 'length', data.gasketRadius, gasket?.radius ?? null);
  const width = take('Width of the gasket', 'length', data.gasketWidth, gasket?.width ?? null);
  const foundation = take(
    'Stiffness of the gasket per length of its circumference',
    'stress',
    data.gasketStiffness,
    null,
  );
  const target = take('Load to set', 'force', data.target, targetOf(basis));
  const limit = optional(values, 'Largest load of one bolt', 'force', data.limit, limitOf(joint, basis));
  const scatter = optional(values, 'Scatter of one bolt’s load', 'ratio', data.scatter, scatterOf(basis));
  const tolerance = data.tolerance?.si ?? TOLERANCE;
  values.push({
    name: 'At rest when no load moves by more than',
    quantity: 'ratio',
    si: tolerance,
    ...(data.tolerance === null
      ? { origin: 'assumed', source: 'rule of this program' }
      : { origin: 'entered', source: 'entered here' }),
  });
  const known =
    bolts !== null && boltRadius !== null && boltStiffness !== null && first !== null && second !== null;
  return {
    joint:
      known && radius !== null && width !== null && foundation !== null
        ? {
            boltCount: bolts,
            boltRadius,
            boltStiffness,
            flanges: [first, second],
            gasket: { radius, width, foundation },
          }
        : null,
    values,
    missing,
    target,
    limit,
    scatter,
    tolerance,
  };
}

const NOWHERE: Source = { si: null, origin: 'entered', source: 'not known' };
const STEEL: Source = {
  si: STEEL_MODULUS,
  origin: 'assumed',
  source: 'steel at room temperature, common practice',
};

const entered = (si: number): Source => ({ si, origin: 'entered', source: 'entered here' });

function optional(
  values: ScatterValue[],
  name: string,
  quantity: ScatterValue['quantity'],
  given: Given,
  known: Source | null,
): number | null {
  const value = given === null ? (known ?? NOWHERE) : entered(given.si);
  values.push({ name, quantity, ...value });
  return value.si;
}

type KnownNumber = Basis['joint']['circle'];

const asSource = (known: NonNullable<KnownNumber>, si = known.value): Source => ({
  si,
  origin: known.origin,
  source: known.source,
});

const halved = (known: KnownNumber) => (known === null ? null : asSource(known, known.value / 2));

function thicknessOf(row: Basis['joint']['flangeRow']): Source | null {
  if (row === null || row.thickness === null) return null;
  return {
    si: row.thickness,
    origin: 'standard',
    source: `${row.standard}, ${row.size} ${row.rating}, without its raised face`,
  };
}

function ownBolt(joint: Pick<CardInput, 'joint'>['joint'], basis: Basis): Source | null {
  const modulus = studMaterial({ joint }, basis).modulus;
  // A stiffness doesn't hang on the load it is asked with.
  const stretched = stretchOf(basis, 1, modulus?.value ?? null).value;
  if (stretched === null) return null;
  return {
    si: stretched.stiffness,
    origin: 'calculated',
    source: `thread, grip and modulus of the stud (${modulus?.source ?? ''}); half a diameter in each nut, common practice`,
  };
}

function gasketRing({ gaskets }: Basis): { readonly radius: Source; readonly width: Source } | null {
  const [gasket] = gaskets;
  const inside = gasket?.values.contactInside ?? null;
  const outside = gasket?.values.contactOutside ?? null;
  if (inside === null || outside === null || outside.value <= inside.value) return null;
  return {
    radius: asSource(outside, (outside.value + inside.value) / 4),
    width: asSource(outside, (outside.value - inside.value) / 2),
  };
}

function targetOf({ targetLoad }: Basis): Source | null {
  return targetLoad === null ? null : { si: targetLoad, origin: 'calculated', source: 'target of the joint' };
}

function limitOf(joint: Pick<CardInput, 'joint'>['joint'], basis: Basis): Source | null {
  const least = jointLimits(joint.data, basis)
    .filter(({ side, subject }) => side === 'most' && subject === 'single bolt')
    .toSorted((a, b) => a.limit - b.limit)[0];
  return least === undefined ? null : { si: least.limit, origin: 'calculated', source: least.name };
}

function scatterOf({ friction }: Basis): Source | null {
  if (friction.scatter === null) return null;
  return {
    si: TWICE * friction.scatter,
    origin: 'calculated',
    source: 'twice the coefficient of variation of the nut factor',
  };
}
