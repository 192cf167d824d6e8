import { useId, useState } from 'react';
import { Link } from 'wouter';
import { leakCause } from '../../../core/contract/leak.ts';
import type { RequestInput, RequestOutput } from '../../../core/contract/requests.ts';
import { allRows, useAsk } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { ExportList } from '../../components/export-list.tsx';
import { type Option, same } from '../../components/fields.tsx';
import { Pager } from '../../components/pager.tsx';
import { LeakIndex } from './leak-index.tsx';
import { LeakTable } from './leak-table.tsx';
import { causesNow, causeWords, clockWords, closedWords, positionWords } from './leak-words.ts';

type Search = RequestInput<'leak.list'>;

const PAGE = 50;
const START: Search = {
  state: null,
  unitId: null,
  phase: null,
  cause: null,
  repeatedOnly: false,
  longerThan: null,
  page: 1,
  pageSize: PAGE,
};
const DAYS = [7, 15, 30, 90];

/** Every leak that was recorded: where, how much, what it is put down to, and how long it stood. */
export function LeakList() {
  const [search, setSearch] = useState(START);
  const found = useAsk('leak.list', search, { keep: true });
  const change = (changes: Partial<Search>) => setSearch({ ...search, page: 1, ...changes });
  return (
    <Desk
      indexLabel="Leaks and joints"
      index={<LeakIndex />}
      doings={
        <Link className="act" href="/leaks/verify">
          Which joints to verify first
        </Link>
      }
    >
      <Title
        name="Leaks"
        under="A leak is reported as a step on the page of its joint; a leak test that failed counts as one. Causes may be revised, and both stay on record."
      />
      <Filters search={search} onChange={change} />
      <Asked asking={found} what="the leaks">
        {(list) => <Found list={list} search={search} onPage={(page) => change({ page })} />}
      </Asked>
    </Desk>
  );
}

interface FiltersProps {
  readonly search: Search;
  readonly onChange: (changes: Partial<Search>) => void;
}

function Filters({ search, onChange }: FiltersProps) {
  const units = useAsk('unit.list', {});
  return (
    <div className="filters no-print">
      <Filter
        label="State"
        value={search.state}
        any="open and closed"
        options={same(['open', 'closed'])}
        onChoose={(state) => onChange({ state: state as Search['state'] })}
      />
      <Filter
        label="Plant unit"
        value={search.unitId}
        any="all"
        options={(units.data?.rows ?? []).map(({ id, name }) => ({ value: id, words: name }))}
        onChoose={(unitId) => onChange({ unitId })}
      />
      <Filter
        label="Found during"
        value={search.phase}
        any="any"
        options={same(['leak test', 'start-up', 'in service', 'not known'])}
        onChoose={(phase) => onChange({ phase: phase as Search['phase'] })}
      />
      <Filter
        label="Cause as known now"
        value={search.cause}
        any="any"
        options={same(leakCause.options)}
        onChoose={(cause) => onChange({ cause: cause as Search['cause'] })}
      />
      <Filter
        label="Stood longer than"
        value={search.longerThan === null ? null : String(search.longerThan)}
        any="any time"
        options={DAYS.map((days) => ({ value: String(days), words: `${days} days` }))}
        onChoose={(days) => onChange({ longerThan: days === null ? null : Number(days) })}
      />
      <label className="check">
        <input
          type="checkbox"
          checked={search.repeatedOnly}
          onChange={({ target }) => onChange({ repeatedOnly: target.checked })}
        />
        Repeated leakers only
      </label>
    </div>
  );
}

interface FilterProps {
  readonly label: string;
  readonly value: string | null;
  readonly any: string;
  readonly options: readonly Option[];
  readonly onChoose: (value: string | null) => void;
}

function Filter({ label, value, any, options, onChoose }: FilterProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value ?? ''} onChange={({ target }) => onChoose(target.value || null)}>
        <option value="">{any}</option>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.words}
          </option>
        ))}
      </select>
    </div>
  );
}

interface FoundProps {
  readonly list: RequestOutput<'leak.list'>;
  readonly search: Search;
  readonly onPage: (page: number) => void;
}

function Found({ list, search, onPage }: FoundProps) {
  return (
    <>
      <p className="finding">{list.finding}</p>
      {list.causes.length > 0 && (
        <p className="small">
          Put down to: {list.causes.map(({ cause, count }) => `${cause} (${count})`).join(', ')}. Several may
          stand together.
        </p>
      )}
      {list.rows.length > 0 && <LeakTable rows={list.rows} withJoint />}
      <Pager page={search.page} pageSize={PAGE} total={list.total} noun="leak" onPage={onPage} />
      <ExportList
        name="leaks"
        headings={[
          'joint',
          'plant unit',
          'found at',
          'origin',
          'phase',
          'position',
          'medium',
          'rate',
          'causes now',
          'causes first',
          'repair',
          'open, days',
          'done and checked',
          'repeated leaker',
          'by',
        ]}
        rows={() => allRows('leak.list', search)}
        cells={(leak) => [
          leak.tag,
          leak.unitName,
          leak.happenedAt,
          leak.origin,
          leak.phase,
          positionWords(leak),
          leak.medium,
          leak.rate,
          causesNow(leak).map(causeWords).join('; '),
          leak.firstCauses.map(causeWords).join('; '),
          clockWords(leak),
          Math.floor(leak.openFor / 86_400),
          closedWords(leak) || leak.action,
          leak.repeated ? 'yes' : 'no',
          leak.by,
        ]}
      />
    </>
  );
}
