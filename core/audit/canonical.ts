import canonicalize from 'canonicalize';

/**
 * Writes a value as canonical JSON: keys sorted by UTF-16 code unit, numbers in the shortest form that reads back the
 * same, no white space. Two programs that hold the same value write the same bytes, so a hash of it means something.
 *
 * @param value plain JSON value; NaN, infinities and lone surrogates are refused
 * @returns the text to hash and to store
 * @example canonicalText({ b: 1, a: 'x' }) // '{"a":"x","b":1}'
 * @source RFC 8785 (2020), section 3.2
 */
export function canonicalText(value: unknown): string {
  const text = canonicalize(value);
  if (text === undefined) throw new Error('a value without a JSON form cannot be recorded');
  return text;
}
