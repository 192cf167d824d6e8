import { invalidField } from '../failure.ts';

/** Refuses a list that names the same thing twice. */
export function checkDistinct(field: string, values: readonly (string | number)[]): void {
  const twice = values.find((value, index) => values.indexOf(value) !== index);
  if (twice !== undefined) throw invalidField(field, String(twice), 'each at most once');
}
