import * as z from 'zod';

/** Something in the points that can't be right, or can be and has to be confirmed. */
export const entryDoubt = z.strictObject({
  /** Name under which it is confirmed in `confirmed` of the certificate. */
  code: z.enum([
    'not a number',
    'too few pressures',
    'no rising line',
    'dated in the future',
    'points out of order',
    'equal pressures',
    'torque in another unit',
    'far from the line',
  ]),
  /** True refuses; false is recorded once it is confirmed. */
  refuses: z.boolean(),
  /** Position of the point, from 0; null when it is about the whole certificate. */
  point: z.int().nullable(),
  /** Points it is about. */
  series: z.enum(['measured', 'as found']),
  text: z.string(),
});
export type EntryDoubt = z.infer<typeof entryDoubt>;

const verdict = z.enum(['accepted', 'rejected', 'not sure', 'not known']);

/** What a certificate's points say, worked out anew each time. N·m and Pa, fractions of torque. */
export const certificateAnalysis = z.strictObject({
  doubts: z.array(entryDoubt),
  /** Whether the points' own uncertainties weighted the fit. */
  weighted: z.boolean(),
  correlation: z.number().nullable(),
  /** Up against down at equal pressures; null without both directions. */
  hysteresis: z.strictObject({ largest: z.number(), relative: z.number(), pressure: z.number() }).nullable(),
  /** Point that lies farthest from the line through all the others. */
  leaveOneOut: z
    .strictObject({
      point: z.int(),
      pressure: z.number(),
      residual: z.number(),
      studentised: z.number(),
      critical: z.number(),
      outlying: z.boolean(),
    })
    .nullable(),
  /** Against the certificate's limit and decision rule; null where it states none. */
  asLeft: z.strictObject({ verdict, worst: z.number().nullable(), at: z.number().nullable() }).nullable(),
  asFound: z.strictObject({ verdict, worst: z.number().nullable(), at: z.number().nullable() }).nullable(),
  /** Uncertainty of one setting at each certified pressure, fraction of torque, k = 2. */
  settingUncertainty: z.array(z.strictObject({ pressure: z.number(), expanded: z.number().nullable() })),
});
export type CertificateAnalysis = z.infer<typeof certificateAnalysis>;
