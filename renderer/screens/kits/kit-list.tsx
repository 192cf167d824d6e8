import { useState } from 'react';
import { Link } from 'wouter';
import type { KitRow } from '../../../core/contract/custody.ts';
import { allRows, useAsk } from '../../app/ask.ts';
import { counted } from '../../app/text/number.ts';
import { span } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { ExportList } from '../../components/export-list.tsx';
import { walkEntries } from '../../components/list-keys.ts';
import { Pager } from '../../components/pager.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { RoomIndex } from '../tools/room-index.tsx';

const ROWS = 30;

/** Tools put aside for jobs, by the day they are needed. */
export function KitList() {
  const [closed, setClosed] = useState(false);
  const [page, setPage] = useState(1);
  const kits = useAsk('kit.list', { closed, page, pageSize: ROWS }, { keep: true });
  return (
    <Desk indexLabel="Tool room" index={<RoomIndex />}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: arrow keys only carry the focus between the links inside */}
      <div onKeyDown={walkEntries}>
        <Title
          name="Kits"
          under="Tools put aside for a job and handed out together; an open kit reserves them for its days."
          kind={
            <Link className="act no-print" href="/kits/new">
              New kit
            </Link>
          }
        />
        <label className="check no-print">
          <input
            type="checkbox"
            checked={closed}
            onChange={(event) => {
              setClosed(event.target.checked);
              setPage(1);
            }}
          />
          With closed kits
        </label>
        <Asked asking={kits} what="the kits">
          {({ rows, total }) =>
            rows.length === 0 ? (
              <p className="empty">No kit is open. Put one together for the next job.</p>
            ) : (
              <>
                <SideScroll>
                  <table className="tab links">
                    <thead>
                      <tr>
                        <th scope="col">Kit</th>
                        <th scope="col">Needed</th>
                        <th scope="col" className="num">
                          Tools
                        </th>
                        <th scope="col">Stands against it</th>
                        <th scope="col">State</th>
                      </tr>
                    </thead>
                    <tbody>
                      {rows.map((kit) => (
                        <Row key={kit.id} kit={kit} />
                      ))}
                    </tbody>
                  </table>
                </SideScroll>
                <Pager page={page} pageSize={ROWS} total={total} noun="kit" onPage={setPage} />
                <ExportList
                  name="kits"
                  headings={[
                    'Kit',
                    'Job or order',
                    'From (YYYY-MM-DD)',
                    'To (YYYY-MM-DD)',
                    'Tools',
                    'Joints',
                    'Stands against it',
                    'State',
                  ]}
                  rows={() => allRows('kit.list', { closed, page: 1, pageSize: ROWS })}
                  cells={(kit) => [
                    kit.data.name,
                    kit.data.reference,
                    kit.data.from,
                    kit.data.to,
                    kit.tools.map(({ number }) => number).join(' '),
                    kit.joints.map(({ tag }) => tag).join(' '),
                    hindrances(kit).join('; '),
                    kit.data.closed ? 'closed' : 'open',
                  ]}
                />
              </>
            )
          }
        </Asked>
      </div>
    </Desk>
  );
}

function Row({ kit }: { readonly kit: KitRow }) {
  const against = hindrances(kit);
  return (
    <tr>
      <th scope="row">
        <Link href={`/kits/${kit.id}`} data-entry>
          {kit.data.name}
        </Link>
        {kit.data.reference && <div className="small">{kit.data.reference}</div>}
      </th>
      <td className="date">{span(kit.data.from, kit.data.to)}</td>
      <td className="num">{kit.tools.length}</td>
      <td>
        {against.length === 0 ? (
          <span className="small">nothing known</span>
        ) : (
          <span className="flag">{against.join(', ')}</span>
        )}
      </td>
      <td>{kit.data.closed ? 'closed' : 'open'}</td>
    </tr>
  );
}

/** What stands against a kit, counted: "2 dues", "1 clash". A closed kit reserves nothing. */
function hindrances(kit: KitRow): string[] {
  if (kit.data.closed) return [];
  const dues = kit.tools.reduce((sum, { due }) => sum + due.length, 0);
  const barred = kit.tools.filter(({ status }) => status === 'quarantined' || status === 'scrapped');
  return [
    ...barred.map(({ number, status }) => `${number} ${status}`),
    ...(dues === 0 ? [] : [counted(dues, 'due')]),
    ...(kit.clashes.length === 0 ? [] : [`${kit.clashes.length} also in another kit`]),
  ];
}
