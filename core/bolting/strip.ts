import { noSolution, type Outcome, relation, rules } from '../findings/outcome.ts';
import type { Thread } from './thread.ts';
import { type ThreadLimits, threadLimits } from './thread-limits.ts';

/**
 * Shear strength as a part of tensile strength that the handbook rule for engagement rests on: the sheared area has to
 * be twice the tensile one.
 */
export const SHEAR_SHARE_HANDBOOK = 0.5;

/** Areas a thread strips through over an engaged length, m². */
export interface StripAreas {
  /** Stud thread sheared off at the nut's minor diameter. */
  readonly external: number;
  /** Nut thread sheared off at the stud's major diameter. */
  readonly internal: number;
  /** Tolerance classes the areas are the least of. */
  readonly basis: string;
}

/**
 * Areas of stud and nut thread that would have to shear for the joint to strip.
 *
 * Equation: AS,ext = π·Le·D1max/P·[P/2 + (d2min − D1max)/√3]; AS,int = π·Le·dmin/P·[P/2 + (dmin − D2max)/√3].
 * @param thread thread of the stud
 * @param engagement engaged length Le, m, above 0: nut height less its countersinks
 * @returns least areas over the tolerances; no solution for a thread without limits of size
 * @example stripAreas(unifiedThread(1, 8), 0.0254).value?.external // 1.07e-3 m²
 * @source FED-STD-H28/2B and ASME B1.1-2003, Appendix B (second-hand)
 */
export function stripAreas(thread: Thread, engagement: number | null): Outcome<StripAreas> {
  const limits = threadLimits(thread);
  if (limits === null) {
    return noSolution(
      'AS',
      'area a thread strips through',
      'limits of size of this thread are not held: enter them',
    );
  }
  return areasWithin(limits, thread.pitch, engagement);
}

/**
 * Strip areas from limits of size that were measured or taken from another table.
 *
 * Equation: as `stripAreas`.
 * @param limits limits of size, m
 * @param pitch P, m, above 0
 * @param engagement engaged length Le, m, above 0
 * @returns areas, m²
 * @example areasWithin(limits, 0.00282222, 0.022).value?.internal // 1.13e-3 m²
 * @source FED-STD-H28/2B and ASME B1.1-2003, Appendix B (second-hand)
 */
export function areasWithin(
  limits: ThreadLimits,
  pitch: number | null,
  engagement: number | null,
): Outcome<StripAreas> {
  return AREAS({ pitch, length: engagement }, limits);
}

const AREAS = relation(
  {
    pitch: rules.positive('P', 'pitch, m', 'choose the thread of the stud'),
    length: rules.positive('Le', 'engaged length, m', 'measure the nut height less its countersinks'),
  },
  (v, { majorMin, pitchMin, nutMinorMax, nutPitchMax, basis }: ThreadLimits): StripAreas => ({
    external: area(nutMinorMax, pitchMin - nutMinorMax, v.pitch, v.length),
    internal: area(majorMin, majorMin - nutPitchMax, v.pitch, v.length),
    basis,
  }),
);

function area(diameter: number, overlap: number, pitch: number, length: number): number {
  return ((Math.PI * length * diameter) / pitch) * (pitch / 2 + overlap / Math.sqrt(3));
}

/** Load at which a thread strips against the load it carries. */
export interface StripMargin {
  /** Load that strips the stud's thread, N. */
  readonly studLoad: number;
  /** Load that strips the nut's thread, N. */
  readonly nutLoad: number;
  readonly weaker: 'stud thread' | 'nut thread';
  /** Strip load over bolt load; above 1 is needed. */
  readonly margin: number;
  readonly basis: string;
}

/**
 * Margin of the thread against stripping.
 *
 * Equation: Fstrip = c·Rm·AS for stud and nut; margin = min/F.
 * @param load bolt load F, N, above 0
 * @param areas from `stripAreas`
 * @param studTensile Rm of the stud, Pa, above 0
 * @param nutTensile Rm of the nut, Pa, above 0; not its proof stress
 * @param shearShare c: shear strength over tensile strength, above 0 to 1
 * @returns loads and the margin of the weaker thread
 * @example stripMargin(108000, areas, 862e6, 862e6, 0.5).value?.margin // 3.2
 * @source FED-STD-H28/2B (second-hand): share of 0.5 implied by its rule for the engaged length
 */
export function stripMargin(
  load: number | null,
  areas: StripAreas,
  studTensile: number | null,
  nutTensile: number | null,
  shearShare: number | null,
): Outcome<StripMargin> {
  return MARGIN({ load, stud: studTensile, nut: nutTensile, share: shearShare }, areas);
}

const MARGIN = relation(
  {
    load: rules.positive('F', 'bolt load, N', 'choose a target or enter the measured load'),
    stud: rules.positive('Rm', 'tensile strength of the stud, Pa', 'take it from the grade'),
    nut: rules.positive('Rm', 'tensile strength of the nut, Pa', 'take it from the grade of the nut'),
    share: rules.within(
      'c',
      'shear strength over tensile strength',
      [0.01, 1],
      'state the share and its source',
    ),
  },
  (v, areas: StripAreas): StripMargin => {
    const studLoad = v.share * v.stud * areas.external;
    const nutLoad = v.share * v.nut * areas.internal;
    return {
      studLoad,
      nutLoad,
      weaker: studLoad <= nutLoad ? 'stud thread' : 'nut thread',
      margin: Math.min(studLoad, nutLoad) / v.load,
      basis: `${areas.basis}; shear strength ${v.share} of tensile strength`,
    };
  },
);

/**
 * Proof load of a nut from its proof stress.
 *
 * Equation: Fp = Sp·As, As the tensile stress area of the mating thread.
 * @param proofStress Sp, Pa, above 0
 * @param thread thread of the stud
 * @returns Fp, N
 * @example nutProofLoad(1205e6, unifiedThread(0.875, 9)).value // 359e3 N
 * @source ISO 898-2 and ASTM A194, definition of proof load (second-hand)
 */
export function nutProofLoad(
  proofStress: number | null,
  thread: Pick<Thread, 'tensileArea'>,
): Outcome<number> {
  return PROOF_LOAD({ stress: proofStress }, thread);
}

const PROOF_LOAD = relation(
  { stress: rules.positive('Sp', 'proof stress of the nut, Pa', 'take it from the grade of the nut') },
  (v, thread: Pick<Thread, 'tensileArea'>) => v.stress * thread.tensileArea,
);
