import { useState } from 'react';
import { Link } from 'wouter';
import { type AuditGroup, type AuditRow, auditGroup } from '../../../core/contract/audit.ts';
import type { RequestInput } from '../../../core/contract/requests.ts';
import { allRows, useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { moment } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { ExportList } from '../../components/export-list.tsx';
import { Pager } from '../../components/pager.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { EvidenceIndex } from '../evidence/evidence-index.tsx';

type Search = RequestInput<'audit.list'>;
const PAGE = 50;
const EVERYTHING: Search = { group: null, personId: null, from: null, to: null, page: 1, pageSize: PAGE };

/** What an auditor asks for beside the work itself: what was set aside, refused, edited, and who came in. */
export function AuditPage() {
  const [search, setSearch] = useState(EVERYTHING);
  const found = useAsk('audit.list', search, { keep: true });
  return (
    <Desk indexLabel="Evidence" index={<EvidenceIndex />}>
      <Title
        name="Audit trail"
        under="Refusals set aside, requests refused, sign-ins, and edits of people, reference data and site rules."
      />
      <Filters search={search} onChange={(part) => setSearch({ ...search, ...part, page: 1 })} />
      <Asked asking={found} what="the audit trail">
        {({ rows, total }) => (
          <>
            {rows.length === 0 ? (
              <p className="empty">Nothing of this kind is on the register.</p>
            ) : (
              <SideScroll>
                <table className="tab">
                  <thead>
                    <tr>
                      <th scope="col">When</th>
                      <th scope="col">Who</th>
                      <th scope="col">What</th>
                      <th scope="col">Detail</th>
                    </tr>
                  </thead>
                  <tbody>
                    {rows.map((row) => (
                      <Row key={row.id} row={row} />
                    ))}
                  </tbody>
                </table>
              </SideScroll>
            )}
            <Pager
              page={search.page}
              pageSize={PAGE}
              total={total}
              noun="line"
              onPage={(page) => setSearch({ ...search, page })}
            />
            <ExportList
              name="audit-trail"
              headings={['recorded (ISO 8601, UTC)', 'kind', 'who', 'what', 'detail', 'record']}
              rows={() => allRows('audit.list', search)}
              cells={(row) => [row.at, row.group, row.who, row.what, row.detail, row.eventId]}
            />
          </>
        )}
      </Asked>
    </Desk>
  );
}

function Row({ row }: { readonly row: AuditRow }) {
  const { timeZone } = useRegister();
  return (
    <tr>
      <td className="date">{moment(row.at, timeZone)}</td>
      <td>{row.who}</td>
      <th scope="row">
        {row.eventId === null ? row.what : <Link href={`/records/${row.eventId}`}>{row.what}</Link>}
        <div className="small">{row.group}</div>
      </th>
      <td>
        {row.detail}
        {row.jointId !== null && row.eventId === null && (
          <div className="small">
            <Link href={`/joints/${row.jointId}`}>the joint it was about</Link>
          </div>
        )}
      </td>
    </tr>
  );
}

interface FiltersProps {
  readonly search: Search;
  readonly onChange: (part: Partial<Search>) => void;
}

function Filters({ search, onChange }: FiltersProps) {
  const people = useAsk('person.list', {});
  const typed = (value: string) => (value === '' ? null : value);
  return (
    <div className="filters no-print">
      <div className="field">
        <label htmlFor="audit-group">Kind</label>
        <select
          id="audit-group"
          value={search.group ?? ''}
          onChange={({ target }) => onChange({ group: typed(target.value) as AuditGroup | null })}
        >
          <option value="">every kind</option>
          {auditGroup.options.map((group) => (
            <option key={group}>{group}</option>
          ))}
        </select>
      </div>
      <div className="field">
        <label htmlFor="audit-person">Person</label>
        <select
          id="audit-person"
          value={search.personId ?? ''}
          onChange={({ target }) => onChange({ personId: typed(target.value) })}
        >
          <option value="">everybody</option>
          {people.data?.rows.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </div>
      <div className="field">
        <label htmlFor="audit-from">First day</label>
        <input
          id="audit-from"
          type="date"
          value={search.from ?? ''}
          onChange={({ target }) => onChange({ from: typed(target.value) })}
        />
      </div>
      <div className="field">
        <label htmlFor="audit-to">Last day</label>
        <input
          id="audit-to"
          type="date"
          value={search.to ?? ''}
          onChange={({ target }) => onChange({ to: typed(target.value) })}
        />
      </div>
    </div>
  );
}
