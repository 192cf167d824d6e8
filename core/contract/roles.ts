import * as z from 'zod';

/** What a person may do follows from these; what each is for stands in core/access/roles.ts. */
export const role = z.enum(['planner', 'keeper', 'engineer', 'technician', 'administrator']);
export type Role = z.infer<typeof role>;

/** How a person's competence stands on a day. "Not known" is never "qualified". */
export const competenceState = z.enum(['qualified', 'not qualified', 'expired', 'not known']);
export type CompetenceState = z.infer<typeof competenceState>;
