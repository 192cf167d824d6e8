import { type ReactNode, useState } from 'react';
import { counted } from '../../app/text/number.ts';
import { SideScroll } from '../../components/side-scroll.tsx';

/** Rows of a kind that a printed page of one tool has room for. */
const SHOWN = 10;

interface ShortListProps<R> {
  readonly rows: readonly R[];
  /** One of them: "check". */
  readonly noun: string;
  readonly headings: ReactNode;
  readonly row: (row: R) => ReactNode;
  /** How many there are, where not all of them are at hand; `elsewhere` leads to the rest. */
  readonly total?: number;
  readonly elsewhere?: ReactNode;
}

/** The latest rows; the rest stands behind a button, and what is left out is counted, on paper too. */
export function ShortList<R>(props: ShortListProps<R>) {
  const { rows, noun, headings, row, elsewhere } = props;
  const total = props.total ?? rows.length;
  const [all, setAll] = useState(false);
  const shown = all ? rows : rows.slice(0, SHOWN);
  return (
    <>
      <SideScroll>
        <table className="tab">
          <thead>{headings}</thead>
          <tbody>{shown.map(row)}</tbody>
        </table>
      </SideScroll>
      {rows.length > SHOWN && (
        <p className="small">
          {shown.length === total
            ? `All ${counted(total, noun)}.`
            : `The latest ${shown.length} of ${counted(total, noun)}.`}{' '}
          <button type="button" className="link small no-print" onClick={() => setAll(!all)}>
            {all ? `Show ${SHOWN}` : `Show ${rows.length}`}
            <span className="unseen"> {noun}s</span>
          </button>{' '}
          {elsewhere}
        </p>
      )}
    </>
  );
}
