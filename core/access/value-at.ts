/**
 * What stands at a dotted path of an input.
 *
 * @param input an input of any shape
 * @param path names joined by dots: "data.personId"
 * @returns the value there; undefined when the path leads nowhere
 * @example valueAt({ data: { step: 'scrap' } }, 'data.step') // 'scrap'
 * @source rule of this program
 */
export function valueAt(input: unknown, path: string): unknown {
  return path
    .split('.')
    .reduce<unknown>(
      (value, key) =>
        typeof value === 'object' && value !== null && Object.hasOwn(value, key)
          ? (value as Readonly<Record<string, unknown>>)[key]
          : undefined,
      input,
    );
}
