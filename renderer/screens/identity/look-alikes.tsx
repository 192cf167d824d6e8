import { Link } from 'wouter';
import type { LookAlikeRow } from '../../../core/contract/joint.ts';
import { useAsk } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { SeverityMark } from '../../components/marks.tsx';

/** More are told on the page for the joint itself. */
const IN_THE_MARGIN = 4;

/** In the margin: joints this one could be taken for, the likeliest first. */
export function LookAlikesMargin({ id }: { readonly id: string }) {
  const asked = useAsk('joint.lookAlikes', { id });
  return (
    <Asked asking={asked} what="look-alikes">
      {({ rows }) =>
        rows.length > 0 && (
          <section aria-labelledby="look-alikes">
            <h2 id="look-alikes">Could be taken for</h2>
            {rows.slice(0, IN_THE_MARGIN).map((row) => (
              <article className={row.oneIsLive ? 'f refusal' : 'f warning'} key={row.id}>
                <SeverityMark severity={row.oneIsLive ? 'refusal' : 'warning'} />
                <div>
                  <h3>
                    <Link href={`/joints/${row.id}`}>{row.tag}</Link>
                  </h3>
                  <p>{sentence(row)}</p>
                  {row.tells.map((tell) => (
                    <p className="small" key={tell}>
                      {tell}
                    </p>
                  ))}
                </div>
              </article>
            ))}
            <p className="small">
              {rows.length > IN_THE_MARGIN && `${rows.length - IN_THE_MARGIN} more. `}
              <Link href={`/is-this/${id}`}>How to tell them apart</Link>
            </p>
          </section>
        )
      }
    </Asked>
  );
}

/** On a sheet that goes to the joint, paper included. */
export function LookAlikesLine({ id }: { readonly id: string }) {
  const { data } = useAsk('joint.lookAlikes', { id });
  if (data === undefined || data.rows.length === 0) return null;
  return (
    <section className="look-alikes-line" aria-label="Look-alikes">
      <h2>Could be taken for</h2>
      <ul className="plain-list">
        {data.rows.slice(0, IN_THE_MARGIN).map((row) => (
          <li key={row.id}>
            <b>{row.tag}</b>, {row.reasons[0]}
            {row.tells.length > 0 && ` (${row.tells.join('; ')})`}
          </li>
        ))}
      </ul>
      <p className="small">
        As the register knows them now. Check tag, side of the valve and zero energy at the joint itself.
      </p>
    </section>
  );
}

function sentence({ reasons }: LookAlikeRow): string {
  const text = reasons.join('; ');
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}.`;
}
