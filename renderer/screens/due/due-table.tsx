import { Link } from 'wouter';
import type { DueRow } from '../../../core/contract/check.ts';
import { count } from '../../app/text/number.ts';
import { day, span } from '../../app/text/time.ts';
import { DueMark } from '../../components/due-mark.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';

/** "12 Mar 2026", "40 uses left", both, or that it is not known. */
export function dueWhen({ on, usesLeft }: Pick<DueRow, 'on' | 'usesLeft'>): string {
  const parts = [on && day(on), usesLeft !== null && usesWords(usesLeft)].filter(Boolean);
  return parts.join(', ') || 'not known';
}

function usesWords(left: number): string {
  if (left < 0) return `${count(-left)} ${left === -1 ? 'use' : 'uses'} over`;
  return `${count(left)} ${left === 1 ? 'use' : 'uses'} left`;
}

/** Dues of several tools; `bare` leaves the tool out where the page is about one. */
export function DueTable({ rows, bare }: { readonly rows: readonly DueRow[]; readonly bare?: boolean }) {
  return (
    <SideScroll>
      <table className="tab">
        <thead>
          <tr>
            {!bare && <th scope="col">Tool</th>}
            <th scope="col">What</th>
            <th scope="col">State</th>
            <th scope="col">Last good day</th>
            <th scope="col">Reason</th>
            {!bare && <th scope="col">Needed for</th>}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={`${row.toolId} ${row.what}`}>
              {!bare && (
                <th scope="row" className="tool-number">
                  <Link href={`/tools/${row.toolId}`} data-entry>
                    {row.number}
                  </Link>
                  <div className="small">
                    {row.class}
                    {row.status !== 'available' && `, ${row.status}`}
                  </div>
                </th>
              )}
              {bare ? <th scope="row">{row.what}</th> : <td>{row.what}</td>}
              <td className="date">
                <DueMark state={row.state} />
              </td>
              <td className="date">{dueWhen(row)}</td>
              <td className="small">{row.reason}</td>
              {!bare && (
                <td>
                  {row.neededFor && (
                    <>
                      <Link href={`/kits/${row.neededFor.kitId}`}>{row.neededFor.kit}</Link>
                      <div className="small">{span(row.neededFor.from, row.neededFor.to)}</div>
                    </>
                  )}
                </td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </SideScroll>
  );
}
