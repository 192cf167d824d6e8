import { type KeyboardEvent, useState } from 'react';
import { Link } from 'wouter';
import type { DueRow } from '../../../core/contract/check.ts';
import { useAskAll } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { counted } from '../../app/text/number.ts';
import { day } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { DueMark, DueShape } from '../../components/due-mark.tsx';
import { walkEntries } from '../../components/list-keys.ts';
import { RoomIndex } from '../tools/room-index.tsx';
import { DUES_ON_A_PAGE } from './due-search.ts';
import { type CalendarDay, daysToEndOf, monthAfter, monthOf, monthWords, weeksOf } from './weeks.ts';

/** Ten years: as far as the request looks ahead. */
const FARTHEST = 3660;
const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

/** A month of what comes due, as a table of weeks. */
export function DueCalendar() {
  const { today } = useRegister();
  const [month, setMonth] = useState(() => monthOf(today));
  const ahead = daysToEndOf(month, today);
  const dues = useAskAll('tool.due', {
    on: null,
    withinDays: Math.min(FARTHEST, ahead),
    text: '',
    class: null,
    all: true,
    page: 1,
    pageSize: DUES_ON_A_PAGE,
  });
  const turn = (months: number) => setMonth(monthAfter(month, months));
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    if (event.key === 'PageUp' || event.key === 'PageDown') {
      event.preventDefault();
      turn(event.key === 'PageUp' ? -1 : 1);
      return;
    }
    walkEntries(event);
  };
  return (
    <Desk indexLabel="Tool room" index={<RoomIndex />}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the keys turn the month and carry the focus between the links inside */}
      <div onKeyDown={onKeyDown}>
        <Title
          name={`Due in ${monthWords(month)}`}
          under={`As on ${day(today)}. Each entry stands on its last good day; what is counted by use alone has none.`}
          kind={
            <Link className="quiet no-print" href="/due">
              List
            </Link>
          }
        />
        <div className="row no-print turn">
          <button type="button" className="quiet" aria-keyshortcuts="PageUp" onClick={() => turn(-1)}>
            Month before
          </button>
          <button type="button" className="quiet" onClick={() => setMonth(monthOf(today))}>
            This month
          </button>
          <button type="button" className="quiet" aria-keyshortcuts="PageDown" onClick={() => turn(1)}>
            Month after
          </button>
          <span className="small">Page up and page down turn the month.</span>
        </div>
        <Asked asking={dues} what="what is due">
          {(rows) => <Month month={month} today={today} rows={rows} />}
        </Asked>
        {ahead > FARTHEST && <p className="small">The due list looks ten years ahead, not farther.</p>}
        <p className="exports no-print">
          <button type="button" className="link small" onClick={() => window.print()}>
            Print this page
          </button>
        </p>
      </div>
    </Desk>
  );
}

interface MonthProps {
  readonly month: string;
  readonly today: string;
  readonly rows: readonly DueRow[];
}

function Month({ month, today, rows }: MonthProps) {
  const dated = rows.filter(({ on }) => on !== null);
  const inMonth = dated.filter(({ on }) => on !== null && monthOf(on) === month);
  const before = dated.filter(({ on, state }) => state === 'overdue' && on !== null && monthOf(on) < month);
  return (
    <>
      <p className="lead-in">
        {inMonth.length === 0
          ? 'Nothing has its last good day in this month.'
          : `${counted(inMonth.length, 'thing')} with the last good day in this month.`}{' '}
        {before.length > 0 && (
          <Link href="/due">
            <DueMark state="overdue" words={`${counted(before.length, 'thing')} overdue from before`} />
          </Link>
        )}
      </p>
      <table className="month">
        <thead>
          <tr>
            <th scope="col">Week</th>
            {WEEKDAYS.map((weekday) => (
              <th key={weekday} scope="col">
                {weekday}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {weeksOf(month).map((week) => (
            <tr key={week.days[0]?.date}>
              <th scope="row">{week.number}</th>
              {week.days.map((each) => (
                <Day
                  key={each.date}
                  day={each}
                  today={today}
                  rows={dated.filter(({ on }) => on === each.date)}
                />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

interface DayProps {
  readonly day: CalendarDay;
  readonly today: string;
  readonly rows: readonly DueRow[];
}

function Day({ day: { date, number, inMonth }, today, rows }: DayProps) {
  return (
    <td className={inMonth ? undefined : 'other'} aria-current={date === today ? 'date' : undefined}>
      <span className="number">
        <span aria-hidden="true">{number}</span>
        <span className="unseen">{day(date)}</span>
        {date === today && <span className="small"> today</span>}
      </span>
      {rows.length > 0 && (
        <ul className="plain-list">
          {rows.map((row) => (
            <li key={`${row.toolId} ${row.what}`}>
              <Link href={`/tools/${row.toolId}`} data-entry title={`${row.what}: ${row.reason}`}>
                <DueShape state={row.state} />
                <span>
                  <b>{row.number}</b> {row.what}
                  <span className="unseen">, {row.state}</span>
                </span>
              </Link>
            </li>
          ))}
        </ul>
      )}
    </td>
  );
}
