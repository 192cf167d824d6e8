import { useId } from 'react';
import { useSlash } from '../../components/list-keys.ts';
import { TOOL_CLASSES } from '../../components/tool-classes.ts';
import type { DueSearch } from './due-search.ts';

/** Days ahead that are asked for most; a month has 31 at most, so that "a month" misses none. */
const SPANS = [
  { days: 0, words: 'overdue only' },
  { days: 7, words: '7 days' },
  { days: 31, words: '31 days' },
  { days: 92, words: '92 days' },
  { days: 184, words: '184 days' },
  { days: 366, words: '366 days' },
  { days: 1827, words: '5 years' },
];

interface DueFilterProps {
  readonly search: DueSearch;
  readonly onChange: (part: Partial<DueSearch>) => void;
}

export function DueFilter({ search, onChange }: DueFilterProps) {
  const id = useId();
  const slash = useSlash();
  const spans = SPANS.some(({ days }) => days === search.withinDays)
    ? SPANS
    : [...SPANS, { days: search.withinDays, words: `${search.withinDays} days` }].sort(
        (one, other) => one.days - other.days,
      );
  return (
    <div className="filters no-print">
      <div className="field">
        <label htmlFor={`${id}-text`}>Find</label>
        <input
          id={`${id}-text`}
          type="search"
          aria-keyshortcuts="/"
          placeholder="Number, serial, place ( / )"
          ref={slash}
          value={search.text}
          onChange={(event) => onChange({ text: event.target.value })}
        />
      </div>
      <div className="field">
        <label htmlFor={`${id}-class`}>Class of tool</label>
        <select
          id={`${id}-class`}
          value={search.class ?? ''}
          onChange={(event) =>
            onChange({ class: TOOL_CLASSES.find((each) => each === event.target.value) ?? null })
          }
        >
          <option value="">All classes</option>
          {TOOL_CLASSES.map((each) => (
            <option key={each}>{each}</option>
          ))}
        </select>
      </div>
      <div className="field">
        <label htmlFor={`${id}-within`}>Looking ahead</label>
        <select
          id={`${id}-within`}
          value={search.withinDays}
          onChange={(event) => onChange({ withinDays: Number(event.target.value) })}
        >
          {spans.map(({ days, words }) => (
            <option key={days} value={days}>
              {words}
            </option>
          ))}
        </select>
      </div>
      <div className="field">
        <label htmlFor={`${id}-on`}>As on</label>
        <input
          id={`${id}-on`}
          type="date"
          value={search.on ?? ''}
          onChange={(event) => onChange({ on: event.target.value === '' ? null : event.target.value })}
        />
      </div>
      <label className="check">
        <input
          type="checkbox"
          checked={search.all}
          onChange={(event) => onChange({ all: event.target.checked })}
        />
        With what is in date
      </label>
    </div>
  );
}
