import { compute, type Outcome, positive, within } from '../findings/outcome.ts';

const MATERIAL = 'take it from the table of the material';

/**
 * Stiffness of a straight part under axial load.
 *
 * Equation: k = A·E/L.
 * @param area A, m², above 0
 * @param modulus E, Pa, above 0
 * @param length L along the load, m, above 0
 * @returns k, N/m
 * @example rodStiffness(176.7e-6, 210e9, 0.024).value // 1.546e9 N/m
 * @source Hooke's law
 */
export function rodStiffness(
  area: number | null,
  modulus: number | null,
  length: number | null,
): Outcome<number> {
  return compute(
    {
      area: positive('A', 'area, m²', area, 'measure the part'),
      modulus: positive('E', 'modulus, Pa', modulus, MATERIAL),
      length: positive('L', 'length along the load, m', length, 'measure the part'),
    },
    (v) => (v.area * v.modulus) / v.length,
  );
}

/**
 * Stiffness of parts pressed one behind the other, such as flange, gasket and flange.
 *
 * Equation: 1/k = Σ 1/ki.
 * @param parts ki, N/m, above 0
 * @returns k, N/m: never above the softest part's
 * @example seriesStiffness([2e9, 2e9]).value // 1e9 N/m
 * @source equilibrium of members in series
 */
export function seriesStiffness(parts: readonly (number | null)[]): Outcome<number> {
  return compute(
    {
      count: within('n', 'number of parts', parts.length, [1, 50], 'name the clamped parts'),
      ...Object.fromEntries(
        parts.map((part, index) => [
          `k${index}`,
          positive(`k${index + 1}`, `stiffness of part ${index + 1}, N/m`, part, 'have it calculated'),
        ]),
      ),
    },
    () => 1 / parts.reduce<number>((sum, part) => sum + 1 / (part ?? 0), 0),
  );
}

/** Frustum of pressure that spreads from a nut face into a clamped part, SI. */
export interface Frustum {
  /** E of the part, Pa. */
  readonly modulus: number | null;
  /** Bolt size d taken as the hole, m. */
  readonly hole: number | null;
  /** Diameter of the face the pressure starts from D, m, above `hole`. */
  readonly face: number | null;
  /** Thickness t the frustum goes through, m. */
  readonly thickness: number | null;
  /** Half-apex angle α, rad: 30° is usual, 45° older practice. State which. */
  readonly halfAngle: number;
}

/**
 * Stiffness of a clamped part by the pressure cone. It holds where the part is wide enough for the cone; a flange that
 * rotates is softer.
 *
 * Equation: k = π·E·d·tan α/ln[(2·t·tan α + D − d)·(D + d)/((2·t·tan α + D + d)·(D − d))].
 * @param frustum modulus, hole, face, thickness and half-apex angle (above 0, below 1.4 rad)
 * @returns k, N/m
 * @example frustumStiffness({ modulus: 206.8e9, hole: 0.019, face: 0.0285, thickness: 0.016, halfAngle: Math.PI / 6
 * }).value // 9.48e9 N/m
 * @source Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th ed., equation 8-20
 */
export function frustumStiffness({ modulus, hole, face, thickness, halfAngle }: Frustum): Outcome<number> {
  const least = hole === null || !Number.isFinite(hole) ? 0 : hole * (1 + 1e-9);
  return compute(
    {
      modulus: positive('E', 'modulus, Pa', modulus, MATERIAL),
      hole: positive('d', 'bolt size, m', hole, 'choose the thread of the stud'),
      face: within('D', 'diameter of the face, m, above the bolt size', face, [least, 10], 'choose the nut'),
      thickness: positive('t', 'thickness, m', thickness, 'measure the part'),
      angle: within('α', 'half-apex angle, rad', halfAngle, [0.01, 1.4], 'state the angle'),
    },
    ({ modulus: E, hole: d, face: D, thickness: t, angle }) => {
      const spread = 2 * t * Math.tan(angle);
      const ratio = ((spread + D - d) * (D + d)) / ((spread + D + d) * (D - d));
      return (Math.PI * E * d * Math.tan(angle)) / Math.log(ratio);
    },
  );
}

/**
 * Stiffness of two like parts clamped between two nut faces.
 *
 * Equation: km = k(t = l/2)/2.
 * @param frustum as `frustumStiffness`, its thickness the whole grip l
 * @returns km, N/m
 * @example likeMembersStiffness({ modulus: 105e9, hole: 0.02, face: 0.03, thickness: 0.08, halfAngle: Math.PI / 4
 * }).value // 2.66e9 N/m
 * @source Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th ed., equation 8-21
 */
export function likeMembersStiffness(frustum: Frustum): Outcome<number> {
  const half = frustumStiffness({
    ...frustum,
    thickness: frustum.thickness === null ? null : frustum.thickness / 2,
  });
  return half.value === null ? half : { value: half.value / 2, missing: [] };
}
