import type { CheckRow } from '../../../core/contract/check.ts';
import { useRegister } from '../../app/register.ts';
import { withUnit } from '../../app/text/number.ts';
import { dayOf } from '../../app/text/time.ts';
import { ShortList } from './short-list.tsx';

/** Checks and service: what was looked at, tested, cleaned and repaired, newest first. */
export function RecordChecks({ checks }: { readonly checks: readonly CheckRow[] }) {
  return (
    <section aria-label="Checks and service">
      <h2>Checks and service</h2>
      {checks.length === 0 ? (
        <p className="small">No check and no service is recorded.</p>
      ) : (
        <ShortList
          rows={checks}
          noun="check"
          headings={
            <tr>
              <th scope="col">Done</th>
              <th scope="col">What</th>
              <th scope="col">Result</th>
              <th scope="col" className="num">
                Largest error
              </th>
              <th scope="col">By</th>
              <th scope="col">Remarks</th>
            </tr>
          }
          row={(check) => <Check key={check.id} check={check} />}
        />
      )}
    </section>
  );
}

function Check({ check }: { readonly check: CheckRow }) {
  const { timeZone } = useRegister();
  return (
    <tr>
      <td className="date">{dayOf(check.happenedAt, timeZone)}</td>
      <th scope="row">
        {check.kind}
        {check.checklist && <div className="small">{check.checklist}</div>}
      </th>
      <td className={check.result === 'failed' ? 'due-overdue' : undefined}>{check.result}</td>
      <td className="num">
        {check.error === null ? <span className="small">not measured</span> : signed(check.error)}
      </td>
      <td>{check.person}</td>
      <td className="small">{check.remarks}</td>
    </tr>
  );
}

/** A share with its sign: an error without one can't be read. */
export const signed = (share: number): string => `${share > 0 ? '+' : ''}${withUnit(share, 'percent')}`;
