import type { Criticality } from '../contract/assembly.ts';
import { DOUBTS, type DoubtName, doubtFactor } from './doubts.ts';
import { type GroupRate, groupRate, leakProbability, type Shown } from './rate.ts';

/** What is known of a joint when joints to be checked are chosen. */
export interface Candidate extends Shown {
  readonly id: string;
  /** Null while nobody has assessed it. */
  readonly class: Criticality | null;
  readonly doubts: readonly DoubtName[];
  /** A leak of it is open: it counts for the rate of its class, and is repaired, not checked. */
  readonly leaksNow: boolean;
}

/** What the person who asks puts in; none of it is on the register. */
export interface CheckTerms {
  /** Time the check is to cover, years, above 0. */
  readonly years: number;
  /** Weight of a leak by class, on one scale of the site's. */
  readonly weights: Readonly<Record<Criticality, number>>;
  /** Share of leaks to come that a check would find and have put right, 0 to 1. */
  readonly effect: number;
  /** What one check costs on the same scale. */
  readonly cost: number;
}

export interface CheckWorth {
  readonly id: string;
  /** Class it is weighed by: without an assessment the most demanding. */
  readonly weighedAs: Criticality;
  readonly factor: number;
  /** Probability of a leak within the time if nobody checks; null while too little is on record. */
  readonly probability: number | null;
  readonly worth: number | null;
  readonly reasons: readonly string[];
}

export interface VerifyFirst {
  /** Worth most first; while too little is on record, the most doubtful of the heaviest class first. */
  readonly rows: readonly CheckWorth[];
  /** Rate of each class with enough joint-years; null stands for all joints, for the classes without. */
  readonly rates: readonly ({ readonly class: Criticality | null } & GroupRate)[];
}

/**
 * Expected worth of checking a joint.
 *
 * Equation: V = P·e·C − c.
 * @param probability of a leak within the time, 0 to 1
 * @param weight C of a leak, in the unit of the site's scale, at least 0
 * @param terms e, the share of leaks a check prevents, and c, the cost of a check
 * @returns worth on the site's scale; below 0 the check costs more than it saves
 * @example worthOfCheck(0.1, 10, { effect: 0.5, cost: 0.2 }) // 0.3
 * @source expected value of an action under uncertainty: H. Raiffa, R. Schlaifer, Applied Statistical Decision Theory,
 * 1961 (from memory)
 */
export function worthOfCheck(
  probability: number,
  weight: number,
  { effect, cost }: Pick<CheckTerms, 'effect' | 'cost'>,
): number {
  return probability * effect * weight - cost;
}

const CLASSES: readonly Criticality[] = ['critical', 'intermediate', 'mild'];

/**
 * Joints in the order in which a check is worth most, each with why. Joints of a class share a rate, or that of all
 * joints where their class has too few years; how far one departs from it is learned from its own leaks, and what is
 * known of its present assembly multiplies it.
 *
 * Equation: V = P·e·C − c, P by the joint's class, record and doubts.
 * @param candidates joints; one that leaks now counts for the rates and is not on the list
 * @param terms what the person who asks puts in
 * @returns order with the rates behind it
 * @example verifyFirst([{ id: 'a', class: 'mild', leaks: 1, years: 10, doubts: [], leaksNow: false }], { years: 1, weights: { mild: 1,
 * intermediate: 3, critical: 10 }, effect: 0.5, cost: 0 }).rows[0].probability // 0.0952
 * @source `groupRate`, `leakProbability`, `doubtFactor` and `worthOfCheck`
 */
export function verifyFirst(candidates: readonly Candidate[], terms: CheckTerms): VerifyFirst {
  const byClass = CLASSES.flatMap((each) =>
    rated(
      each,
      candidates.filter((candidate) => weighedAs(candidate) === each),
    ),
  );
  const all = rated(null, candidates);
  const used = new Set<VerifyFirst['rates'][number]>();
  const sound = candidates.filter(({ leaksNow }) => !leaksNow);
  const rows = sound.map((candidate) => {
    const rate = byClass.find((each) => each.class === weighedAs(candidate)) ?? all[0];
    if (rate !== undefined) used.add(rate);
    return worthOf(candidate, rate, terms);
  });
  return {
    rows: rows.toSorted(
      (a, b) => (b.worth ?? 0) - (a.worth ?? 0) || doubtfulness(b, terms) - doubtfulness(a, terms),
    ),
    rates: [...byClass, ...all].filter((rate) => used.has(rate)),
  };
}

function rated(name: Criticality | null, candidates: readonly Candidate[]): VerifyFirst['rates'][number][] {
  const rate = groupRate(candidates);
  return rate === null ? [] : [{ class: name, ...rate }];
}

const weighedAs = (candidate: Candidate): Criticality => candidate.class ?? 'critical';

const doubtfulness = ({ factor, weighedAs: held }: CheckWorth, { weights }: CheckTerms) =>
  factor * weights[held];

function worthOf(candidate: Candidate, rate: GroupRate | undefined, terms: CheckTerms): CheckWorth {
  const factor = doubtFactor(candidate.doubts);
  const probability = rate === undefined ? null : leakProbability(rate, candidate, terms.years, factor);
  const held = weighedAs(candidate);
  return {
    id: candidate.id,
    weighedAs: held,
    factor,
    probability,
    worth: probability === null ? null : worthOfCheck(probability, terms.weights[held], terms),
    reasons: reasonsOf(candidate),
  };
}

function reasonsOf({ leaks, class: given, doubts }: Candidate): string[] {
  return [
    ...(leaks === 0 ? [] : [`it has leaked ${leaks === 1 ? 'once' : `${leaks} times`}`]),
    ...doubts.map((doubt) => DOUBTS[doubt].words),
    ...(given === null ? ['nobody has assessed it: weighed as critical'] : []),
  ];
}
