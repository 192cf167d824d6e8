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
