import * as z from 'zod';
import { words } from './evidence-fields.ts';
import { enteredAs } from './values.ts';

const RATE = { min: 0, max: 1e6 };

/** Stated as throughput, mass, volume, mass per length of gasket or share in air; the unit says which. */
export const leakRate = enteredAs({
  leakage: RATE,
  massFlow: RATE,
  volumeFlow: RATE,
  specificLeakage: RATE,
  concentration: RATE,
})
  .nullable()
  .default(null);

/** What a leak is put down to. */
export const leakCause = z.enum([
  'load low at assembly',
  'load uneven',
  'load lost',
  'load too high or gasket crushed',
  'wrong gasket',
  'damaged or reused gasket',
  'gasket off centre',
  'face damage or finish',
  'misalignment or pipe load',
  'wrong bolt material or size',
  'bolt corroded, yielded or mixed',
  'lubricant wrong or missing',
  'washer or nut face',
  'order or passes incomplete',
  'tool out of tolerance',
  'setting error',
  'instruction error',
  'thermal transient or shock',
  'overpressure or break of specification',
  'vibration',
  'corrosion or erosion',
  'not reinstated or left loose',
  'unknown',
]);

/** How a cause is known. */
export const evidenceLevel = z.enum(['seen', 'measured', 'inferred']);

/** Several causes may stand together. Empty: nothing said yet; 'unknown' says that it was looked into. */
export const causes = z
  .array(z.strictObject({ cause: leakCause, level: evidenceLevel, why: words(300) }))
  .max(leakCause.options.length)
  .default([])
  .superRefine((rows, context) => {
    rows.forEach(({ cause }, index) => {
      if (rows.findIndex((other) => other.cause === cause) === index) return;
      context.addIssue({ code: 'custom', path: [index, 'cause'], message: 'each cause once' });
    });
  });
