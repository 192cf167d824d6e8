import { type InputGap, type Look, type Outcome, relation, rules } from '../findings/outcome.ts';
import { oncePerName } from '../reference/once-per.ts';

/** A clamped part or the stud, with the change of its own temperature since tightening. */
export interface HeatedPart {
  readonly name: string;
  /** Length along the stud, m. */
  readonly length: number | null;
  /** Mean coefficient of expansion between the two temperatures α, 1/K. */
  readonly expansion: number | null;
  /** ΔT since tightening, K. */
  readonly rise: number | null;
}

/** Stiffnesses per bolt, N/m, cold and hot. */
export interface JointStiffness {
  /** kb */
  readonly boltCold: number | null;
  /** kb at temperature; take the cold one when the modulus hot is not known, and say so. */
  readonly boltHot: number | null;
  /** kj of the clamped parts and gasket per bolt; null gives only the bound of a rigid joint. */
  readonly joint: number | null;
}

/** Bolt load hot. */
export interface HotLoad {
  /** Growth of the clamped parts beyond the stud's Δ, m; negative when the stud grows more. */
  readonly difference: number;
  /** ΔF by the stiffnesses, N; null when the joint's stiffness is not known. */
  readonly change: number | null;
  /** ΔF of a joint that does not yield at all, N: no change can be larger. */
  readonly bound: number;
  /** Load hot, N; never below zero. Null when the joint's stiffness is not known. */
  readonly hotLoad: number | null;
  /** Least and most load hot between no stiffness and a rigid joint, N. */
  readonly range: readonly [number, number];
  /** True when the load can vanish within the range. */
  readonly mayVanish: boolean;
  /** What would narrow the range to one value. */
  readonly narrows: readonly InputGap[];
}

/**
 * Change of the bolt load when stud and clamped parts grow by different amounts.
 *
 * Equation: Δ = Σ αi·Li·ΔTi − αb·Lb·ΔTb; Fhot = (F·(1/kb + 1/kj) + Δ)/(1/kb,hot + 1/kj); ΔF = Fhot − F; bound for a
 * rigid joint (1/kj = 0): Fhot = (F/kb + Δ)·kb,hot.
 * @param cold bolt load at assembly F, N, at least 0
 * @param stud the stud between the nuts
 * @param clamped every clamped part between the nuts, gasket included
 * @param stiffness kb cold and hot, kj
 * @returns hot load with its bound; the range alone when kj is not known
 * @example hotLoad(100e3, { name: 'stud', length: 0.1, expansion: 12e-6, rise: 100 }, [{ name: 'flanges', length: 0.1,
 * expansion: 12e-6, rise: 150 }], { boltCold: 5e8, boltHot: 5e8, joint: 2e9 }).value?.hotLoad // 124e3 N
 * @source compatibility of lengths of members in series; J. H. Bickford, Introduction to the Design and Behavior of
 * Bolted Joints, 4th ed., chapter 11 (from memory)
 */
export function hotLoad(
  cold: number | null,
  stud: HeatedPart,
  clamped: readonly HeatedPart[],
  stiffness: JointStiffness,
): Outcome<HotLoad> {
  const narrowing = JOINT({ joint: stiffness.joint }).missing;
  const wrong = narrowing.filter((gap) => gap.reason !== 'missing');
  if (wrong.length > 0) return { value: null, missing: wrong };
  return HOT_LOAD(
    { cold, kb: stiffness.boltCold, kbHot: stiffness.boltHot },
    { stud, clamped, joint: stiffness.joint, narrowing },
  );
}

const JOINT = relation(
  {
    joint: rules.positive(
      'kj',
      'stiffness of the clamped parts per bolt, N/m',
      'have it calculated for this joint',
    ),
  },
  (v) => v.joint,
);

interface Heated {
  readonly stud: HeatedPart;
  readonly clamped: readonly HeatedPart[];
  readonly joint: number | null;
  readonly narrowing: readonly InputGap[];
}

const HOT_LOAD = relation(
  {
    cold: rules.within('F', 'bolt load at assembly, N', [0, 1e8], 'enter the assembly load'),
    kb: rules.positive('kb', 'stiffness of one bolt, N/m', 'enter grip, thread and modulus'),
    kbHot: rules.positive(
      'kb,hot',
      'stiffness of one bolt at temperature, N/m',
      'enter the modulus at temperature',
    ),
  },
  (v, { stud, clamped, joint, narrowing }: Heated): HotLoad => {
    const difference = clamped.reduce((sum, part) => sum + growth(part), 0) - growth(stud);
    const rigid = (v.cold / v.kb + difference) * v.kbHot;
    const elastic =
      joint === null ? null : (v.cold * (1 / v.kb + 1 / joint) + difference) / (1 / v.kbHot + 1 / joint);
    // A joint without any stiffness of its own keeps its load; every real one lies between it and the rigid one.
    const ends = [v.cold, Math.max(0, rigid)] as const;
    return {
      difference,
      change: elastic === null ? null : Math.max(0, elastic) - v.cold,
      bound: rigid - v.cold,
      hotLoad: elastic === null ? null : Math.max(0, elastic),
      range: [Math.min(...ends), Math.max(...ends)] as const,
      mayVanish: (elastic ?? rigid) <= 0,
      narrows: narrowing,
    };
  },
  ({ stud, clamped }, look) => {
    lookAtPart(stud, look);
    for (const part of clamped) lookAtPart(part, look);
  },
);

function growth({ length, expansion, rise }: HeatedPart): number {
  return (length ?? 0) * (expansion ?? 0) * (rise ?? 0);
}

function lookAtPart({ name, length, expansion, rise }: HeatedPart, look: Look): void {
  const part = RULES_OF_PART(name);
  look(part.length, length);
  look(part.expansion, expansion);
  look(part.rise, rise);
}

const RULES_OF_PART = oncePerName((name) => ({
  length: rules.positive('L', `length of ${name}, m`, `measure ${name}`),
  expansion: rules.within(
    'α',
    `coefficient of expansion of ${name}, 1/K`,
    [-1e-4, 1e-3],
    `take it from the table of the material of ${name}, up to the temperature meant`,
  ),
  rise: rules.within(
    'ΔT',
    `change of temperature of ${name}, K`,
    [-300, 1500],
    `measure the metal temperature of ${name}; the fluid's is not the same`,
  ),
}));
