import * as z from 'zod';
import { FINDING_CODES } from '../findings/codes.ts';
import { role } from './roles.ts';
import { method } from './setting.ts';
import { date, id, instant, optionalText, text } from './values.ts';

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

/** Fields that carry a secret, in whatever request: their values are shown, logged and kept nowhere. */
export const SECRET_FIELDS: readonly string[] = ['secret', 'currentSecret'];

/** Whoever begins sign-in on a register: somebody on it already, or a new name. */
export const firstAdministrator = z
  .strictObject({ personId: id.nullable(), name: optionalText(120).default(''), secret: newSecret })
  .superRefine(({ personId, name }, context) => {
    if (personId !== null || name !== '') return;
    context.addIssue({
      code: 'custom',
      path: ['name'],
      message: 'needed for somebody who is not on the register yet',
    });
  });
export type FirstAdministrator = z.output<typeof firstAdministrator>;

export const namedAdministrator = z.strictObject({ name: text(120), secret: newSecret });

export const signInInput = z.strictObject({ name: text(120), secret: typedSecret });

export const secretChange = z.strictObject({ currentSecret: typedSecret, secret: newSecret });

const signedInPerson = z.strictObject({
  personId: id,
  name: z.string(),
  roles: z.array(role),
  /** True for a secret that an administrator gave: nothing else is answered until it is changed. */
  secretToBeChanged: z.boolean(),
});
export type SignedInPerson = z.infer<typeof signedInPerson>;

/** The token travels beside every request from now on; the service keeps its hash, in memory. */
export const signedIn = z.strictObject({ token: z.string(), person: signedInPerson });
export type SignedIn = z.infer<typeof signedIn>;

export const signInMode = z.enum(['none', 'required']);

export const accessState = z.strictObject({
  signIn: signInMode,
  /** Null: nobody, at the window that asks. */
  person: signedInPerson.nullable(),
  /** Without a request for so long, a person is signed out. */
  idleMinutes: z.int(),
});
export type AccessState = z.infer<typeof accessState>;

/** Somebody signed in now; of several windows the one they asked at last. */
export const presentRow = z.strictObject({
  personId: id,
  since: instant,
  lastAsked: instant,
  windows: z.int().min(1),
});
export type PresentRow = z.infer<typeof presentRow>;

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

/** A refusal that somebody entitled to it has set aside, with the reason. */
export const override = z.strictObject({ code: z.enum(FINDING_CODES), reason: text(500) });
export type Override = z.output<typeof override>;

export const competenceRow = z.strictObject({
  id,
  version: z.int(),
  person: z.string(),
  data: z.custom<CompetenceData>((value) => typeof value === 'object' && value !== null),
  /** By the paper, and by the scheme's own rule; null when neither says. */
  lastGoodDay: date.nullable(),
  /** Today at the site, for the methods the paper names. */
  state: z.enum(['in date', 'expired', 'not yet', 'withdrawn', 'not known']),
});
export type CompetenceRow = z.infer<typeof competenceRow>;
