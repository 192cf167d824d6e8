type Direction = 'asc' | 'desc';

interface SortHeadingProps<S extends string> {
  readonly words: string;
  /** Null for a column that can't be sorted by. */
  readonly value: S | null;
  readonly sort: S;
  readonly direction: Direction;
  readonly onSort: (sort: S, direction: Direction) => void;
}

export function SortHeading<S extends string>({
  words,
  value,
  sort,
  direction,
  onSort,
}: SortHeadingProps<S>) {
  if (value === null) return <th scope="col">{words}</th>;
  const sorted = value === sort;
  const state = sorted ? (direction === 'asc' ? 'ascending' : 'descending') : 'none';
  return (
    <th scope="col" aria-sort={state}>
      <button type="button" onClick={() => onSort(value, sorted && direction === 'asc' ? 'desc' : 'asc')}>
        {words}
      </button>
    </th>
  );
}
