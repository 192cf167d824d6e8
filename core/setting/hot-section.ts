import type { HotView, StrengthRow } from '../contract/card-views.ts';
import type { Raised } from '../findings/finding.ts';
import type { InputGap, Outcome } from '../findings/outcome.ts';
import { atJoint, raise } from '../findings/raise.ts';
import { operatingStress } from '../joint/component-checks.ts';
import { type HeatedPart, type HotLoad, hotLoad } from '../joint/expansion.ts';
import { componentData } from '../joint/gaskets.ts';
import { showQuantity } from '../text/number.ts';
import type { Basis } from './basis.ts';
import type { CardInput } from './input.ts';
import type { StudStress } from './loads.ts';
import { NO_WORKINGS, notChecked, type Section } from './section.ts';
import type { StudMaterial } from './stud-material.ts';
import { stretchOf } from './stud-section.ts';
import { hotWorking, strengthWorkings } from './workings-hot.ts';

/** Up to this service temperature heat changes neither load nor strength enough to ask for data, °C. */
const AMBIENT = 50;

/**
 * Temperature in operation.
 *
 * Equation: T of the operating case, else the service temperature.
 * @param input input of the card
 * @returns °C, or null when neither is entered
 * @example operatingTemperature(complete) // 150 °C
 * @source joint data
 */
export function operatingTemperature({ joint: { data } }: CardInput): number | null {
  return data.pressures.operating.temperature?.si ?? data.serviceTemperature?.si ?? null;
}

/**
 * Part of the card on strength at assembly and in operation, and on the load hot.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @param material modulus, expansion and yield of the stud, SI
 * @param stress stresses of one stud, Pa, or null
 * @returns views, findings and workings; empty where heat asks for nothing
 * @example hotSection(complete, basisOf(complete), studMaterial(complete, basisOf(complete)), null).view.hot // null
 * @source each working names its own
 */
export function hotSection(
  input: CardInput,
  basis: Basis,
  material: StudMaterial,
  stress: StudStress | null,
): Section<{ readonly strength: StrengthRow[]; readonly hot: HotView | null }> {
  if (stress === null || basis.joint.thread === null) {
    return { view: { strength: [], hot: null }, findings: [], workings: NO_WORKINGS };
  }
  const strength = strengthRows(input, basis, material, stress);
  const hot = hotOf(input, basis, material, stress.load);
  const view = hot.value === null ? null : viewOf(basis, hot.value, material.modulusHot === null);
  return {
    view: { strength, hot: view },
    findings: [...strengthFindings(input, strength), ...hotFindings(input, basis, hot)],
    workings: () => [
      ...strengthWorkings(input, strength, stress),
      ...(view === null ? [] : [hotWorking(input, basis, material, stress.load, view)]),
    ],
  };
}

function strengthRows(
  input: CardInput,
  { joint: { yieldStrength } }: Basis,
  { yieldHot }: StudMaterial,
  stress: StudStress,
): StrengthRow[] {
  const row = (
    state: StrengthRow['state'],
    temperature: number | null,
    known: typeof yieldStrength,
  ): StrengthRow => ({
    state,
    temperature,
    yield: known?.value ?? null,
    axialOfYield: known === null || stress.tensile === null ? null : stress.tensile / known.value,
    origin: known?.origin ?? 'entered',
    source: known?.source ?? 'not known',
  });
  return [
    row('assembly', input.joint.data.hot.assemblyTemperature?.si ?? null, yieldStrength),
    row('operating', operatingTemperature(input), yieldHot),
  ];
}

function about(input: CardInput, source: string) {
  return { subject: input.joint.data.tag, place: atJoint(input.joint.id, 'hot'), source };
}

function strengthFindings(input: CardInput, rows: readonly StrengthRow[]): Raised[] {
  const row = rows.find(({ state }) => state === 'operating');
  const temperature = operatingTemperature(input);
  if (temperature !== null && temperature <= AMBIENT) return [];
  if (row === undefined || row.yield === null) {
    const gap = temperature === null ? TEMPERATURE : YIELD_HOT;
    return notChecked('strength in operation', [gap], about(input, 'strength at temperature'));
  }
  const share = row.axialOfYield;
  if (share === null || share <= 1 + 1e-9) return [];
  return [
    raise(
      'above_yield_hot',
      () => ({
        share: showQuantity(share, 'percent', 3),
        temperature: temperature === null ? 'operating temperature' : showQuantity(temperature, 'degC'),
      }),
      {
        ...about(input, row.source),
        severity: 'warning',
        value: share,
        limit: 1,
        unit: 'percent',
      },
    ),
  ];
}

