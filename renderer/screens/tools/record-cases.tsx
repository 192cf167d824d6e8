import { Link } from 'wouter';
import type { CaseSummary } from '../../../core/contract/recall.ts';
import { useRegister } from '../../app/register.ts';
import { dayOf } from '../../app/text/time.ts';

/** Times the tool turned out wrong, and whether each is closed. */
export function RecordCases({ cases }: { readonly cases: readonly CaseSummary[] }) {
  const { timeZone } = useRegister();
  return (
    <section aria-label="Out of tolerance">
      <h2>Out of tolerance</h2>
      {cases.length === 0 ? (
        <p className="small">No case was ever opened on this tool.</p>
      ) : (
        <table className="tab">
          <thead>
            <tr>
              <th scope="col">Case</th>
              <th scope="col">Opened</th>
              <th scope="col">What says so</th>
              <th scope="col" className="num">
                Joints decided
              </th>
              <th scope="col">State</th>
            </tr>
          </thead>
          <tbody>
            {cases.map((each) => (
              <tr key={each.id}>
                <th scope="row">
                  <Link href={`/cases/${each.id}`}>{each.number}</Link>
                </th>
                <td className="date">
                  {dayOf(each.openedAt, timeZone)}
                  <div className="small">{each.openedBy}</div>
                </td>
                <td>{each.basis}</td>
                <td className="num">
                  {each.decided} of {each.affected}
                </td>
                <td className={each.state === 'open' ? 'due-overdue' : undefined}>{each.state}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
