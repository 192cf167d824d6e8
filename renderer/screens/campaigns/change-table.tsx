import { Link } from 'wouter';
import type { JobChange } from '../../../core/contract/campaign.ts';
import { useRegister } from '../../app/register.ts';
import { moment } from '../../app/text/time.ts';
import { SideScroll } from '../../components/side-scroll.tsx';

interface ChangeTableProps {
  readonly rows: readonly JobChange[];
  /** On the page of one job its number is said already. */
  readonly ofOneJob?: boolean;
}

/** Versions of jobs with what each changed, the newest first. */
export function ChangeTable({ rows, ofOneJob = false }: ChangeTableProps) {
  const { timeZone } = useRegister();
  return (
    <SideScroll>
      <table className="tab">
        <thead>
          <tr>
            <th scope="col">When</th>
            {!ofOneJob && <th scope="col">Job</th>}
            <th scope="col">By</th>
            <th scope="col">What changed</th>
            <th scope="col">Reason</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.eventId}>
              <td className="date">{moment(row.at, timeZone)}</td>
              {!ofOneJob && (
                <th scope="row">
                  <Link href={`/plan/jobs/${row.jobId}`}>{row.number}</Link>
                  <div className="small">{row.tag}</div>
                </th>
              )}
              <td>{row.by}</td>
              <td>
                <ChangeWords row={row} />
              </td>
              <td>{row.reason}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </SideScroll>
  );
}

function ChangeWords({ row: { version, changes } }: { readonly row: JobChange }) {
  if (version === 1) return <>New on the list</>;
  return (
    <ul className="plain-list">
      {changes.map(({ field, from, to }) => (
        <li key={field}>
          {field}: {from || 'nothing'} → {to || 'nothing'}
        </li>
      ))}
    </ul>
  );
}
