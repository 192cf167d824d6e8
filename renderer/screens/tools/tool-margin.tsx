import { Link } from 'wouter';
import type { ToolRecord } from '../../../core/contract/tool-record.ts';
import { DueMark } from '../../components/due-mark.tsx';
import { SeverityMark } from '../../components/marks.tsx';
import { dueWhen } from '../due/due-table.tsx';

/** What stands against using the tool now. It repeats what the page says below, so it stays off the paper. */
export function ToolMargin({ tool }: { readonly tool: ToolRecord }) {
  const { status } = tool.data;
  const barred = status === 'quarantined' || status === 'scrapped';
  const dues = tool.due.filter(({ state }) => state !== 'in date');
  const open = tool.cases.filter(({ state }) => state === 'open');
  const last = tool.moves[0];
  return (
    <section className="no-print">
      <h2>Stands against it</h2>
      {barred && (
        <article className="f refusal">
          <SeverityMark severity="refusal" />
          <div>
            <h3>It is {status}</h3>
            <p>{last?.to === status && last.reason ? last.reason : 'The register holds no reason.'}</p>
          </div>
        </article>
      )}
      {open.map((each) => (
        <article className="f warning" key={each.id}>
          <SeverityMark severity="warning" />
          <div>
            <h3>Case {each.number} is open</h3>
            <p>
              {each.decided} of {each.affected} joints decided.
            </p>
            <Link href={`/cases/${each.id}`}>Go on with the case</Link>
          </div>
        </article>
      ))}
      {dues.map((due) => (
        <div key={due.what} className="due-line">
          <DueMark state={due.state} words={`${due.what}: ${due.state}`} />
          <p className="small">
            {due.on === null && due.usesLeft === null ? due.reason : dueWhen(due)}
            {due.neededFor && (
              <>
                , needed for <Link href={`/kits/${due.neededFor.kitId}`}>{due.neededFor.kit}</Link>
              </>
            )}
          </p>
        </div>
      ))}
      {!barred && open.length === 0 && dues.length === 0 && (
        <p className="small">Nothing known. What a setting may use is decided when it is worked out.</p>
      )}
    </section>
  );
}
