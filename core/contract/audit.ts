import * as z from 'zod';
import { date, id, instant, page } from './values.ts';

/** What an auditor asks for, apart from the work itself. */
export const auditGroup = z.enum([
  'refusals set aside',
  'refused',
  'sign-in',
  'people and roles',
  'reference data',
  'site rules',
  'register data',
  'signatures',
]);
export type AuditGroup = z.infer<typeof auditGroup>;

/** Days are the site's. */
export const auditListInput = z
  .strictObject({
    group: auditGroup.nullable(),
    personId: id.nullable(),
    from: date.nullable(),
    to: date.nullable(),
    ...page,
  })
  .superRefine(({ from, to }, context) => {
    if (from === null || to === null || from <= to) return;
    context.addIssue({ code: 'custom', path: ['to'], message: 'no earlier than the first day' });
  });

export const auditRow = z.strictObject({
  id,
  group: auditGroup,
  /** Moment of recording. */
  at: instant,
  who: z.string(),
  what: z.string(),
  detail: z.string(),
  /** Record of the log it is; null for a refusal, which is none. */
  eventId: id.nullable(),
  jointId: id.nullable(),
});
export type AuditRow = z.infer<typeof auditRow>;
