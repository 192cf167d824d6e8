import { compute, type Look, type Outcome, positive, relation, rules, within } from '../findings/outcome.ts';
import { oncePerName } from '../reference/once-per.ts';
import { elongation, type StudSection, studStiffness } from './elongation.ts';
import type { Thread } from './thread.ts';

/** Part of an engaged end that stretches as free thread, in nominal diameters. */
export interface EndAllowance {
  readonly diameters: number;
  readonly basis: string;
}

/** One half of a diameter in each nut: the common allowance for a stud nutted at both ends. */
export const HALF_DIAMETER: EndAllowance = {
  diameters: 0.5,
  basis: 'half a diameter in each nut, common practice',
};

/**
 * Sections of a stud that stretch between two nuts, with the allowance for its engaged ends.
 *
 * Equation: Leff = Lgrip + 2·a·d; threaded length at the tensile area, plain shank at its own.
 * @param thread thread of the stud
 * @param grip length between the nuts, m, above 0
 * @param shank plain or reduced length within the grip with its area, m and m²; null for a stud threaded all along
 * @param end part of each engaged end that stretches
 * @returns sections for `elongation` and `studStiffness`
 * @example studSections(thread, 0.083, null, HALF_DIAMETER).value?.[0]?.length // 0.105225 m for 7/8 in
 * @source J. H. Bickford, Introduction to the Design and Behavior of Bolted Joints, 4th ed., chapter 5 (from memory)
 */
export function studSections(
  thread: Pick<Thread, 'diameter' | 'tensileArea'>,
  grip: number | null,
  shank: StudSection | null,
  end: EndAllowance,
): Outcome<readonly StudSection[]> {
  return SECTIONS({ grip, end: end.diameters }, { thread, grip, shank });
}

interface StudOfJoint {
  readonly thread: Pick<Thread, 'diameter' | 'tensileArea'>;
  readonly grip: number | null;
  readonly shank: StudSection | null;
}

const SHANK_AREA = rules.positive('Ashank', 'area of the plain length, m²', 'measure its diameter');

const SECTIONS = relation(
  {
    grip: rules.positive('Lgrip', 'length between the nuts, m', 'measure from nut face to nut face'),
    end: rules.within('a', 'stretching part of an engaged end, in diameters', [0, 2], 'state the allowance'),
  },
  (v, { thread, shank }: StudOfJoint): readonly StudSection[] => {
    const plain = shank?.length ?? 0;
    const threaded = { length: v.grip - plain + 2 * v.end * thread.diameter, area: thread.tensileArea };
    return shank === null || plain === 0 ? [threaded] : [threaded, { length: plain, area: shank.area }];
  },
  ({ thread, grip, shank }, look) => {
    const name = 'plain length of the stud, m, within the grip';
    look(rules.within('Lshank', name, [0, grip ?? 0], 'measure the plain length'), shank?.length ?? 0);
    look(SHANK_AREA, shank?.area ?? thread.tensileArea);
  },
);

/** Stretch of one stud with its stiffness. */
export interface Stretch {
  /** ΔL, m */
  readonly elongation: number;
  /** kb, N/m */
  readonly stiffness: number;
}

/**
 * Stretch of a stud under load, and its stiffness.
 *
 * Equation: ΔL = F·Σ(Li/Ai)/E; kb = E/Σ(Li/Ai).
 * @param load F, N, at least 0
 * @param sections stretching lengths with their areas
 * @param modulus E, Pa, above 0, at the temperature meant
 * @returns ΔL and kb
 * @example stretch(44482, [{ length: 0.127, area: 0.000297 }], 206.8e9).value?.elongation // 92e-6 m
 * @source Hooke's law
 */
export function stretch(
  load: number | null,
  sections: readonly StudSection[],
  modulus: number | null,
): Outcome<Stretch> {
  return STRETCH({ load, modulus }, sections);
}

const MODULUS = rules.positive('E', 'modulus of the stud, Pa', 'take it from the table of the material');

const STRETCH = relation(
  {
    load: rules.within('F', 'bolt load, N', [0, 1e8], 'choose a target or enter the measured load'),
    modulus: MODULUS,
  },
  (v, sections: readonly StudSection[]): Stretch => ({
    elongation: elongation(v.load, sections, v.modulus),
    stiffness: studStiffness(sections, v.modulus),
  }),
  lookAtSections,
);

/**
 * Bolt load from a measured stretch.
 *
 * Equation: F = ΔL·E/Σ(Li/Ai).
 * @param measured ΔL, m, at least 0
 * @param sections stretching lengths with their areas
 * @param modulus E, Pa, above 0
 * @returns F, N
 * @example loadFromStretch(92e-6, [{ length: 0.127, area: 0.000297 }], 206.8e9).value // 44.493e3 N
 * @source Hooke's law
 */
