import * as z from 'zod';

/** What a person may do follows from these; what each is for stands in core/access/roles.ts. */
export const role = z.enum(['planner', 'keeper', 'engineer', 'technician', 'administrator']);
export type Role = z.infer<typeof role>;
