/** One flange of the ring model, SI. */
export interface FlangeRing {
  /** EI, N·m²: bending stiffness of the ring's section. */
  readonly bending: number;
  /** GJ, N·m²: torsional stiffness of the ring's section. */
  readonly torsion: number;
  /** Rc, m: radius of the section's centroid. */
  readonly centroidRadius: number;
}

/** What a flange rests on, SI. */
export interface GasketBed {
  /** RG, m: radius of the gasket's reaction. */
  readonly radius: number;
  /** k, N/m per m of circumference, of the whole gasket; each flange sees half its thickness and so twice this. */
  readonly foundation: number;
  /** w, m: width of the gasket. */
  readonly width: number;
}

/** Modes summed where nobody asks for another number: the compliance is then settled to 1e-4. */
export const MODES = 400;

/**
 * Bending and torsional stiffness of a rectangular ring section.
 *
 * Equation: EI = E·b·t³/12; GJ = G·b·t³·(1/3 − 0.21·(t/b)·(1 − t⁴/(12·b⁴))) with t the smaller side; G = E/(2·(1 + ν)).
 * @param modulus E, Pa, above 0
 * @param width b, m, radial width of the section, above 0
 * @param thickness t, m, along the bolts, above 0
 * @param poisson ν, 1, 0 to 0.5
 * @returns EI and GJ, N·m²
 * @example rectangularSection(200e9, 0.08, 0.041, 0.3).bending // 91.89e3 N·m²
 * @source W. C. Young and R. G. Budynas, Roark's Formulas for Stress and Strain, 7th ed., Table 10.1 (from memory)
 */
export function rectangularSection(
  modulus: number,
  width: number,
  thickness: number,
  poisson: number,
): { readonly bending: number; readonly torsion: number } {
  const shear = modulus / (2 * (1 + poisson));
  const long = Math.max(width, thickness);
  const short = Math.min(width, thickness);
  const ratio = short / long;
  return {
    bending: (modulus * width * thickness ** 3) / 12,
    torsion: shear * long * short ** 3 * (1 / 3 - 0.21 * ratio * (1 - ratio ** 4 / 12)),
  };
}

/**
 * Movement of one flange at the bolt circle under a bolt load spread as cos nθ, per unit of load per length of the
 * centroid's circle.
 *
 * Equation: cₙ = [1 eb]·K⁻¹·[1 eb]ᵀ with K₁₁ = (EI·n⁴ + GJ·n²)/Rc⁴, K₁₂ = −(EI + GJ)·n²/Rc³, K₂₂ = (EI + GJ·n²)/Rc²,
 * plus (RG/Rc)·2k·([1 eg]ᵀ[1 eg] + diag(0, w²/12)); eb = Rb − Rc, eg = RG − Rc.
 * @param ring flange; stiffnesses above 0 (Infinity for a rigid one)
 * @param bed gasket under it; a foundation of 0 leaves modes 0 and 1 without support
 * @param boltRadius Rb, m, above 0
 * @param mode n, whole, at least 0
 * @returns compliance, m²/N; 0 where a rigid flange can't follow the mode, Infinity without support
 * @example modeCompliance({ bending: 9.2e4, torsion: 1e5, centroidRadius: 0.15 }, { radius: 0.124, foundation: 4e9, width: 0.015 }, 0.165, 0) > 0 // true
 * @source curved beam on elastic foundation; S. Timoshenko, Strength of Materials, Part II, 3rd ed. (from memory)
 */
export function modeCompliance(ring: FlangeRing, bed: GasketBed, boltRadius: number, mode: number): number {
  const { bending: EI, torsion: GJ, centroidRadius: Rc } = ring;
  const n2 = mode * mode;
  const eb = boltRadius - Rc;
  const eg = bed.radius - Rc;
  const support = (bed.radius / Rc) * 2 * bed.foundation;
  const rigid = !Number.isFinite(EI) || !Number.isFinite(GJ);
  if (rigid) return rigidCompliance(mode, { eb, eg, Rc, support, width: bed.width });
  const spread = bed.width ** 2 / 12;
  // Strain energy of the ring for w = e, φ = −1: sums of squares, since K₁₁·K₂₂ − K₁₂² loses every digit at high modes.
  const bent = (e: number) => EI * ((e * n2) / Rc ** 2 + 1 / Rc) ** 2 + GJ * n2 * (e / Rc ** 2 + 1 / Rc) ** 2;
  const determinant =
    (EI * GJ * n2 * (n2 - 1) ** 2) / Rc ** 6 +
    support * (bent(eg) + (spread * (EI * n2 * n2 + GJ * n2)) / Rc ** 4) +
    support ** 2 * spread;
  return determinant > 0
    ? (bent(eb) + support * ((eb - eg) ** 2 + spread)) / determinant
    : Number.POSITIVE_INFINITY;
}

/** A rigid ring can only sink (mode 0, no twist) or tilt (mode 1, w = Rc·φ); the foundation alone holds it. */
function rigidCompliance(
  mode: number,
  { eb, eg, Rc, support, width }: { eb: number; eg: number; Rc: number; support: number; width: number },
): number {
  if (mode === 0) return 1 / support;
  if (mode > 1) return 0;
  const arm = Rc + eg;
  return (Rc + eb) ** 2 / (support * (arm * arm + width ** 2 / 12));
}

/**
 * Movement of one flange at a bolt for a unit load at another.
 *
 * Equation: C(Δθ) = c₀/(2π·Rc) + Σ cₙ·cos(n·Δθ)/(π·Rc), n = 1 … modes; at the bolt itself also eb²·Rc/(π·GJ·(modes + ½)).
 * @param ring flange
 * @param bed gasket under it
 * @param boltRadius Rb, m, above 0
 * @param count N, whole, at least 1: compliance is returned for the angles 0, 2π/N, …
 * @param modes number of modes, whole, at least 1
 * @returns C for each place around the circle, m/N
 * @example ringCompliance({ bending: 9.2e4, torsion: 1e5, centroidRadius: 0.15 }, { radius: 0.124, foundation: 4e9, width: 0.015 }, 0.165, 12, 400).length // 12
 * @source Fourier series of a point load on a closed ring
 */
export function ringCompliance(
  ring: FlangeRing,
  bed: GasketBed,
  boltRadius: number,
  count: number,
  modes: number = MODES,
): number[] {
  // cos(n·2πk/N) depends on n·k modulo N only, so the modes fold onto N sums.
  const folded = new Array<number>(count).fill(0);
  for (let mode = 0; mode <= modes; mode++) {
    const part = modeCompliance(ring, bed, boltRadius, mode) * (mode === 0 ? 0.5 : 1);
    folded[mode % count] = (folded[mode % count] ?? 0) + part;
  }
  // The modes left out fall as 1/n²: they add up at the bolt itself and cancel elsewhere.
  const rest = (boltRadius - ring.centroidRadius) ** 2 * ring.centroidRadius ** 2;
  const tail = Number.isFinite(ring.torsion) ? rest / (ring.torsion * (modes + 0.5)) : 0;
  return Array.from({ length: count }, (_, place) => {
    const sum = folded.reduce(
      (total, part, mode) => total + part * Math.cos((2 * Math.PI * ((mode * place) % count)) / count),
      0,
    );
    return (sum + (place === 0 ? tail : 0)) / (Math.PI * ring.centroidRadius);
  });
}
