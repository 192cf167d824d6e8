import { type Outcome, relation, rules } from '../findings/outcome.ts';

/** What the gasket relations of a joint rest on, SI; null is not known. */
export interface GasketBolting {
  /** nb */
  readonly boltCount: number | null;
  /** Ab: root area of one bolt, m². Appendix O names this area, not the tensile one. */
  readonly boltRootArea: number | null;
  /** Ag, m² */
  readonly gasketArea: number | null;
}

const COUNT = 'count the bolts';
const ROOT = 'choose the thread of the stud';
const AREA = 'measure the sealing element or take it from the gasket standard';

/** Rules of the three inputs that every gasket relation shares. */
export const BOLTING_RULES = {
  count: rules.whole('nb', 'number of bolts', [1, 400], COUNT),
  root: rules.positive('Ab', 'root area of one bolt, m²', ROOT),
  area: rules.positive('Ag', 'gasket area, m²', AREA),
};

/**
 * Bolt stress that loads the gasket to a stress of its own.
 *
 * Equation: σb = SgT·Ag/(nb·Ab), on the root area.
 * @param bolting number of bolts, root area and gasket area
 * @param gasketStress SgT, Pa, above 0
 * @returns σb on the root area, Pa
 * @example gasketTargetStress({ boltCount: 12, boltRootArea: 270.5e-6, gasketArea: 0.0118 }, 103e6).value // 374e6 Pa
 * @source ASME PCC-1-2013, Appendix O, step 1 (from memory)
 */
export function gasketTargetStress(bolting: GasketBolting, gasketStress: number | null): Outcome<number> {
  const { boltCount, boltRootArea, gasketArea } = bolting;
  return TARGET({ count: boltCount, root: boltRootArea, area: gasketArea, stress: gasketStress });
}

const TARGET = relation(
  {
    ...BOLTING_RULES,
    stress: rules.positive('SgT', 'target gasket stress, Pa', 'take it from the gasket data sheet'),
  },
  (v) => (v.stress * v.area) / (v.count * v.root),
);

/**
 * Stress left on the gasket under pressure.
 *
 * Equation: SG = (nb·Ab·σb − (π/4)·Gid²·p)/Ag.
 * @param bolting number of bolts, root area and gasket area
 * @param boltStress σb on the root area, Pa, at least 0
 * @param pressure p, Pa, at least 0
 * @param insideDiameter Gid, m, at least 0: the diameter the pressure acts on
 * @returns SG, Pa; zero or less means that the gasket is free of load
 * @example gasketStressAt({ boltCount: 12, boltRootArea: 270.5e-6, gasketArea: 0.0118 }, 345e6, 5e6, 0.233).value //
 * 76.8e6 Pa
 * @source ASME PCC-1-2013, Appendix O (second-hand)
 */
export function gasketStressAt(
  bolting: GasketBolting,
  boltStress: number | null,
  pressure: number | null,
  insideDiameter: number | null,
): Outcome<number> {
  return STRESS_LEFT({
    count: bolting.boltCount,
    root: bolting.boltRootArea,
    area: bolting.gasketArea,
    stress: boltStress,
    pressure,
    inside: insideDiameter,
  });
}

const STRESS_LEFT = relation(
  {
    ...BOLTING_RULES,
    stress: rules.within('σb', 'bolt stress on the root area, Pa', [0, 5e9], 'choose a target'),
    pressure: rules.within('p', 'pressure, Pa', [0, 1e9], 'enter the pressure of this case'),
    inside: rules.within('Gid', 'inside diameter of the gasket, m', [0, 20], AREA),
  },
  (v) => (v.count * v.root * v.stress - (Math.PI / 4) * v.inside ** 2 * v.pressure) / v.area,
);
