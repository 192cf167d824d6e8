import * as z from 'zod';
import { boltNumber, words } from './evidence-fields.ts';
import { entered, id } from './values.ts';

/** Bolt loads that were measured, bolt by bolt, and with what. */
export const loadMeasurement = z.strictObject({
  method: z.enum(['elongation', 'ultrasonic', 'load-indicating', 'other']),
  /** Instrument of the register, or its number where it is not kept there. */
  toolId: id.nullable().default(null),
  instrument: words(120),
  readings: z
    .array(z.strictObject({ bolt: boltNumber, load: entered('force', { min: 0, max: 2e7 }) }))
    .min(1, 'at least one bolt')
    .max(400),
});
