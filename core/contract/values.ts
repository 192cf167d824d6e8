import * as z from 'zod';
import { enter } from '../units/entered.ts';
import { fromSI, type QuantityKind, UNITS, type Unit, unitsOf } from '../units/units.ts';

// The window's content policy forbids eval; zod's compiled parsers need it.
z.config({ jitless: true });

export const id = z.uuid('one that is on the register');

/** Required text, trimmed; `max` counts characters. */
export const text = (max: number) => z.string().trim().min(1, 'needed').max(max, `at most ${max} characters`);
export const optionalText = (max: number) => z.string().trim().max(max, `at most ${max} characters`);

/** A calendar date as written on a certificate or plan; it has no time zone until a site gives it one. */
export const date = z.iso.date('a date as YYYY-MM-DD');

/** A moment with its offset, e.g. 2026-03-16T07:42:00+01:00. */
export const instant = z.iso.datetime({
  offset: true,
  error: 'a moment as YYYY-MM-DDThh:mm:ss with its offset',
});

export interface Range {
  readonly min?: number;
  readonly max?: number;
}

/**
 * A typed quantity. The caller sends text and unit; what is stored also carries the SI number, always recomputed
 * here so that the two can't disagree. `range` is in SI.
 */
export function entered(quantity: QuantityKind, range: Range = {}) {
  return enteredAs({ [quantity]: range });
}

/** As `entered`, where a thing is stated as one of several quantities, as a leak's rate is; each has its own range. */
export function enteredAs(ranges: Readonly<Partial<Record<QuantityKind, Range>>>) {
  const units = (Object.keys(ranges) as QuantityKind[]).flatMap((quantity) => unitsOf(quantity));
  return z
    .strictObject({
      text: z.string().max(40),
      unit: z.enum(units as [Unit, ...Unit[]]),
      si: z.number().optional(),
    })
    .transform((input, context) => {
      const value = enter(input.text, input.unit);
      if (value === null) {
        context.addIssue({
          code: 'custom',
          message: `"${input.text}" is not a number; write it like 12.5 or 1-7/16, with a point as the decimal sign`,
        });
        return z.NEVER;
      }
      const range = ranges[UNITS[input.unit].quantity] ?? {};
      const outside =
        (range.min !== undefined && value.si < range.min) ||
        (range.max !== undefined && value.si > range.max);
      if (outside) {
        context.addIssue({
          code: 'custom',
          message: `${`${input.text} ${UNITS[input.unit].label}`.trim()}: allowed ${allowed(range, input.unit)}`,
        });
        return z.NEVER;
      }
      return value;
    });
}

function allowed(range: Range, unit: Unit): string {
  const show = (si: number) => `${Number(fromSI(si, unit).toPrecision(4))} ${UNITS[unit].label}`.trim();
  if (range.min !== undefined && range.max !== undefined) return `${show(range.min)} to ${show(range.max)}`;
  if (range.min !== undefined) return `at least ${show(range.min)}`;
  return `at most ${show(range.max ?? 0)}`;
}

export const page = { page: z.int().min(1).max(1_000_000), pageSize: z.int().min(1).max(200) };

/** Every write carries one; a retry with the same key and input answers what was recorded the first time. */
export const idempotencyKey = z.uuid();
