import * as z from 'zod';
import { limitStanding } from './recall.ts';
import { date, entered, id, instant, optionalText, page, text } from './values.ts';

const stress = (max: number) => entered('stress', { min: 0, max }).nullable().default(null);

/** What is taken otherwise than it was; null leaves it. */
export const replayChange = z
  .strictObject({
    nutFactor: entered('ratio', { min: 0.03, max: 0.8 }).nullable().default(null),
    /** Every nut factor times this: +35 % is 1.35. */
    nutFactorTimes: entered('ratio', { min: 0.2, max: 5 }).nullable().default(null),
    /** The stud that was really in it. */
    thread: text(30).nullable().default(null),
    gasketSeating: stress(5e9),
    gasketOperating: stress(5e9),
    gasketMax: stress(5e9),
    boltStressMax: stress(2e9),
    boltStressMin: stress(2e9),
  })
  .refine(
    (change) => Object.values(change).some((value) => value !== null),
    'change at least one value; nothing is replayed otherwise',
  )
  .refine(
    ({ nutFactor, nutFactorTimes }) => nutFactor === null || nutFactorTimes === null,
    'a nut factor, or what it is multiplied with, not both',
  );
export type ReplayChange = z.output<typeof replayChange>;

export const replayInput = z.strictObject({
  change: replayChange,
  which: z
    .strictObject({
      unitId: id.nullable().default(null),
      jointIds: z.array(id).max(500, 'at most 500 joints').default([]),
      lubricant: optionalText(120).nullable().default(null),
      batchId: id.nullable().default(null),
      from: date.nullable().default(null),
      to: date.nullable().default(null),
      /** Only loads that are still on: the newest tightening of each bolt set, not loosened since. */
      stillOn: z.boolean().default(true),
    })
    .prefault({}),
  ...page,
});
export type ReplayInput = z.input<typeof replayInput>;

const worst = z.enum(['broken', 'not sure', 'kept', 'not known']);

const replayed = z.strictObject({
  nutFactor: z.number().nullable(),
  thread: z.string().nullable(),
  /** N per bolt. */
  load: z.number().nullable(),
  limits: z.array(limitStanding),
  worst,
  basis: z.string(),
});
export type Replayed = z.infer<typeof replayed>;

export const replayRow = z.strictObject({
  eventId: id,
  jointId: id,
  tag: z.string(),
  happenedAt: instant,
  torque: z.number().nullable(),
  before: replayed,
  after: replayed,
  /** A limit that was kept, or not sure, is broken. */
  leaves: z.boolean(),
  words: z.string(),
});
export type ReplayRow = z.infer<typeof replayRow>;

export const replay = z.strictObject({
  finding: z.string(),
  change: z.string(),
  /** Tightenings that were asked for, and of them: leave their band, come back into it, can't be said. */
  looked: z.int(),
  leaves: z.int(),
  comesBack: z.int(),
  notKnown: z.int(),
  /** Those that leave first, then by tag. */
  rows: z.array(replayRow),
  total: z.int(),
});
export type Replay = z.infer<typeof replay>;
