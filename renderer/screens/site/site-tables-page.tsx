import { Link } from 'wouter';
import type { SiteRow, SiteRowData } from '../../../core/contract/site.ts';
import { useAsk } from '../../app/ask.ts';
import { unitLabel } from '../../app/text/number.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import type { Typed } from '../../components/typed.ts';
import { EvidenceIndex } from '../evidence/evidence-index.tsx';
import { KINDS } from './kinds.ts';
import { GASKET_VALUES, LUBRICANT_VALUES, type RowValue } from './site-row-form-values.ts';

/** The site's own rows beside the shipped tables, each with its source. */
export function SiteTablesPage() {
  const asking = useAsk('siteRow.list', { kind: null, text: '' });
  return (
    <Desk indexLabel="Evidence" index={<EvidenceIndex />}>
      <Title
        name="Site tables"
        under="The site’s own rows beside the shipped ones. Nothing shipped is edited here."
      />
      <Asked asking={asking} what="the site’s tables">
        {({ rows }) =>
          KINDS.map(({ kind, path, heading, noun }) => (
            <section key={kind} aria-labelledby={`site-${path}`}>
              <h2 id={`site-${path}`}>{heading}</h2>
              <Rows rows={rows.filter(({ data }) => data.kind === kind)} noun={noun} />
              <Link className="quiet" href={`/site-tables/new/${path}`}>
                Add a {noun}
              </Link>
            </section>
          ))
        }
      </Asked>
    </Desk>
  );
}

function Rows({ rows, noun }: { readonly rows: readonly SiteRow[]; readonly noun: string }) {
  if (rows.length === 0) return <p className="empty">The site has no {noun} of its own.</p>;
  return (
    <SideScroll>
      <table className="tab">
        <thead>
          <tr>
            <th scope="col">Name</th>
            <th scope="col">Values</th>
            <th scope="col">Source</th>
            <th scope="col">Version</th>
            <th scope="col">
              <span className="unseen">Edit</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ id, version, data }) => (
            <tr key={id}>
              <th scope="row">
                {data.key}
                {data.retired && <div className="small">retired, not offered any more</div>}
              </th>
              <td>{valueWords(data)}</td>
              <td>{data.source}</td>
              <td className="num">{version}</td>
              <td>
                <Link href={`/site-tables/${id}/edit`}>
                  Edit<span className="unseen"> {data.key}</span>
                </Link>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </SideScroll>
  );
}

function valueWords(data: SiteRowData): string {
  switch (data.kind) {
    case 'flange':
      return [
        `${data.count ?? 'not known'} × ${data.thread ?? 'not known'}`,
        `bolt circle ${asTyped(data.circle)}`,
      ].join(', ');
    case 'stud grade':
      return data.bands
        .map(
          ({ over, upTo, yieldStrength }) =>
            `over ${asTyped(over)} to ${asTyped(upTo)}: yield ${asTyped(yieldStrength)}`,
        )
        .join('; ');
    case 'gasket':
      return listed(data.values, GASKET_VALUES);
    case 'lubricant':
      return `${listed(data.values, LUBRICANT_VALUES)}, ${data.values.evidence}`;
  }
}

function listed(values: object, names: readonly RowValue[]): string {
  const stored = values as Readonly<Record<string, Typed | null>>;
  const words = names.flatMap(({ name, label }) => {
    const value = stored[name] ?? null;
    return value === null ? [] : [`${label} ${asTyped(value)}`];
  });
  return words.length === 0 ? 'no value is known' : words.join(', ');
}

function asTyped(value: Typed | null): string {
  return value === null ? 'not known' : `${value.text} ${unitLabel(value.unit)}`.trim();
}
