/**
 * Force at the point where a wrench's reaction member bears.
 *
 * Equation: F = T/r.
 * @param torque T, N·m, at least 0
 * @param arm r, from the nut’s axis to the point, perpendicular to the force, m, above 0
 * @returns force, N
 * @example reactionForce(1000, 0.2) // 5000 N
 * @source statics: the moment about the nut’s axis
 */
export function reactionForce(torque: number, arm: number): number {
  return torque / arm;
}
