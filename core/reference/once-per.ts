/**
 * Works something out once for each row of a table. Rows never change, and there are only as many as the tables have;
 * what belongs to one joint or one setting has no place here.
 *
 * @param make what a row comes to, of the row alone
 * @returns the same, remembered for as long as the row is there
 * @example oncePer((row) => row.bolts * 2)({ bolts: 12 }) // 24
 * @source rule of this program
 */
export function oncePer<R extends object, T>(make: (row: R) => T): (row: R) => T {
  const made = new WeakMap<R, { readonly result: T }>();
  return (row) => {
    const known = made.get(row);
    if (known !== undefined) return known.result;
    const result = make(row);
    made.set(row, { result });
    return result;
  };
}

/**
 * As `oncePer`, for what follows from a name alone. Names can be typed by people, so only this many are remembered:
 * then it starts again.
 *
 * @param make what a name comes to, of the name alone
 * @param most names remembered at a time, whole, at least 1
 * @returns the same, remembered
 * @example oncePerName((name) => name.length)('stud') // 4
 * @source rule of this program
 */
export function oncePerName<T>(make: (name: string) => T, most = 1000): (name: string) => T {
  const made = new Map<string, { readonly result: T }>();
  return (name) => {
    const known = made.get(name);
    if (known !== undefined) return known.result;
    const result = make(name);
    if (made.size >= most) made.clear();
    made.set(name, { result });
    return result;
  };
}
