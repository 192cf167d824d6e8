/** A length of stud with one cross-section. */
export interface StudSection {
  /** m */
  readonly length: number;
  /** m² */
  readonly area: number;
}

/**
 * Elongation of a stud.
 *
 * Equation: ΔL = F·Σ(Li/Ai)/E.
 * @param load F, N, at least 0
 * @param sections lengths and areas; allowances for the engaged ends are lengths of their own
 * @param modulus E, Pa, above 0
 * @returns ΔL, m
 * @example elongation(44482, [{ length: 0.127, area: 0.000298 }], 206.8e9) // 0.0000917 m
 * @source Hooke's law; J. H. Bickford, Introduction to the Design and Behavior of Bolted Joints, 4th ed., chapter 5
 * (from memory)
 */
export function elongation(load: number, sections: readonly StudSection[], modulus: number): number {
  return (load / modulus) * sections.reduce((sum, { length, area }) => sum + length / area, 0);
}

/**
 * Axial stiffness of a stud.
 *
 * Equation: kb = E/Σ(Li/Ai).
 * @param sections as for `elongation`
 * @param modulus E, Pa, above 0
 * @returns kb, N/m
 * @example studStiffness([{ length: 0.1093, area: 0.000298 }], 202e9) // 5.51e8 N/m
 * @source Hooke's law
 */
export function studStiffness(sections: readonly StudSection[], modulus: number): number {
  return modulus / sections.reduce((sum, { length, area }) => sum + length / area, 0);
}
