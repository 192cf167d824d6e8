/**
 * Loads after each tightening by coefficients of elastic interaction, as they are measured on one joint: each unit of
 * load added to a bolt takes its coefficient away from another, and no bolt pulls less than nothing.
 *
 * Equation: Fi ← max(0, Fi − cᵢⱼ·ΔFj) for every i ≠ j; Fj ← its set value. A bolt above its set value is not turned.
 * @param coefficients cᵢⱼ, 1, what bolt i loses per unit put on bolt j; bolts count from 0
 * @param steps bolts in the order they are turned with the load each is set to, N, at least 0
 * @param contact 'one-sided' for bolts that can go slack; 'two-sided' lets the sum run below zero, as a linear matrix does
 * @returns loads after each step, N
 * @example tightenByCoefficients([[0, 0.2], [0.2, 0]], [{ bolt: 0, load: 100 }, { bolt: 1, load: 100 }], 'one-sided').at(-1) // [80, 100]
 * @source D. Bibel and R. Ezell, J. Pressure Vessel Technol. 114 (1992) 439 (method named from memory)
 */
export function tightenByCoefficients(
  coefficients: readonly (readonly number[])[],
  steps: readonly { readonly bolt: number; readonly load: number }[],
  contact: 'one-sided' | 'two-sided',
): number[][] {
  const least = contact === 'one-sided' ? 0 : Number.NEGATIVE_INFINITY;
  let loads = coefficients.map(() => 0);
  return steps.map(({ bolt, load }) => {
    const added = load - (loads[bolt] ?? 0);
    if (added > 0) {
      loads = loads.map((own, i) =>
        i === bolt ? load : Math.max(least, own - (coefficients[i]?.[bolt] ?? 0) * added),
      );
    }
    return [...loads];
  });
}
