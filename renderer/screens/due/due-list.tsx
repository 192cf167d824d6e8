import { Link } from 'wouter';
import { allRows } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { day } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { ExportList } from '../../components/export-list.tsx';
import { walkEntries } from '../../components/list-keys.ts';
import { Pager } from '../../components/pager.tsx';
import { RoomIndex } from '../tools/room-index.tsx';
import { DueFilter } from './due-filter.tsx';
import { DUES_ON_A_PAGE, type DueSearch, useDueSearch } from './due-search.ts';
import { DueTable } from './due-table.tsx';

/** What of the tool room is overdue, lapses before it is needed, or comes due. */
export function DueList() {
  const { search, found, change } = useDueSearch();
  const { today } = useRegister();
  return (
    <Desk indexLabel="Tool room" index={<RoomIndex />}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: arrow keys only carry the focus between the links inside */}
      <div onKeyDown={walkEntries}>
        <Title
          name="Due list"
          under={dueWords(search, today)}
          kind={
            <Link className="quiet no-print" href="/due/calendar">
              Calendar
            </Link>
          }
        />
        <DueFilter search={search} onChange={change} />
        <Asked asking={found} what="what is due">
          {({ rows, total }) =>
            rows.length === 0 ? (
              <p className="empty">
                Nothing is due by this filter. Only what a certificate, a rule of the site or a checklist asks
                for can be due.
              </p>
            ) : (
              <>
                <DueTable rows={rows} />
                <Pager
                  page={search.page}
                  pageSize={DUES_ON_A_PAGE}
                  total={total}
                  noun="due"
                  onPage={(page) => change({ page })}
                />
                <ExportList
                  name={`due-${search.on ?? today}`}
                  headings={[
                    'Number',
                    'Class',
                    'Status',
                    'What',
                    'State',
                    'Last good day (YYYY-MM-DD)',
                    'Uses left',
                    'Reason',
                    'Needed for',
                    'Needed from (YYYY-MM-DD)',
                    'Needed to (YYYY-MM-DD)',
                  ]}
                  rows={() => allRows('tool.due', search)}
                  cells={(row) => [
                    row.number,
                    row.class,
                    row.status,
                    row.what,
                    row.state,
                    row.on ?? (row.usesLeft === null ? null : 'by use'),
                    row.usesLeft ?? 'not counted',
                    row.reason,
                    row.neededFor?.kit ?? '',
                    row.neededFor?.from ?? '',
                    row.neededFor?.to ?? '',
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

/** What the list shows, in words: on paper nothing else says it. */
function dueWords(search: DueSearch, today: string): string {
  const parts = [
    `As on ${day(search.on ?? today)}`,
    search.withinDays === 0 ? 'overdue only' : `${search.withinDays} days ahead`,
    search.class ?? 'all classes',
    search.text !== '' && `with “${search.text}”`,
    search.all && 'with what is in date',
  ];
  return parts.filter(Boolean).join(' · ');
}
