import { useState } from 'react';
import { Link } from 'wouter';
import type { SettingSummary } from '../../../core/contract/setting.ts';
import { allRows, useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { count, counted, unitLabel } from '../../app/text/number.ts';
import { moment, span } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { ExportList } from '../../components/export-list.tsx';
import { DialText } from '../../components/number.tsx';
import { Pager } from '../../components/pager.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { EvidenceIndex } from './evidence-index.tsx';

const ROWS = 30;

/** Every issued setting, newest first, and the head that stands for the whole register. */
export function EvidencePage() {
  const [page, setPage] = useState(1);
  const settings = useAsk('setting.list', { jointId: null, page, pageSize: ROWS }, { keep: true });
  return (
    <Desk indexLabel="Evidence" index={<EvidenceIndex />} margin={<RegisterHead />}>
      <Title name="Issued settings" under="Frozen with the inputs they were computed from." />
      <Asked asking={settings} what="the settings">
        {({ rows, total }) =>
          rows.length === 0 ? (
            <p className="empty">No setting has been issued yet.</p>
          ) : (
            <>
              <SideScroll>
                <table className="tab links">
                  <thead>
                    <tr>
                      <th scope="col">Number</th>
                      <th scope="col">Joint</th>
                      <th scope="col">Work</th>
                      <th scope="col" className="num">
                        Dial
                      </th>
                      <th scope="col">Issued</th>
                      <th scope="col">Recorded</th>
                    </tr>
                  </thead>
                  <tbody>
                    {rows.map((row) => (
                      <Row key={row.id} row={row} />
                    ))}
                  </tbody>
                </table>
              </SideScroll>
              <Pager page={page} pageSize={ROWS} total={total} noun="setting" onPage={setPage} />
              <ExportList
                name="issued-settings"
                headings={[
                  'Number',
                  'Joint',
                  'Work',
                  'Starts on (YYYY-MM-DD)',
                  'Ends on (YYYY-MM-DD)',
                  'Dial (unit beside it)',
                  'Unit of the dial',
                  'Issued by',
                  'Issued at (ISO 8601)',
                  'Recorded',
                  'Refusals overridden',
                ]}
                rows={() => allRows('setting.list', { jointId: null, page: 1, pageSize: ROWS })}
                cells={(row) => [
                  row.number,
                  row.tag,
                  row.kind,
                  row.startsOn,
                  row.endsOn,
                  row.dial?.value ?? null,
                  row.dial === null ? null : unitLabel(row.dial.unit),
                  row.issuedBy,
                  row.issuedAt,
                  row.recorded ? 'yes' : 'not yet',
                  row.overrides,
                ]}
              />
            </>
          )
        }
      </Asked>
    </Desk>
  );
}

function Row({ row }: { readonly row: SettingSummary }) {
  const { timeZone } = useRegister();
  return (
    <tr>
      <th scope="row">
        <Link href={`/settings/${row.id}`}>{row.number}</Link>
        {row.overrides > 0 && <div className="flag">{counted(row.overrides, 'refusal')} overridden</div>}
      </th>
      <td>{row.tag}</td>
      <td>
        {row.kind}
        <div className="small">{span(row.startsOn, row.endsOn)}</div>
      </td>
      <td className="num">
        <DialText dial={row.dial} />
      </td>
      <td>
        {row.issuedBy}
        <div className="small">{moment(row.issuedAt, timeZone)}</div>
      </td>
      <td>{row.recorded ? 'yes' : <span className="small">not yet</span>}</td>
    </tr>
  );
}

function RegisterHead() {
  const register = useRegister();
  return (
    <>
      <section>
        <h2>Register</h2>
        <dl className="lines">
          <div>
            <dt>Site</dt>
            <dd>{register.siteName}</dd>
          </div>
          <div>
            <dt>Joints</dt>
            <dd>{count(register.joints)}</dd>
          </div>
          <div>
            <dt>Tools</dt>
            <dd>{count(register.tools)}</dd>
          </div>
          <div>
            <dt>Records</dt>
            <dd>{count(register.events)}</dd>
          </div>
          <div>
            <dt>Time zone</dt>
            <dd>{register.timeZone}</dd>
          </div>
          <div>
            <dt>Version</dt>
            <dd>
              {register.appVersion}, calculations {register.coreVersion}
            </dd>
          </div>
        </dl>
      </section>
      <section>
        <h2>Head of the chain</h2>
        <p className="small seal">{register.head ?? 'nothing recorded yet'}</p>
        <p className="faint">
          Each record carries the hash of the one before it. A copy of this head, kept elsewhere, shows
          whether anything recorded so far was cut off or rewritten. It shows tampering; it does not prevent
          it.
        </p>
      </section>
      <section>
        <h2>Folder</h2>
        <p className="small seal">{register.folder}</p>
      </section>
    </>
  );
}
