import * as z from 'zod';
import { toolData } from './tool.ts';
import { date, id, instant, optionalText, text } from './values.ts';

export const toolStatus = toolData.shape.status;
export type ToolStatus = z.infer<typeof toolStatus>;

/** What happens to a tool between two jobs. Which step leads from which status stands in core/tools/custody.ts. */
export const custodyStep = z.enum([
  'issue',
  'return',
  'send to the laboratory',
  'take back from the laboratory',
  'quarantine',
  'release from quarantine',
  'scrap',
]);
export type CustodyStep = z.infer<typeof custodyStep>;

export const condition = z.enum(['good', 'to be looked at', 'damaged']);

export const moveData = z.strictObject({
  toolIds: z.array(id).min(1, 'at least one tool').max(40, 'at most 40 tools at once'),
  step: custodyStep,
  happenedAt: instant,
  /** Who hands over or decides. */
  personId: id,
  /** Who takes it; needed to issue. */
  holderId: id.nullable(),
  /** Needed on return. */
  condition: condition.nullable(),
  place: optionalText(120),
  /** Job, order or laboratory. */
  reference: optionalText(120),
  /** Kit it goes out with; null without one. */
  kitId: id.nullable().default(null),
  /** Why; needed for quarantine, release and scrap. */
  reason: optionalText(500),
});
export type MoveInput = z.input<typeof moveData>;
export type MoveData = z.output<typeof moveData>;

export const moveRow = z.strictObject({
  id,
  toolId: id,
  number: z.string(),
  step: custodyStep,
  from: toolStatus,
  to: toolStatus,
  happenedAt: instant,
  person: z.string(),
  holder: z.string().nullable(),
  condition: condition.nullable(),
  place: z.string(),
  reference: z.string(),
  reason: z.string(),
});
export type MoveRow = z.infer<typeof moveRow>;

/** Tools put aside for a job, and handed out together. */
export const kitData = z.strictObject({
  name: text(120),
  /** Job or order it is for. */
  reference: optionalText(120),
  jointIds: z.array(id).max(200).default([]),
  from: date,
  to: date,
  toolIds: z.array(id).max(40, 'at most 40 tools'),
  remarks: optionalText(1000),
  /** No longer reserved; tools of it are free again. */
  closed: z.boolean().default(false),
});
export type KitInput = z.input<typeof kitData>;
export type KitData = z.output<typeof kitData>;

/** Another kit that holds a tool of this one on the same days. */
const clash = z.strictObject({ number: z.string(), kit: z.string(), from: date, to: date });

export const kitRow = z.strictObject({
  id,
  version: z.int(),
  data: z.custom<KitData>((value) => typeof value === 'object' && value !== null),
  tools: z.array(
    z.strictObject({
      id,
      number: z.string(),
      class: z.string(),
      ratings: z.string(),
      status: toolStatus,
      holder: z.string().nullable(),
      place: z.string(),
      /** What is due before the kit's last day, in words. */
      due: z.array(z.string()),
    }),
  ),
  joints: z.array(z.strictObject({ id, tag: z.string() })),
  clashes: z.array(clash),
});
export type KitRow = z.infer<typeof kitRow>;