export function loadFromStretch(
  measured: number | null,
  sections: readonly StudSection[],
  modulus: number | null,
): Outcome<number> {
  return LOAD_FROM_STRETCH({ measured, modulus }, sections);
}

const LOAD_FROM_STRETCH = relation(
  {
    measured: rules.within('ΔL', 'measured stretch, m', [0, 0.1], 'measure the length before and after'),
    modulus: MODULUS,
  },
  (v, sections: readonly StudSection[]) => v.measured * studStiffness(sections, v.modulus),
  lookAtSections,
);

/**
 * Part of an outside load that a bolt of a preloaded joint carries.
 *
 * Equation: C = kb/(kb + km).
 * @param bolt kb, N/m, above 0
 * @param members km of the clamped parts per bolt, N/m, above 0
 * @returns C, 0 to 1
 * @example loadFactor(6.5e6, 13.8e6).value // 0.3202
 * @source Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th ed., section 8-7
 */
export function loadFactor(bolt: number | null, members: number | null): Outcome<number> {
  return compute(
    {
      bolt: positive('kb', 'stiffness of one bolt, N/m', bolt, 'enter grip, thread and modulus'),
      members: positive('km', 'stiffness of the clamped parts per bolt, N/m', members, 'have it calculated'),
    },
    (v) => v.bolt / (v.bolt + v.members),
  );
}

/**
 * Bolt load under an outside load, while the parts still touch.
 *
 * Equation: Fb = C·P + Fi.
 * @param preload Fi, N, at least 0
 * @param external P per bolt, N, at least 0
 * @param factor C, 0 to 1
 * @returns Fb, N, or no solution once the parts part: (1 − C)·P above Fi
 * @example loadInService(25000, 6000, 0.32).value // 26920
 * @source Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th ed., equation 8-24
 */
export function loadInService(
  preload: number | null,
  external: number | null,
  factor: number | null,
): Outcome<number> {
  const most = preload === null || factor === null ? 0 : preload / Math.max(1e-12, 1 - factor);
  return compute(
    {
      preload: within('Fi', 'load at assembly, N', preload, [0, 1e8], 'enter the assembly load'),
      external: within(
        'P',
        'outside load per bolt, N; above Fi/(1 − C) the parts have parted',
        external,
        [0, most],
        'enter the end force per bolt',
      ),
      factor: within(
        'C',
        'part of the outside load the bolt carries',
        factor,
        [0, 1],
        'enter the stiffnesses',
      ),
    },
    (v) => v.factor * v.external + v.preload,
  );
}

/**
 * Angle a nut has to turn for an advance along the thread.
 *
 * Equation: φ = 360°·δ/P.
 * @param advance δ, m, at least 0: stretch of the stud and shortening of the parts together
 * @param pitch P, m, above 0
 * @returns φ, degrees
 * @example nutAngle(0.000305816, 0.00254).value // 43.34°
 * @source geometry of a single-start thread
 */
export function nutAngle(advance: number | null, pitch: number | null): Outcome<number> {
  return compute(
    {
      advance: within('δ', 'advance of the nut, m', advance, [0, 0.1], 'compute the stretch'),
      pitch: positive('P', 'pitch, m', pitch, 'choose the thread of the stud'),
    },
    (v) => (360 * v.advance) / v.pitch,
  );
}

/**
 * Load that an advance of the nut brings into bolt and parts.
 *
 * Equation: F = δ/(1/kb + 1/kj).
 * @param advance δ from snug, m, at least 0
 * @param bolt kb, N/m, above 0
 * @param members kj of the clamped parts per bolt, N/m, above 0
 * @returns F, N
 * @example loadByNutAdvance(0.0005, 104.7e6, 128.2e6).value // 28.8e3 N
 * @source compatibility of lengths of members in series
 */
export function loadByNutAdvance(
  advance: number | null,
  bolt: number | null,
  members: number | null,
): Outcome<number> {
  return compute(
    {
      advance: within('δ', 'advance of the nut, m', advance, [0, 0.1], 'measure the turn of the nut'),
      bolt: positive('kb', 'stiffness of one bolt, N/m', bolt, 'enter grip, thread and modulus'),
      members: positive('kj', 'stiffness of the clamped parts per bolt, N/m', members, 'have it calculated'),
    },
    (v) => v.advance / (1 / v.bolt + 1 / v.members),
  );
}

const SECTION_COUNT = rules.within('n', 'number of stretching lengths', [1, 20], 'enter grip and thread');

function lookAtSections(sections: readonly StudSection[], look: Look): void {
  look(SECTION_COUNT, sections.length);
  sections.forEach(({ length, area }, index) => {
    const section = RULES_OF_SECTION(String(index + 1));
    look(section.length, length);
    look(section.area, area);
  });
}

const RULES_OF_SECTION = oncePerName((number) => ({
  length: rules.positive(`L${number}`, 'stretching length, m', 'measure it'),
  area: rules.positive(`A${number}`, 'its area, m²', 'choose the thread or measure it'),
}));
