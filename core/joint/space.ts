/**
 * Distance between the centres of two neighbouring studs, the chord of the bolt circle.
 *
 * Equation: c = Dbc·sin(π/N).
 * @param boltCircle Dbc, m, above 0
 * @param count N, whole, 2 or more
 * @returns chord, m; half of it lies on each side of the midpoint
 * @example boltSpacing(0.3302, 12) // 0.08546 m
 * @source plane geometry
 */
export function boltSpacing(boltCircle: number, count: number): number {
  return boltCircle * Math.sin(Math.PI / count);
}

/**
 * Free space between a tool head on one nut and the corner of the neighbour's nut. Head and nut stand on two studs, so
 * they share the whole chord; half of it would refuse a head no larger than the nut it turns.
 *
 * Equation: gap = Dbc·sin(π/N) − r − C/2.
 * @param boltCircle Dbc, m, above 0
 * @param count N, whole, 2 or more
 * @param headRadius clearance radius of the head r, m, above 0
 * @param acrossCorners of the neighbour’s nut C, m, above 0
 * @returns free space, m; negative when the head does not go in
 * @example neighbourGap(0.3302, 12, 0.040, 0.04216) // 0.0244 m
 * @source plane geometry
 */
export function neighbourGap(
  boltCircle: number,
  count: number,
  headRadius: number,
  acrossCorners: number,
): number {
  return boltSpacing(boltCircle, count) - headRadius - acrossCorners / 2;
}
