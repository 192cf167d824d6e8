import { type Outcome, relation, rules } from '../findings/outcome.ts';

/** Force the pressure pushes the flanges apart with. */
export interface EndForce {
  /** H, N */
  readonly force: number;
  /** H/nb, N */
  readonly perBolt: number;
}

/**
 * Hydrostatic end force of a circular joint.
 *
 * Equation: H = (π/4)·G²·p; per bolt H/nb.
 * @param diameter diameter the pressure acts on G, m, above 0: say which, reaction diameter or gasket inside
 * @param pressure p, Pa, at least 0
 * @param boltCount nb, whole, 1 to 400
 * @returns whole force and force per bolt, N
 * @example endForce(0.29955, 1.7237e6, 12).value?.force // 121.48e3 N
 * @source ASME BPVC VIII-1, Appendix 2, 2-5(c) (second-hand)
 */
export function endForce(
  diameter: number | null,
  pressure: number | null,
  boltCount: number | null,
): Outcome<EndForce> {
  return END_FORCE({ diameter, pressure, count: boltCount });
}

const END_FORCE = relation(
  {
    diameter: rules.positive('G', 'diameter the pressure acts on, m', 'measure the gasket'),
    pressure: rules.within('p', 'pressure, Pa', [0, 1e9], 'enter the pressure of this case'),
    count: rules.whole('nb', 'number of bolts', [1, 400], 'count the bolts'),
  },
  (v): EndForce => {
    const force = (Math.PI / 4) * v.diameter ** 2 * v.pressure;
    return { force, perBolt: force / v.count };
  },
);
