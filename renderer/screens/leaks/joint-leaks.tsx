import { Link } from 'wouter';
import type { JointLeaks } from '../../../core/contract/leak-log.ts';
import { useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { count } from '../../app/text/number.ts';
import { dayOf, span } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Unknown } from '../../components/number.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { LeakTable } from './leak-table.tsx';
import { cycleWords } from './leak-words.ts';

/** On the page of a joint: its leaks, and what it went through since it was made up. */
export function JointLeaksSection({ id }: { readonly id: string }) {
  const asked = useAsk('joint.leaks', { id });
  return (
    <section aria-labelledby="leaks">
      <div className="spread">
        <h2 id="leaks">Leaks and thermal cycles</h2>
        <Link className="small no-print" href={`/joints/${id}/cycles`}>
          Record thermal cycles
        </Link>
      </div>
      <Asked asking={asked} what="the leaks">
        {(leaks) => (
          <>
            <p>{leaks.finding}</p>
            {leaks.rows.length > 0 && <LeakTable rows={leaks.rows} withJoint={false} />}
            <Cycles leaks={leaks} />
          </>
        )}
      </Asked>
    </section>
  );
}

function Cycles({ leaks: { madeUpAt, sinceMakeUp, counts } }: { readonly leaks: JointLeaks }) {
  const { timeZone } = useRegister();
  return (
    <>
      <p>
        Thermal cycles since make-up
        {madeUpAt !== null && ` on ${dayOf(madeUpAt, timeZone)}`}:{' '}
        {sinceMakeUp === null || sinceMakeUp.covered === 0 ? <Unknown /> : <b>{cycleWords(sinceMakeUp)}</b>}
      </p>
      {counts.length > 0 && (
        <SideScroll>
          <table className="tab">
            <thead>
              <tr>
                <th scope="col">Counted from and to</th>
                <th scope="col" className="num">
                  Cycles
                </th>
                <th scope="col">What counted them</th>
                <th scope="col">By</th>
              </tr>
            </thead>
            <tbody>
              {counts.map((each) => (
                <tr key={each.eventId}>
                  <th scope="row">{span(each.from, each.until)}</th>
                  <td className="num">{count(each.cycles)}</td>
                  <td>{each.basis}</td>
                  <td>{each.by}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </SideScroll>
      )}
    </>
  );
}
