import type { ReactNode } from 'react';
import { ExportList } from './export-list.tsx';
import { Pager } from './pager.tsx';
import { SideScroll } from './side-scroll.tsx';
import { SortHeading } from './sort-heading.tsx';

export interface Column<S extends string> {
  /** Null for a column that can't be sorted by. */
  readonly sort: S | null;
  readonly words: string;
}

interface Search<S extends string> {
  readonly sort: S;
  readonly direction: 'asc' | 'desc';
  readonly page: number;
  readonly pageSize: number;
}

interface FoundTableProps<R, S extends string> {
  readonly found: { readonly rows: readonly R[]; readonly total: number };
  readonly columns: readonly Column<S>[];
  readonly search: Search<S>;
  readonly onChange: (part: { sort: S; direction: 'asc' | 'desc' } | { page: number }) => void;
  readonly row: (row: R) => ReactNode;
  /** One of the rows: "joint". */
  readonly noun: string;
  /** What stands in place of the table when nothing was found. */
  readonly empty: string;
  readonly exported: {
    readonly name: string;
    readonly headings: readonly string[];
    readonly rows: () => Promise<readonly R[]>;
    readonly cells: (row: R) => readonly (string | number | null)[];
  };
}

/** What a search found: sorted by its headings, turned page by page, and exported whole. */
export function FoundTable<R, S extends string>(props: FoundTableProps<R, S>) {
  const { found, columns, search, onChange, row, noun, empty, exported } = props;
  return (
    <>
      {found.rows.length === 0 ? (
        <p className="empty">{empty}</p>
      ) : (
        <SideScroll>
          <table className="tab links">
            <thead>
              <tr>
                {columns.map((column) => (
                  <SortHeading
                    key={column.words}
                    words={column.words}
                    value={column.sort}
                    sort={search.sort}
                    direction={search.direction}
                    onSort={(sort, direction) => onChange({ sort, direction })}
                  />
                ))}
              </tr>
            </thead>
            <tbody>{found.rows.map(row)}</tbody>
          </table>
        </SideScroll>
      )}
      <Pager
        page={search.page}
        pageSize={search.pageSize}
        total={found.total}
        noun={noun}
        onPage={(page) => onChange({ page })}
      />
      {found.rows.length > 0 && <ExportList {...exported} />}
    </>
  );
}
