import type { LeakRow } from '../../../core/contract/leak-log.ts';
import type { ParsedInput } from '../../../core/contract/requests.ts';
import { cyclesSince } from '../../../core/leak/cycles.ts';
import { FACTOR_BASIS } from '../../../core/leak/doubts.ts';
import { leakSentence } from '../../../core/leak/leak-words.ts';
import { type CheckTerms, verifyFirst } from '../../../core/leak/verify-first.ts';
import type { ReadContext } from '../context.ts';
import { notFound } from '../failure.ts';
import { peopleOf } from '../repositories/history.ts';
import { findJoint } from '../repositories/joint.ts';
import {
  cycleCounts,
  type LeakOnRegister,
  leakRows,
  leaks,
  madeUpAt,
  repeatedLeakers,
} from '../repositories/leak.ts';
import { candidates } from '../repositories/verify-candidates.ts';
import type { Read } from './handler.ts';

const DAY_S = 86_400;

/** The leak log: what its filter lets through, a page of it, and what all of it comes to. */
export const listLeaks: Read<'leak.list'> = async (context, input) => {
  const { db, clock } = context;
  const now = clock();
  const all = await leaks(db, null);
  const repeated = await repeatedLeakers(db, all);
  const found = all.filter((leak) => letThrough(leak, input, repeated, now));
  const start = (input.page - 1) * input.pageSize;
  return {
    rows: await leakRows(db, found.slice(start, start + input.pageSize), { repeated, now }),
    total: found.length,
    finding: findingOf(found, repeated, now),
    causes: causesOf(found),
  };
};

function letThrough(
  leak: LeakOnRegister,
  { state, unitId, phase, cause, repeatedOnly, longerThan }: ParsedInput<'leak.list'>,
  repeated: ReadonlySet<string>,
  now: Date,
): boolean {
  return (
    (state === null || (state === 'open') === (leak.closedBy === null)) &&
    (unitId === null || leak.unitId === unitId) &&
    (phase === null || leak.phase === phase) &&
    (cause === null || leak.causes.some((said) => said.cause === cause)) &&
    (!repeatedOnly || repeated.has(leak.jointId)) &&
    (longerThan === null || openFor(leak, now) > longerThan * DAY_S)
  );
}

function openFor({ happenedAt, closedAt }: LeakOnRegister, now: Date): number {
  const until = closedAt === null ? now.getTime() : Date.parse(closedAt);
  return Math.max(0, (until - Date.parse(happenedAt)) / 1000);
}

function findingOf(found: readonly LeakOnRegister[], repeated: ReadonlySet<string>, now: Date): string {
  const joints = new Set(found.map(({ jointId }) => jointId));
  const open = found.filter(({ closedBy }) => closedBy === null);
  return leakSentence({
    leaks: found.length,
    joints: joints.size,
    open: open.length,
    longest: open.length === 0 ? null : Math.max(...open.map((leak) => openFor(leak, now))),
    repeaters: [...joints].filter((jointId) => repeated.has(jointId)).length,
  });
}

function causesOf(found: readonly LeakOnRegister[]) {
  const counts = new Map<LeakRow['firstCauses'][number]['cause'], number>();
  for (const { causes } of found) {
    for (const { cause } of causes) counts.set(cause, (counts.get(cause) ?? 0) + 1);
  }
  return [...counts].map(([cause, count]) => ({ cause, count })).toSorted((a, b) => b.count - a.count);
}

/** Leaks of one joint, and the thermal cycles it went through since it was made up. */
export const jointLeaksOf: Read<'joint.leaks'> = async ({ db, clock }, { id }) => {
  if ((await findJoint(db, id)) === null) throw notFound('joint', 'id', id);
  const now = clock();
  const own = await leaks(db, id);
  const repeated = await repeatedLeakers(db, own);
  const counts = await cycleCounts(db, id);
  const made = await madeUpAt(db, id);
  const people = await peopleOf(
    db,
    counts.map(({ eventId }) => eventId),
  );
  return {
    rows: await leakRows(db, own, { repeated, now }),
    finding: findingOf(own, repeated, now),
    madeUpAt: made?.at ?? null,
    sinceMakeUp: made === null ? null : cyclesSince(counts, made.utc, now.toISOString()),
    counts: counts.map(({ eventId, startsOn, endsOn, cycles, basis }) => ({
      eventId,
      from: startsOn,
      until: endsOn,
      cycles,
      basis,
      by: people.get(eventId)?.join(', ') ?? 'not recorded',
    })),
  };
};

const YEAR_DAYS = 365.25;

/** Joints in the order in which a check is worth most; a joint that leaks now is repaired, not checked. */
export const verifyWhichFirst: Read<'leak.verifyFirst'> = async (context, input) => {
  const found = await candidatesFor(context, input);
  const terms: CheckTerms = {
    years: input.days / YEAR_DAYS,
    weights: input.weights,
    effect: input.effect,
    cost: input.cost,
  };
  const { rows, rates } = verifyFirst(found, terms);
  const byId = new Map(found.map((candidate) => [candidate.id, candidate]));
  const start = (input.page - 1) * input.pageSize;
  return {
    rows: rows.slice(start, start + input.pageSize).flatMap(({ id, reasons, ...row }) => {
      const joint = byId.get(id);
      if (joint === undefined) return [];
      const { tag, unitName, flange, leaks: leaked, years } = joint;
      return [
        {
          jointId: id,
          tag,
          unitName,
          flange,
          class: joint.class,
          leaks: leaked,
          years,
          ...row,
          reasons: [...reasons],
        },
      ];
    }),
    total: rows.length,
    worthwhile: rates.length === 0 ? null : rows.filter(({ worth }) => (worth ?? 0) > 0).length,
    leaking: found.length - rows.length,
    rates: rates.map(({ spread, ...rate }) => ({
      ...rate,
      variation: spread === null ? null : 1 / Math.sqrt(spread.shape),
    })),
    basis: [...BASIS],
  };
};

const candidatesFor = (
  { db, clock }: ReadContext,
  { unitId, cyclesLimit }: ParsedInput<'leak.verifyFirst'>,
) => candidates(db, { unitId, cyclesLimit, now: clock() });

const BASIS = [
  'Worth = probability of a leak × share a check would prevent × weight of the class − cost of a check.',
  'Probability: leaks of joints of the class on this register, and the joint’s own, by an empirical Bayes estimate of a Poisson rate (Marshall 1991; Gelman and others, Bayesian Data Analysis, from memory); what is doubtful about the present assembly multiplies it.',
  FACTOR_BASIS,
  'Years count from the first record of work, or from the day the joint was entered; leaks count from then on. With fewer than 10 joint-years nothing is said of probability, and the joints stand by doubt and class alone. A leak that nobody recorded makes a joint look better than it is.',
];
