import { useState } from 'react';
import { Link } from 'wouter';
import type { ChecklistRow } from '../../../core/contract/check.ts';
import { useAsk } from '../../app/ask.ts';
import { counted } from '../../app/text/number.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { ExportList } from '../../components/export-list.tsx';
import { useSlash, walkEntries } from '../../components/list-keys.ts';
import { SideScroll } from '../../components/side-scroll.tsx';
import { RoomIndex } from '../tools/room-index.tsx';
import { everyWords, overdueWords } from './checklist-words.ts';

/** The site's lists of what is looked at on its tools, each with where it comes from. */
export function ChecklistList() {
  const lists = useAsk('checklist.list', {});
  const [text, setText] = useState('');
  const [retired, setRetired] = useState(false);
  const slash = useSlash();
  return (
    <Desk indexLabel="Tool room" index={<RoomIndex />}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: arrow keys only carry the focus between the links inside */}
      <div onKeyDown={walkEntries}>
        <Title
          name="Checklists"
          under="Entered by the site from its tools’ own instructions. Nothing is shipped; a change makes a new version."
          kind={
            <Link className="act no-print" href="/checklists/new">
              New checklist
            </Link>
          }
        />
        <div className="filters no-print">
          <input
            type="search"
            aria-label="Find a checklist"
            aria-keyshortcuts="/"
            placeholder="Name, kind, class, source"
            ref={slash}
            value={text}
            onChange={(event) => setText(event.target.value)}
          />
          <label className="check">
            <input type="checkbox" checked={retired} onChange={(event) => setRetired(event.target.checked)} />
            With retired lists
          </label>
        </div>
        <Asked asking={lists} what="the checklists">
          {({ rows }) => (
            <Found
              rows={rows.filter((row) => (retired || !row.data.retired) && holds(row, text))}
              any={rows.length > 0}
            />
          )}
        </Asked>
      </div>
    </Desk>
  );
}

/** Every word that was typed, in any order. */
function holds({ data }: ChecklistRow, typed: string): boolean {
  const words = [data.name, data.kind, ...data.classes, data.source].join(' ').toLowerCase();
  return typed
    .toLowerCase()
    .split(/\s+/)
    .every((word) => words.includes(word));
}

function Found({ rows, any }: { readonly rows: readonly ChecklistRow[]; readonly any: boolean }) {
  if (rows.length === 0) {
    return (
      <p className="empty">
        {any
          ? 'No list matches.'
          : 'The site has no checklist yet. Enter the first from a tool’s own instructions.'}
      </p>
    );
  }
  return (
    <>
      <SideScroll>
        <table className="tab links">
          <thead>
            <tr>
              <th scope="col">Checklist</th>
              <th scope="col">For</th>
              <th scope="col">Asked for</th>
              <th scope="col">When overdue</th>
              <th scope="col" className="num">
                Questions
              </th>
              <th scope="col">Source</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <Row key={row.id} row={row} />
            ))}
          </tbody>
        </table>
      </SideScroll>
      <p className="pager" role="status">
        {counted(rows.length, 'checklist')}
      </p>
      <ExportList
        name="checklists"
        headings={[
          'Checklist',
          'Kind',
          'Classes',
          'Every days',
          'Every uses',
          'When overdue',
          'Version',
          'Source',
        ]}
        rows={() => Promise.resolve([...rows])}
        cells={({ version, data }) => [
          data.name,
          data.kind,
          data.classes.join(', '),
          data.everyDays,
          data.everyUses,
          overdueWords(data),
          version,
          data.source,
        ]}
      />
    </>
  );
}

function Row({ row: { id, version, data } }: { readonly row: ChecklistRow }) {
  return (
    <tr>
      <th scope="row">
        <Link href={`/checklists/${id}`} data-entry>
          {data.name}
        </Link>
        <div className="small">
          {data.kind}, version {version}
          {data.retired && ', retired'}
        </div>
      </th>
      <td>{data.classes.join(', ')}</td>
      <td>{everyWords(data)}</td>
      <td>{overdueWords(data)}</td>
      <td className="num">{data.questions.length}</td>
      <td className="small">{data.source}</td>
    </tr>
  );
}
