import * as z from 'zod';
import { answer, temperature } from './evidence-fields.ts';
import { id, instant } from './values.ts';

/** Turning nuts again after the last full pass; under pressure it is another, more dangerous work. */
export const retighteningKind = z.enum(['after the dwell', 'during start-up', 'in service, under pressure']);
export type RetighteningKind = z.infer<typeof retighteningKind>;

export const retighteningInput = z.strictObject({
  jointId: id,
  kind: retighteningKind,
  /** Measured on the metal of the stud. */
  boltTemperature: temperature,
  /** Only for work in service; what the register knows itself is not asked. */
  bellowsOrClamp: answer,
  boltsSound: answer,
  pressureReduced: answer,
});

const fact = z.strictObject({
  name: z.string(),
  /** Null: not known. */
  shown: z.string().nullable(),
  source: z.string(),
});

export const retighteningAnswer = z.strictObject({
  kind: retighteningKind,
  /** Each begins "not eligible:". None of them is no permit. */
  reasons: z.array(z.string()),
  /** °C; null for work in service, which has none here. */
  window: z.strictObject({ from: z.number(), to: z.number(), source: z.string() }).nullable(),
  facts: z.array(fact),
  lastFullPass: instant.nullable(),
  /** What an empty list of reasons means. */
  deferral: z.string(),
  cautions: z.array(z.strictObject({ text: z.string(), source: z.string() })),
});
export type RetighteningAnswerView = z.infer<typeof retighteningAnswer>;
