import * as z from 'zod';
import { method } from './setting.ts';
import { date, id, optionalText, text } from './values.ts';

/** What a person may do follows from these; what each is for stands in core/access/roles.ts. */
export const role = z.enum(['planner', 'keeper', 'engineer', 'technician', 'administrator']);
export type Role = z.infer<typeof role>;

export const personRoles = z
  .array(role)
  .max(role.options.length)
  .superRefine((roles, context) => {
    roles.forEach((one, index) => {
      if (roles.indexOf(one) === index) return;
      context.addIssue({ code: 'custom', path: [index], message: 'each role once' });
    });
  });

/** A secret of one's own choosing. Length is what makes it hard to guess; nothing else is asked of it. */
export const newSecret = z.string().min(12, 'at least 12 characters').max(200, 'at most 200 characters');

/** A secret as typed to be compared; it says nothing about what a secret may look like. */
export const typedSecret = z.string().min(1, 'needed').max(1000, 'at most 1000 characters');

/** What a person has shown they can do, by which paper. */
export const competenceData = z
  .strictObject({
    personId: id,
    /** Standard or scheme the paper is of: "EN 1591-4", the site's own. */
    scheme: text(120),
    level: optionalText(80).default(''),
    /** Empty: the paper names none. */
    methods: z.array(method).max(method.options.length).default([]),
    /** Types of joint it speaks of, in its own words. */
    jointTypes: optionalText(300).default(''),
    certificate: optionalText(80).default(''),
    assessor: optionalText(120).default(''),
    issuedOn: date,
    /** Null: the paper states none. */
    validUntil: date.nullable().default(null),
    lastPracticeOn: date.nullable().default(null),
    restrictions: optionalText(300).default(''),
    /** No longer counts, whatever its dates say. */
    withdrawn: z.boolean().default(false),
    remarks: optionalText(1000).default(''),
  })
  .superRefine(({ issuedOn, validUntil }, context) => {
    if (validUntil === null || validUntil >= issuedOn) return;
    context.addIssue({
      code: 'custom',
      path: ['validUntil'],
      message: 'no earlier than the day it was issued',
    });
  });
export type CompetenceInput = z.input<typeof competenceData>;
export type CompetenceData = z.output<typeof competenceData>;

/** How a person's competence stands on a day. "Not known" is never "qualified". */
export const competenceState = z.enum(['qualified', 'not qualified', 'expired', 'not known']);
export type CompetenceState = z.infer<typeof competenceState>;

/** A refusal that somebody entitled to it has set aside, with the reason. */
export const override = z.strictObject({ code: z.string().max(60), reason: text(500) });
export type Override = z.output<typeof override>;
