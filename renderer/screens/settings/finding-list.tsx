import { Link } from 'wouter';
import { type Finding, SEVERITIES } from '../../../core/findings/finding.ts';
import { roundly, sensible } from '../../app/text/number.ts';
import { SEVERITY_WORDS, SeverityMark } from '../../components/marks.tsx';
import { ConfirmValues } from '../site/confirm-values.tsx';

interface FindingListProps {
  readonly findings: readonly Finding[];
  readonly jointId: string;
  /** A card still being worked out can be changed by a confirmation; an issued one can't. */
  readonly confirmable: boolean;
}

/** What the book has to say about the card, the gravest first; each leads to where it is solved. */
export function FindingList({ findings, jointId, confirmable }: FindingListProps) {
  const ordered = [...findings].sort(
    (one, other) => SEVERITIES.indexOf(one.severity) - SEVERITIES.indexOf(other.severity),
  );
  return (
    <section className="findings" aria-labelledby="findings">
      <h2 id="findings">Findings</h2>
      {ordered.length === 0 && <p className="small">Nothing stands against this setting.</p>}
      {ordered.map((finding) => (
        <article
          className={`f ${finding.severity}`}
          key={`${finding.code} ${finding.subject} ${finding.title}`}
        >
          <SeverityMark severity={finding.severity} />
          <div>
            <h3>
              <span className="word">{SEVERITY_WORDS[finding.severity]}</span>
              <br />
              {finding.title}
            </h3>
            <p>{finding.detail}</p>
            <Limit finding={finding} />
            <Remedy finding={finding} jointId={jointId} />
            {confirmable && finding.confirm && <ConfirmValues cells={finding.confirm} />}
          </div>
        </article>
      ))}
    </section>
  );
}

/** Numbers behind a finding; what is said in words stands in its detail already. */
function Limit({ finding }: { readonly finding: Finding }) {
  const show = (value: number | string | null): string | null => {
    if (typeof value !== 'number') return null;
    return finding.unit === null ? sensible(value, 3) : roundly(value, finding.unit);
  };
  const value = show(finding.value);
  const limit = show(finding.limit);
  const words = [value !== null && `Value ${value}`, limit !== null && `limit ${limit}`]
    .filter(Boolean)
    .join(', ');
  return (
    <p className="faint">
      {words}
      {words && '. '}
      {finding.source && `Source: ${finding.source}`}
    </p>
  );
}

function Remedy({ finding, jointId }: { readonly finding: Finding; readonly jointId: string }) {
  const { screen, id, field } = finding.place;
  if (screen === 'settings') {
    return (
      <button type="button" className="link" onClick={() => focusChoice(field)}>
        {finding.remedy}
      </button>
    );
  }
  const to =
    screen === 'joint'
      ? `/joints/${id ?? jointId}/edit${field ? `/${field}` : ''}`
      : id === null
        ? '/tools'
        : `/tools/${id}`;
  const needs = [...new Set(finding.remedy.split('; '))];
  if (needs.length <= SHORT_LIST) return <Link href={to}>{finding.remedy}</Link>;
  return (
    <>
      <Link href={to}>Enter what is missing</Link>
      <details className="small">
        <summary>What it takes, {needs.length} values</summary>
        <ul>
          {needs.map((need) => (
            <li key={need}>{need}</li>
          ))}
        </ul>
      </details>
    </>
  );
}

/** A longer remedy is a list to fold, not a link to read. */
const SHORT_LIST = 3;

/** The choices stand beside the card; a finding about one puts the cursor there. */
function focusChoice(field: string | null): void {
  const name = field?.replace('tools.', '') ?? 'driveId';
  const wanted = document.getElementById(name) ?? document.getElementById(`${name}Id`);
  wanted?.scrollIntoView({ block: 'center' });
  wanted?.focus();
}
