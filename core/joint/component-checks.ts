import { type InputGap, type InputRule, type Outcome, relation, rules } from '../findings/outcome.ts';
import { BOLTING_RULES, type GasketBolting } from './gasket-target.ts';

/** A state of the joint in which the gasket has to hold, with a pressure and a retained fraction of its own. */
export interface PressureCase {
  readonly name: 'design' | 'operating' | 'test';
  /** Pmax, Pa */
  readonly pressure: number | null;
  /** φg: fraction of the gasket's assembly stress that is left in this state, 0 to 1. */
  readonly retained: number | null;
}

/** Everything the component approach looks at, SI, stresses on the root area. Null is not known. */
export interface ComponentData extends GasketBolting {
  /** Gid: inside diameter the pressure acts on, m. */
  readonly gasketInside: number | null;
  /** SgT, Pa */
  readonly gasketTarget: number | null;
  /** Sg,minS, Pa */
  readonly gasketSeating: number | null;
  /** Sg,minO, Pa */
  readonly gasketOperating: number | null;
  /** Sg,max, Pa */
  readonly gasketMax: number | null;
  /** Sb,max, Pa */
  readonly boltStressMax: number | null;
  /** Sb,min, Pa */
  readonly boltStressMin: number | null;
  /** Sf,max, Pa */
  readonly flangeStressMax: number | null;
  /** θf,max: rotation of the flange at Sf,max, rad. */
  readonly flangeRotation: number | null;
  /** θg,max: rotation the gasket stands, rad. */
  readonly gasketRotation: number | null;
  readonly cases: readonly PressureCase[];
}

/** One check of a bolt stress. "Not known" is never a pass. */
export interface LimitCheck {
  readonly step: 5 | 6 | 7 | 8;
  readonly name: 'gasket seating' | 'gasket in operation' | 'gasket ceiling' | 'flange rotation';
  /** Pressure case of step 6; null for the other steps. */
  readonly case: PressureCase['name'] | null;
  readonly state: 'met' | 'not met' | 'not known';
  readonly side: 'at least' | 'at most';
  /** Bolt stress on the root area, Pa; null when it can't be one. */
  readonly value: number | null;
  /** Limit as a bolt stress on the root area, Pa; null when not known. */
  readonly limit: number | null;
  readonly relation: string;
  readonly missing: readonly InputGap[];
}

/** Relative room for rounding when two stresses that are equal by their definition are compared. */
const ROUNDING = 1e-12;
const DATA_SHEET = 'take it from the gasket data sheet';

/**
 * Checks a bolt stress against what gasket and flange need and stand.
 *
 * Equation: 5. σb ≥ Sg,minS·Ag/(nb·Ab); 6. σb ≥ (Sg,minO·Ag + (π/4)·Pmax·Gid²)/(φg·nb·Ab) for every case; 7. σb ≤
 * Sg,max·Ag/(nb·Ab); 8. σb ≤ Sf,max·(θg,max/θf,max).
 * @param boltStress σb on the root area, Pa, at least 0
 * @param data joint, gasket, limits and pressure cases
 * @returns one check per step, and one of step 6 per case
 * @example checkBoltStress(345e6, component).find((check) => check.step === 5)?.state // 'met'
 * @source ASME PCC-1-2013, Appendix O, steps 5 to 8 (from memory)
 */
export function checkBoltStress(boltStress: number | null, data: ComponentData): LimitCheck[] {
  const stress = BOLT_STRESS({ stress: boltStress });
  return [
    check(stress, SEATING_CHECK, null, seatingStress(data)),
    ...data.cases.map((one) => check(stress, OPERATING_CHECK, one.name, operatingStress(data, one))),
    check(stress, CEILING_CHECK, null, ceilingStress(data)),
    check(stress, ROTATION_CHECK, null, rotationStress(data)),
  ];
}

type CheckKind = Pick<LimitCheck, 'step' | 'name' | 'side' | 'relation'>;

const SEATING_CHECK: CheckKind = {
  step: 5,
  name: 'gasket seating',
  side: 'at least',
  relation: 'σb ≥ Sg,minS·Ag/(nb·Ab)',
};
const OPERATING_CHECK: CheckKind = {
  step: 6,
  name: 'gasket in operation',
  side: 'at least',
  relation: 'σb ≥ (Sg,minO·Ag + (π/4)·Pmax·Gid²)/(φg·nb·Ab)',
};
const CEILING_CHECK: CheckKind = {
  step: 7,
  name: 'gasket ceiling',
  side: 'at most',
  relation: 'σb ≤ Sg,max·Ag/(nb·Ab)',
};
const ROTATION_CHECK: CheckKind = {
  step: 8,
  name: 'flange rotation',
  side: 'at most',
  relation: 'σb ≤ Sf,max·(θg,max/θf,max)',
};

const BOLT_STRESS = relation(
  { stress: rules.within('σb', 'bolt stress on the root area, Pa', [0, 5e9], 'select a bolt stress') },
  (v) => v.stress,
);

function check(
  stress: Outcome<number>,
  { step, name, side, relation: rule }: CheckKind,
  pressureCase: LimitCheck['case'],
  limit: Outcome<number>,
): LimitCheck {
  return {
    step,
    name,
    case: pressureCase,
    side,
    value: stress.value,
    limit: limit.value,
    relation: rule,
    state: stateOf(stress.value, side, limit.value),
    missing: stress.value === null || limit.value === null ? [...stress.missing, ...limit.missing] : NOTHING,
  };
}

const NOTHING: readonly InputGap[] = [];

function stateOf(stress: number | null, side: LimitCheck['side'], limit: number | null): LimitCheck['state'] {
  if (stress === null || limit === null) return 'not known';
  const met = side === 'at least' ? stress >= limit * (1 - ROUNDING) : stress <= limit * (1 + ROUNDING);
  return met ? 'met' : 'not met';
}