const TEMPERATURE: InputGap = {
  symbol: 'T',
  name: 'temperature in operation',
  reason: 'missing',
  given: null,
  allowed: '',
  remedy: 'enter the service temperature',
};

const YIELD_HOT: InputGap = {
  ...TEMPERATURE,
  symbol: 'Re',
  name: 'yield strength at operating temperature',
  remedy: 'enter it from the material standard or certificate',
};

function hotOf(input: CardInput, basis: Basis, material: StudMaterial, load: number): Outcome<HotLoad> {
  const { hot } = input.joint.data;
  const cold = stretchOf(basis, load, material.modulus?.value ?? null);
  if (cold.value === null) return cold;
  const heated = material.modulusHot === null ? cold : stretchOf(basis, load, material.modulusHot.value);
  if (heated.value === null) return heated;
  const rise = (at: { readonly si: number } | null) =>
    at === null || hot.assemblyTemperature === null ? null : at.si - hot.assemblyTemperature.si;
  const grip = basis.joint.grip?.value ?? null;
  const stud = {
    name: 'the stud',
    length: grip,
    expansion: material.expansion?.value ?? null,
    rise: rise(hot.boltTemperature),
  };
  return hotLoad(
    load,
    stud,
    clampedParts(basis, grip, material.flangeExpansion?.value ?? null, rise(hot.flangeTemperature)),
    {
      boltCold: cold.value.stiffness,
      boltHot: heated.value.stiffness,
      joint: hot.jointStiffness?.si ?? null,
    },
  );
}

/** Flanges, and every gasket whose own expansion is known; the others count as flange. */
function clampedParts(
  { gaskets }: Basis,
  grip: number | null,
  ofFlange: number | null,
  rise: number | null,
): HeatedPart[] {
  const soft = gaskets.flatMap(({ name, data: { thickness, expansion } }) =>
    thickness === null || expansion === null
      ? []
      : [{ name, length: thickness.si, expansion: expansion.si, rise }],
  );
  const thickness = soft.reduce((sum, { length }) => sum + length, 0);
  const flanges = {
    name: 'the flanges',
    length: grip === null ? null : grip - thickness,
    expansion: ofFlange,
    rise,
  };
  return [flanges, ...soft];
}

/** `cold`: the modulus hot is not known and the cold one stands for it. */
function viewOf({ gaskets }: Basis, load: HotLoad, cold: boolean): HotView {
  const counted = gaskets.every(({ data: { expansion } }) => expansion !== null);
  const parts = [
    load.hotLoad === null
      ? 'stiffness of the joint not known: between no change and a rigid joint'
      : 'by the stiffnesses of stud and joint',
    ...(counted ? [] : ['gasket counted as flange']),
    ...(cold ? ['modulus of the stud taken cold'] : []),
  ];
  return {
    difference: load.difference,
    change: load.change,
    bound: load.bound,
    hotLoad: load.hotLoad,
    range: [load.range[0], load.range[1]],
    mayVanish: load.mayVanish,
    basis: parts.join('; '),
  };
}

function hotFindings(input: CardInput, basis: Basis, hot: Outcome<HotLoad>): Raised[] {
  const temperature = operatingTemperature(input);
  const source = input.joint.data.hot.source || 'joint data';
  if (hot.value === null) {
    if (temperature !== null && temperature <= AMBIENT) return [];
    return notChecked('load hot', hot.missing, about(input, source));
  }
  const least = hot.value.hotLoad ?? hot.value.range[0];
  const needed = neededInOperation(input, basis);
  if (!hot.value.mayVanish && (needed === null || least >= needed)) return [];
  return [
    raise(
      'hot_load_low',
      () => ({
        load: showQuantity(least, 'kN'),
        needed: needed === null || least >= needed ? null : showQuantity(needed, 'kN'),
      }),
      { ...about(input, source), severity: 'warning', value: least, limit: needed, unit: 'kN' },
    ),
  ];
}

/** Load per stud that the gaskets need in operation, N; relaxation is part of it. */
function neededInOperation(input: CardInput, { joint, gaskets }: Basis): number | null {
  const { data } = input.joint;
  if (data.boltSets.length > 0) return null;
  const loads = gaskets.flatMap((gasket) => {
    const component = componentData(data, joint, gasket);
    const operating = component.cases.find(({ name }) => name === 'operating');
    const stress = operating === undefined ? null : operatingStress(component, operating).value;
    return stress === null || component.boltRootArea === null ? [] : [stress * component.boltRootArea];
  });
  return loads.length === 0 ? null : Math.max(...loads);
}
