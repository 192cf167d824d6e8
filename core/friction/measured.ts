/**
 * Nut factor that was really there, from a torque and the bolt load measured beside it.
 *
 * Equation: K = T/(F·D).
 * @param torque T, N·m, above 0
 * @param load F, N, above 0
 * @param diameter nominal diameter D, m, above 0
 * @returns K, 1; null where one of them is not above 0
 * @example measuredNutFactor(90.388, 34260, 0.0127) // 0.20774
 * @source R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th ed., equation 8-27
 */
export function measuredNutFactor(torque: number, load: number, diameter: number): number | null {
  return torque > 0 && load > 0 && diameter > 0 ? torque / (load * diameter) : null;
}
