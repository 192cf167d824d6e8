import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { DueRow } from '../../../core/contract/check.ts';
import type { KitRow } from '../../../core/contract/custody.ts';
import type { ToolSummary } from '../../../core/contract/tool.ts';
import { useAsk, useAskAll } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { counted } from '../../app/text/number.ts';
import { day, span } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { DueMark } from '../../components/due-mark.tsx';
import { type FoundTool, ScanField } from '../../components/scan-field.tsx';
import { addToDesk, deskState } from '../custody/desk-state.ts';
import { DueTable } from '../due/due-table.tsx';
import { RoomIndex } from './room-index.tsx';

const SOON_DAYS = 31;
const SHOWN = 12;

/** What the keeper sees first: what is overdue, what comes due, who has what, which kits are needed next. */
export function RoomStart() {
  const { today } = useRegister();
  const dues = useAsk('tool.due', {
    on: null,
    withinDays: SOON_DAYS,
    text: '',
    class: null,
    all: false,
    page: 1,
    pageSize: 200,
  });
  return (
    <Desk indexLabel="Tool room" index={<RoomIndex />} margin={<RoomMargin />}>
      <Title name="Tool room" under={`As on ${day(today)}`} />
      <Scan />
      <Asked asking={dues} what="what is due">
        {({ rows, total }) => <Dues rows={rows} total={total} />}
      </Asked>
      <WhoHasWhat />
      {dues.data && <NotKnown rows={dues.data.rows} />}
    </Desk>
  );
}

/** Opens what is scanned, or lays it on the desk one after the other. */
function Scan() {
  const [, goTo] = useLocation();
  const [toDesk, setToDesk] = useState(false);
  const [laid, setLaid] = useState(() => deskState.get().tools.length);
  const onFound = (tool: FoundTool): string => {
    if (!toDesk) {
      goTo(`/tools/${tool.id}`);
      return '';
    }
    addToDesk(tool);
    const { tools } = deskState.get();
    setLaid(tools.length);
    return `${tool.number} lies on the desk, ${counted(tools.length, 'tool')} now.`;
  };
  return (
    <div className="take">
      <ScanField label="Scan or type a tool" act={toDesk ? 'Add' : 'Open'} onFound={onFound} />
      <div className="no-print">
        <label className="check">
          <input type="checkbox" checked={toDesk} onChange={(event) => setToDesk(event.target.checked)} />
          Lay it on the custody desk
        </label>
        {laid > 0 && (
          <Link className="small" href="/custody">
            {counted(laid, 'tool')} on the desk
          </Link>
        )}
      </div>
    </div>
  );
}

function Dues({ rows, total }: { readonly rows: readonly DueRow[]; readonly total: number }) {
  const overdue = rows.filter(({ state }) => state === 'overdue');
  const coming = rows.filter(({ state }) => state !== 'overdue' && state !== 'not known');
  return (
    <>
      <section aria-label="Overdue">
        <h2>Overdue</h2>
        {overdue.length === 0 ? <p className="small">Nothing is overdue.</p> : <Few rows={overdue} />}
      </section>
      <section aria-label="Comes due">
        <h2>Due within {SOON_DAYS} days, or before it is needed</h2>
        {coming.length === 0 ? <p className="small">Nothing comes due.</p> : <Few rows={coming} />}
      </section>
      {total > rows.length && (
        <p className="small">{counted(total - rows.length, 'due')} more stand on the due list.</p>
      )}
    </>
  );
}

function Few({ rows }: { readonly rows: readonly DueRow[] }) {
  return (
    <>
      <DueTable rows={rows.slice(0, SHOWN)} />
      {rows.length > SHOWN && (
        <Link className="small" href="/due">
          {counted(rows.length - SHOWN, 'due')} more on the due list
        </Link>
      )}
    </>
  );
}

