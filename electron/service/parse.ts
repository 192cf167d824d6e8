import { inspect } from 'node:util';
import type * as z from 'zod';
import { SECRET_FIELDS } from '../../core/contract/access.ts';
import type { FieldFault } from '../../core/contract/errors.ts';
import { RequestFailure } from './failure.ts';

const SHOWN = 80;
const SHOWN_DEPTH = 2;

/** Reads an input by its schema or fails naming every field, what stood there and what is allowed. */
export function parseInput<T extends z.ZodType>(schema: T, input: unknown): z.output<T> {
  const parsed = schema.safeParse(input);
  const found = parsed.success
    ? unreadableText(input, [])
    : parsed.error.issues.flatMap((issue) => faultsOf(issue, input));
  const secrets = secretsIn(input);
  const faults = found.map((fault) =>
    secrets.some((secret) => fault.value.includes(secret)) ? { ...fault, value: '' } : fault,
  );
  if (parsed.success && faults.length === 0) return parsed.data;
  const [first] = faults;
  const rest = faults.length > 1 ? ` (and ${faults.length - 1} more)` : '';
  throw new RequestFailure(
    'invalid_input',
    first ? `${first.field}: ${first.allowed}${rest}` : 'The input can not be read',
    faults,
  );
}

function faultsOf(issue: z.core.$ZodIssue, input: unknown): FieldFault[] {
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => ({
      field: fieldName([...issue.path, key]),
      value: shownAt(input, [...issue.path, key]),
      allowed: 'there is no such field',
    }));
  }
  const value = at(input, issue.path);
  return [
    { field: fieldName(issue.path), value: shownAt(input, issue.path), allowed: allowed(issue, value) },
  ];
}

function allowed(issue: z.core.$ZodIssue, value: unknown): string {
  if (value === undefined) return 'needed';
  if (issue.code === 'invalid_value') return `one of: ${issue.values.map(String).join(', ')}`;
  if (issue.code === 'invalid_type') {
    const words = KINDS[issue.expected] ?? issue.expected;
    return value === null || Number.isNaN(value) ? `needed: ${words}` : words;
  }
  return issue.message;
}

/** Kinds of values as a person says them. */
const KINDS: Readonly<Record<string, string>> = {
  number: 'a number',
  int: 'a whole number',
  string: 'text',
  boolean: 'yes or no',
  array: 'a list',
  object: 'a group of values',
};

function fieldName(path: readonly PropertyKey[]): string {
  return path.length === 0 ? 'input' : path.map(String).join('.');
}

function at(input: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      typeof value === 'object' && value !== null ? (value as Record<PropertyKey, unknown>)[key] : undefined,
    input,
  );
}

/** A secret is not answered with, not even to whoever typed it. */
function shownAt(input: unknown, path: readonly PropertyKey[]): string {
  const secret = path.some((key) => SECRET_FIELDS.includes(String(key)));
  const value = at(input, path);
  return secret || holdsSecret(value) ? '' : show(value);
}

/** As deep as what is shown reaches; what comes over a message port may lead back into itself. */
function holdsSecret(value: unknown, depth = SHOWN_DEPTH + 1): boolean {
  if (typeof value !== 'object' || value === null || depth === 0) return false;
  return Object.entries(value).some(
    ([key, inner]) => SECRET_FIELDS.includes(key) || holdsSecret(inner, depth - 1),
  );
}

/** A secret typed a second time into another field is no more to be shown there. */
function secretsIn(input: unknown, depth = SHOWN_DEPTH + 1): string[] {
  if (typeof input !== 'object' || input === null || depth === 0) return [];
  return Object.entries(input).flatMap(([key, inner]) => {
    if (!SECRET_FIELDS.includes(key)) return secretsIn(inner, depth - 1);
    return typeof inner === 'string' && inner !== '' ? [inner.slice(0, SHOWN)] : [];
  });
}

/** What stood there, for reading; a message port carries more kinds of values than JSON has. */
function show(value: unknown): string {
  if (value === undefined) return '';
  if (typeof value === 'string') return cut(value.toWellFormed());
  if (Array.isArray(value) && value.some(isGroup))
    return value.length === 1 ? '1 row' : `${value.length} rows`;
  if (isTypedQuantity(value)) return cut(`${value.text} ${value.unit}`.toWellFormed());
  return cut(inspect(value, { depth: SHOWN_DEPTH, breakLength: Number.POSITIVE_INFINITY }));
}

const isGroup = (value: unknown): boolean => typeof value === 'object' && value !== null;

function isTypedQuantity(value: unknown): value is { text: string; unit: string } {
  if (typeof value !== 'object' || value === null || !('text' in value) || !('unit' in value)) return false;
  return typeof value.text === 'string' && typeof value.unit === 'string';
}

function cut(text: string): string {
  return text.length > SHOWN ? `${text.slice(0, SHOWN)}…` : text;
}

/** Text that can't be stored as typed: half of a surrogate pair, or the zero character. */
function unreadableText(value: unknown, path: readonly string[]): FieldFault[] {
  if (typeof value === 'string') {
    if (value.isWellFormed() && !value.includes('\u0000')) return [];
    return [
      {
        field: fieldName(path),
        value: path.some((key) => SECRET_FIELDS.includes(key)) ? '' : cut(value.toWellFormed()),
        allowed: 'text without broken or zero characters',
      },
    ];
  }
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => unreadableText(inner, [...path, key]));
}
