import * as z from 'zod';
import { namedAdministrator, signInMode } from './access.ts';
import { siteRow } from './site.ts';
import { text } from './values.ts';

/** How the register stands: none yet, open, or open for reading only with the reason. */
export const registerState = z.strictObject({
  state: z.enum(['none', 'open', 'read only', 'failed']),
  /** Named error when it could not be opened or written. */
  problem: z.strictObject({ code: z.string(), message: z.string() }).nullable(),
  folder: z.string(),
  siteName: z.string().nullable(),
  timeZone: z.string().nullable(),
  /** True for the invented demo plant; shown wherever data shows. */
  demo: z.boolean(),
  /** 'none': names in records are claims. */
  signIn: signInMode,
  joints: z.int(),
  tools: z.int(),
  events: z.int(),
  /** Merkle head over the origins' chains. */
  head: z.string().nullable(),
  appVersion: z.string(),
  coreVersion: z.string(),
  /** Today in the site's time zone. */
  today: z.string(),
});
export type RegisterState = z.infer<typeof registerState>;

/** Null: the register works without sign-in until somebody begins it. */
const administrator = namedAdministrator.nullable().default(null);

export const registerCreate = z.discriminatedUnion('content', [
  z.strictObject({ content: z.literal('empty'), siteName: text(120), timeZone: text(60), administrator }),
  z.strictObject({ content: z.literal('demo'), administrator }),
]);

/** Lists a form offers. */
export const referenceChoices = z.strictObject({
  flangeStandards: z.array(
    z.strictObject({
      standard: z.string(),
      sizes: z.array(z.strictObject({ size: z.string(), ratings: z.array(z.string()) })),
    }),
  ),
  threads: z.array(z.string()),
  grades: z.array(z.string()),
  nutSeries: z.array(z.string()),
  passPlans: z.array(
    z.strictObject({
      id: z.string(),
      name: z.string(),
      source: z.string(),
      origin: z.enum(['shipped', 'site']),
      /** A site's plan is used only once somebody approved it; shipped plans need no approval. */
      approved: z.boolean(),
    }),
  ),
  /** Gaskets that the design code's table holds m and y for, as its lookup takes them. */
  gasketTypes: z.array(z.string()),
  /** A class is a range of friction, no value to set a torque by. */
  frictionClasses: z.array(
    z.strictObject({
      name: z.string(),
      range: z.string(),
      lubricants: z.array(z.string()),
      source: z.string(),
    }),
  ),
  /** Rows of the site's own tables, without the retired ones; the site's grades are on `grades` too. */
  siteRows: z.array(siteRow),
});
export type ReferenceChoices = z.infer<typeof referenceChoices>;