/**
 * Least bolt stress that seats the gasket.
 *
 * Equation: σb = Sg,minS·Ag/(nb·Ab).
 * @param data number of bolts, root area, gasket area, Sg,minS
 * @returns σb on the root area, Pa
 * @example seatingStress({ boltCount: 24, boltRootArea: 217.051e-6, gasketArea: 0.022993317, gasketSeating: 86.18e6
 * }).value // 380.4e6 Pa
 * @source ASME PCC-1-2013, Appendix O, step 5 (from memory)
 */
export function seatingStress(data: GasketBolting & Pick<ComponentData, 'gasketSeating'>): Outcome<number> {
  return SEATING({ ...boltingOf(data), stress: data.gasketSeating });
}

const SEATING = byGasketStress(
  rules.within('Sg,minS', 'least gasket seating stress, Pa', [0, 5e9], DATA_SHEET),
);

/**
 * Largest bolt stress the gasket stands.
 *
 * Equation: σb = Sg,max·Ag/(nb·Ab).
 * @param data number of bolts, root area, gasket area, Sg,max
 * @returns σb on the root area, Pa
 * @example ceilingStress({ boltCount: 24, boltRootArea: 217.051e-6, gasketArea: 0.022993317, gasketMax: 275.789e6
 * }).value // 1217e6 Pa
 * @source ASME PCC-1-2013, Appendix O, step 7 (from memory)
 */
export function ceilingStress(data: GasketBolting & Pick<ComponentData, 'gasketMax'>): Outcome<number> {
  return CEILING({ ...boltingOf(data), stress: data.gasketMax });
}

const CEILING = byGasketStress(rules.positive('Sg,max', 'largest gasket stress, Pa', DATA_SHEET));

function byGasketStress(stress: InputRule) {
  return relation({ ...BOLTING_RULES, stress }, (v) => (v.stress * v.area) / (v.count * v.root));
}

function boltingOf({ boltCount, boltRootArea, gasketArea }: GasketBolting) {
  return { count: boltCount, root: boltRootArea, area: gasketArea };
}

/**
 * Least bolt stress at assembly that keeps the gasket tight in one pressure case.
 *
 * Equation: σb = (Sg,minO·Ag + (π/4)·Pmax·Gid²)/(φg·nb·Ab).
 * @param data number of bolts, root area, gasket area, Gid, Sg,minO
 * @param pressureCase pressure and retained fraction φg of the case
 * @returns σb on the root area, Pa
 * @example operatingStress({ boltCount: 24, boltRootArea: 217.051e-6, gasketArea: 0.022993317, gasketInside: 0.55,
 * gasketOperating: 41.3684e6 }, { name: 'design', pressure: 1e6, retained: 0.7 }).value // 326.0e6 Pa
 * @source ASME PCC-1-2013, Appendix O, step 6 (from memory)
 */
export function operatingStress(
  data: GasketBolting & Pick<ComponentData, 'gasketInside' | 'gasketOperating'>,
  pressureCase: PressureCase,
): Outcome<number> {
  return OPERATING[pressureCase.name]({
    ...boltingOf(data),
    stress: data.gasketOperating,
    inside: data.gasketInside,
    pressure: pressureCase.pressure,
    retained: pressureCase.retained,
  });
}

/** One relation per case, since the inputs' names say which case is meant. */
const OPERATING = {
  design: operatingIn('in the design case'),
  operating: operatingIn('in the operating case'),
  test: operatingIn('in the test case'),
};

function operatingIn(at: string) {
  return relation(
    {
      ...BOLTING_RULES,
      stress: rules.within('Sg,minO', 'least gasket operating stress, Pa', [0, 5e9], DATA_SHEET),
      inside: rules.positive('Gid', 'inside diameter of the gasket, m', 'measure the sealing element'),
      pressure: rules.within('Pmax', `largest pressure ${at}, Pa`, [0, 1e9], `enter the pressure ${at}`),
      retained: rules.within('φg', `retained fraction of the gasket stress ${at}`, [0, 1], DATA_SHEET),
    },
    (v) => (v.stress * v.area + (Math.PI / 4) * v.pressure * v.inside ** 2) / (v.retained * v.count * v.root),
  );
}

/**
 * Largest bolt stress at which the flange rotates no farther than the gasket stands.
 *
 * Equation: σb = Sf,max·(θg,max/θf,max).
 * @param data Sf,max, θf,max, θg,max
 * @returns σb on the root area, Pa
 * @example rotationStress({ flangeStressMax: 507e6, flangeRotation: 0.39, gasketRotation: 1 }).value // 1300e6 Pa
 * @source ASME PCC-1-2013, Appendix O, step 8 (from memory)
 */
export function rotationStress(
  data: Pick<ComponentData, 'flangeStressMax' | 'flangeRotation' | 'gasketRotation'>,
): Outcome<number> {
  return ROTATION({
    flange: data.flangeStressMax,
    flangeRotation: data.flangeRotation,
    gasketRotation: data.gasketRotation,
  });
}

const ROTATION = relation(
  {
    flange: rules.positive(
      'Sf,max',
      'largest bolt stress by the flange, Pa',
      'have the flange calculated, or take the limit from a table the site accepts',
    ),
    flangeRotation: rules.positive(
      'θf,max',
      'rotation of the flange at Sf,max, rad',
      'have the flange calculated',
    ),
    gasketRotation: rules.within('θg,max', 'rotation the gasket stands, rad', [0, 1], DATA_SHEET),
  },
  (v) => v.flange * (v.gasketRotation / v.flangeRotation),
);
