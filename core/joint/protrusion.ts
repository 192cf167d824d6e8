/** How far the stud stands out of the nut at each end. */
export interface Protrusion {
  /** m; negative when the stud ends inside the nut. */
  readonly perEnd: number;
  readonly threads: number;
}

/**
 * Stud protrusion at each end, the stud centred in the joint.
 *
 * Equation: z = (L − grip − 2·m)/2; threads = z/P.
 * @param studLength L, m, above 0, points left out
 * @param grip clamped length between the nuts, m
 * @param nutHeight largest nut height m, m, above 0
 * @param pitch P, m, above 0
 * @returns protrusion of one end
 * @example protrusion(0.1397, 0.0866, 0.022479, 0.00282222).threads // 1.44
 * @source geometry; two to three threads showing is common practice
 */
export function protrusion(studLength: number, grip: number, nutHeight: number, pitch: number): Protrusion {
  const perEnd = (studLength - grip - 2 * nutHeight) / 2;
  return { perEnd, threads: perEnd / pitch };
}