/** What a rule asks for and the register can't answer: it is not in date, and it is not forgotten. */
function NotKnown({ rows }: { readonly rows: readonly DueRow[] }) {
  const unknown = rows.filter(({ state }) => state === 'not known');
  if (unknown.length === 0) return null;
  return (
    <section aria-label="Not known">
      <h2>Asked for, and not known</h2>
      <dl className="lines words">
        {[...Map.groupBy(unknown, ({ what }) => what)].map(([what, dues]) => (
          <div key={what}>
            <dt>
              <DueMark state="not known" words={what} />
            </dt>
            <dd>
              {dues.map((due, at) => (
                <span key={due.toolId}>
                  {at > 0 && ', '}
                  <Link href={`/tools/${due.toolId}`}>{due.number}</Link>
                </span>
              ))}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

const AWAY = ['issued', 'at the laboratory', 'quarantined'] as const;

function WhoHasWhat() {
  return (
    <section aria-label="Who has what">
      <h2>Who has what</h2>
      <div className="away">
        {AWAY.map((status) => (
          <Away key={status} status={status} />
        ))}
      </div>
    </section>
  );
}

function Away({ status }: { readonly status: (typeof AWAY)[number] }) {
  const found = useAskAll('tool.list', {
    text: '',
    class: null,
    status,
    sort: 'number',
    direction: 'asc',
    page: 1,
    pageSize: 200,
  });
  return (
    <Asked asking={found} what="the tools">
      {(rows) => (
        <div>
          <h3>
            {AWAY_WORDS[status]} <span className="small">{counted(rows.length, 'tool')}</span>
          </h3>
          {rows.length > 0 && (
            <ul className="plain-list">
              {byHolder(rows).map(([holder, tools]) => (
                <li key={holder}>
                  {status === 'issued' && <b>{holder} </b>}
                  {tools.map((tool, at) => (
                    <span key={tool.id}>
                      {at > 0 && ', '}
                      <Link href={`/tools/${tool.id}`}>{tool.number}</Link>
                    </span>
                  ))}
                </li>
              ))}
            </ul>
          )}
        </div>
      )}
    </Asked>
  );
}

const AWAY_WORDS: Readonly<Record<(typeof AWAY)[number], string>> = {
  issued: 'Issued',
  'at the laboratory': 'At the laboratory',
  quarantined: 'Quarantined',
};

/** A tool issued before holders were recorded has none by name. */
function byHolder(rows: readonly ToolSummary[]): [string, ToolSummary[]][] {
  const held = new Map<string, ToolSummary[]>();
  for (const row of rows) {
    const holder = row.holder ?? 'holder not known';
    held.set(holder, [...(held.get(holder) ?? []), row]);
  }
  return [...held].sort(([one], [other]) => one.localeCompare(other));
}

function RoomMargin() {
  const { today } = useRegister();
  const kits = useAsk('kit.list', { closed: false, page: 1, pageSize: SHOWN });
  const next = (kits.data?.rows ?? []).filter(({ data }) => data.to >= today);
  return (
    <section>
      <h2>Kits needed next</h2>
      <Asked asking={kits} what="the kits">
        {() =>
          next.length === 0 ? (
            <p className="small">No kit is open.</p>
          ) : (
            <ul className="plain-list stack tight">
              {next.map((kit) => (
                <NextKit key={kit.id} kit={kit} />
              ))}
            </ul>
          )
        }
      </Asked>
    </section>
  );
}

function NextKit({ kit }: { readonly kit: KitRow }) {
  const dues = kit.tools.filter(({ due }) => due.length > 0);
  return (
    <li>
      <Link href={`/kits/${kit.id}`}>{kit.data.name}</Link>
      <div className="small">
        {span(kit.data.from, kit.data.to)}, {counted(kit.tools.length, 'tool')}
      </div>
      {dues.length > 0 && <div className="flag">{counted(dues.length, 'tool')} due before it ends</div>}
      {kit.clashes.length > 0 && <div className="flag">{kit.clashes.length} also in another kit</div>}
    </li>
  );
}
