import { Link } from 'wouter';
import type { HeadComparison, HistoryFinding, Verification } from '../../../core/contract/history.ts';
import { useRegister } from '../../app/register.ts';
import { inFours } from '../../app/text/head.ts';
import { count, counted } from '../../app/text/number.ts';
import { moment } from '../../app/text/time.ts';
import { SeverityMark } from '../../components/marks.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';

interface VerifyResultProps {
  readonly verification: Verification;
  readonly when: string;
}

export function VerifyResult({ verification: result, when }: VerifyResultProps) {
  return (
    <>
      <h2>{result.sound ? 'It holds' : 'It does not hold'}</h2>
      <p role="status">
        <b>{verdict(result)}</b> <span className="small">{when}</span>
      </p>
      {result.sound && !hasOutsideHead(result) && (
        <p className="small">
          No head from outside was compared: a history rewritten as a whole, a cut end or an older file would
          look the same.
        </p>
      )}
      {result.findings.length > 0 && <Findings result={result} />}
      {result.comparisons.length > 0 && <Comparisons rows={result.comparisons} />}
      <h3>Looked at</h3>
      <dl className="lines narrow">
        {result.looked.map(({ what, count: number }) => (
          <div key={what}>
            <dt>{what}</dt>
            <dd>{count(number)}</dd>
          </div>
        ))}
        {result.notLooked.map((what) => (
          <div key={what}>
            <dt>not looked at</dt>
            <dd>{what}</dd>
          </div>
        ))}
      </dl>
      <p className="small seal">Head: {result.head === null ? 'no records' : inFours(result.head)}</p>
    </>
  );
}

const hasOutsideHead = ({ comparisons }: Verification) =>
  comparisons.some(
    ({ source, at, outcome }) => source === 'typed' && at !== null && outcome !== 'is a record',
  );

function verdict({ sound, events, findingsTotal }: Verification): string {
  if (!sound) {
    return `${counted(findingsTotal, 'thing')} in the register ${findingsTotal === 1 ? 'is' : 'are'} not as recorded. Keep the file as it is, take the newest backup beside it, and find out who could write to it.`;
  }
  return `All ${counted(events, 'record')} follow one another without a gap, and each has the text it was recorded with.`;
}

function Findings({ result }: { readonly result: Verification }) {
  return (
    <>
      <h3>Not as recorded</h3>
      <SideScroll>
        <table className="tab">
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col" className="num">
                Record
              </th>
              <th scope="col">Detail</th>
            </tr>
          </thead>
          <tbody>
            {result.findings.map((finding, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: the list never changes, and two findings may read the same.
              <Finding key={index} finding={finding} />
            ))}
          </tbody>
        </table>
      </SideScroll>
      {result.findingsTotal > result.findings.length && (
        <p className="small">
          {count(result.findings.length)} of {count(result.findingsTotal)} are listed.
        </p>
      )}
    </>
  );
}

function Finding({ finding }: { readonly finding: HistoryFinding }) {
  const number = finding.sequence === null ? '' : count(finding.sequence);
  return (
    <tr>
      <th scope="row">
        <SeverityMark severity="refusal" /> {finding.kind}
      </th>
      <td className="num">
        {finding.eventId === null ? number : <Link href={`/records/${finding.eventId}`}>{number}</Link>}
      </td>
      <td>{finding.detail}</td>
    </tr>
  );
}

function Comparisons({ rows }: { readonly rows: readonly HeadComparison[] }) {
  const { timeZone } = useRegister();
  return (
    <>
      <h3>Earlier heads</h3>
      <SideScroll>
        <table className="tab">
          <thead>
            <tr>
              <th scope="col">From</th>
              <th scope="col">Outcome</th>
              <th scope="col">Where it stood</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={`${row.source} ${row.name}`}>
                <th scope="row">
                  {row.source}
                  <div className="small">
                    {row.name || (row.head && `${inFours(row.head.slice(0, 16))} …`)}
                  </div>
                </th>
                <td>{OUTCOME_WORDS[row.outcome]}</td>
                <td>
                  {row.at === null
                    ? 'nowhere'
                    : `after ${counted(row.at.events, 'record')}, ${moment(row.at.recordedAt, timeZone)}`}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </SideScroll>
    </>
  );
}

const OUTCOME_WORDS: Readonly<Record<HeadComparison['outcome'], string>> = {
  'is the newest': 'It is the head as it stands now',
  reached: 'This history had it, and went on from there',
  'is a record': 'This is the hash of one record, not a head. The record is in this history',
  'not in this history': 'This history never had it',
  'another register': 'A copy of another register; it proves nothing here',
  'can not be read': 'It can not be read; it proves nothing',
};
