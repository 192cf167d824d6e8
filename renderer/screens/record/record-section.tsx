import { Link } from 'wouter';
import type { Completeness, FieldStanding } from '../../../core/contract/record.ts';
import { GROUPS } from '../../../core/record/field.ts';
import { useAsk } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { Unknown } from '../../components/number.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { placeOf } from './places.ts';

interface RecordSectionProps {
  readonly jointId: string;
  /** A tightening or breakout of the assembly; null for the joint's newest. */
  readonly eventId: string | null;
}

/** What an assembly's record lacks for the class of its joint, why each is asked, and where it is entered. */
export function RecordSection({ jointId, eventId }: RecordSectionProps) {
  const asked = useAsk('record.completeness', { jointId, eventId });
  return (
    <section aria-labelledby="record">
      <h2 id="record">{eventId === null ? 'Record of this assembly' : 'What this record lacks'}</h2>
      <Asked asking={asked} what="the record">
        {(record) => <RecordState jointId={jointId} record={record} />}
      </Asked>
    </section>
  );
}

interface RecordProps {
  readonly jointId: string;
  readonly record: Completeness;
}

function RecordState({ jointId, record }: RecordProps) {
  const missing = record.fields.filter(({ required, state }) => required && state === 'missing');
  return (
    <>
      <p>
        <b>
          {record.answered} of {record.required}
        </b>{' '}
        fields required of {record.heldAgainst === 'intermediate' ? 'an' : 'a'} {record.heldAgainst} joint are
        answered.
        {record.class === null &&
          ' Nobody has assessed this joint; it is held against the most demanding list until then.'}
      </p>
      <GroupCounts record={record} />
      {missing.length === 0 ? (
        <p className="small">Nothing that is required is missing.</p>
      ) : (
        <details className="folded">
          <summary>
            Missing <span className="small">{missing.length} required</span>
          </summary>
          <MissingTable jointId={jointId} missing={missing} />
        </details>
      )}
      <details className="folded">
        <summary>
          Every field{' '}
          <span className="small">
            {record.fields.filter(({ state }) => state !== 'missing').length} of {record.fields.length}{' '}
            answered
          </span>
        </summary>
        <WholeRecord fields={record.fields} />
      </details>
    </>
  );
}

function GroupCounts({ record }: { readonly record: Completeness }) {
  const asked = record.fields.filter(({ required }) => required);
  const groups = [...new Set(asked.map(({ group }) => group))];
  return (
    <ul className="plain-list group-counts small">
      {groups.map((group) => {
        const own = asked.filter((each) => each.group === group);
        const known = own.filter(({ state }) => state !== 'missing').length;
        return (
          <li key={group} className={known < own.length ? 'short' : undefined}>
            {GROUPS[group]}{' '}
            <span className="of">
              {known} of {own.length}
            </span>
          </li>
        );
      })}
    </ul>
  );
}

interface MissingTableProps {
  readonly jointId: string;
  readonly missing: readonly FieldStanding[];
}

function MissingTable({ jointId, missing }: MissingTableProps) {
  return (
    <SideScroll>
      <table className="tab">
        <thead>
          <tr>
            <th scope="col">Field</th>
            <th scope="col">Why it is asked</th>
            <th scope="col">Entered</th>
          </tr>
        </thead>
        <tbody>
          {missing.map((each) => (
            <tr key={each.field}>
              <th scope="row">
                {each.field}
                <div className="small">{GROUPS[each.group].toLowerCase()}</div>
              </th>
              <td>
                {each.why}
                <div className="small">{each.origins.join('; ')}</div>
              </td>
              <td>
                <Where jointId={jointId} standing={each} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </SideScroll>
  );
}

function Where({ jointId, standing }: { readonly jointId: string; readonly standing: FieldStanding }) {
  const { words, href } = placeOf(standing.place, jointId);
  if (href === null) return <>{words}</>;
  return (
    <Link href={href}>
      {words}
      <span className="unseen">: {standing.field}</span>
    </Link>
  );
}

function WholeRecord({ fields }: { readonly fields: readonly FieldStanding[] }) {
  const groups = [...new Set(fields.map(({ group }) => group))];
  return (
    <div className="fold">
      <p className="small">Fields in bold belong to the least record of a critical joint.</p>
      {groups.map((group) => (
        <section key={group} aria-label={GROUPS[group]}>
          <h3>{GROUPS[group]}</h3>
          <dl className="lines wide">
            {fields
              .filter((each) => each.group === group)
              .map((each) => (
                <div key={each.field}>
                  <dt>{each.minimum ? <b>{each.field}</b> : each.field}</dt>
                  <dd>{each.shown ?? <Unknown />}</dd>
                  <dd className="from">{stateWords(each)}</dd>
                </div>
              ))}
          </dl>
        </section>
      ))}
    </div>
  );
}

function stateWords({ state, required }: FieldStanding): string {
  const asked = required ? 'required' : 'asked';
  if (state === 'missing') return `${asked}, missing`;
  return state === 'not applicable' ? `${asked}, does not apply` : asked;
}
