import { type ReactNode, useDeferredValue, useId, useState } from 'react';
import { Link } from 'wouter';
import type { VerifyRow } from '../../../core/contract/leak-log.ts';
import type { RequestOutput } from '../../../core/contract/requests.ts';
import { allRows, useAsk } from '../../app/ask.ts';
import { remembered, useRemembered } from '../../app/remember.ts';
import { count, counted, inUnit, sensible } from '../../app/text/number.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { ExportList } from '../../components/export-list.tsx';
import { Unknown } from '../../components/number.tsx';
import { Pager } from '../../components/pager.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { LeakIndex } from './leak-index.tsx';
import { START_TERMS, type TermsForm, termsInput } from './verify-terms.ts';

const PAGE = 30;
const kept = remembered('verify-terms', START_TERMS);

type List = RequestOutput<'leak.verifyFirst'>;

/** Joints in the order in which checking one is worth most, with the reasons and what the order rests on. */
export function VerifyFirst() {
  const [form, setForm] = useRemembered(kept);
  const [page, setPage] = useState(1);
  const asked = useDeferredValue(form);
  const search = termsInput(asked, page, PAGE);
  const found = useAsk('leak.verifyFirst', search, { keep: true });
  const change = (changes: Partial<TermsForm>) => {
    setForm({ ...form, ...changes });
    setPage(1);
  };
  return (
    <Desk
      indexLabel="Leaks and joints"
      index={<LeakIndex />}
      margin={found.data && <Basis list={found.data} />}
    >
      <Title
        name="Which joints to verify first"
        under="An order to check in, and why. It is no statement that a joint is tight, and none that one is not."
      />
      <Terms form={form} onChange={change} />
      <Asked asking={found} what="the joints">
        {(list) => (
          <>
            <p className="finding">{findingOf(list)}</p>
            {list.leaking > 0 && (
              <p className="small">
                {counted(list.leaking, 'joint')} with an open leak {list.leaking === 1 ? 'is' : 'are'} not on
                this list: <Link href="/leaks">repair comes first</Link>.
              </p>
            )}
            <VerifyTable rows={list.rows} from={(page - 1) * PAGE} />
            <Pager page={page} pageSize={PAGE} total={list.total} noun="joint" onPage={setPage} />
            <ExportList
              name="verify-first"
              headings={[
                'joint',
                'plant unit',
                'class',
                'weighed as',
                'leaks',
                'years',
                'doubt factor',
                'probability',
                'worth',
                'why',
              ]}
              rows={() => allRows('leak.verifyFirst', search)}
              cells={(row) => [
                row.tag,
                row.unitName,
                row.class,
                row.weighedAs,
                row.leaks,
                row.years,
                row.factor,
                row.probability,
                row.worth,
                row.reasons.join('; '),
              ]}
            />
          </>
        )}
      </Asked>
    </Desk>
  );
}

function findingOf({ total, worthwhile }: List): string {
  if (worthwhile === null) {
    return 'Too few joint-years are on record to say how likely a leak is: the order is by class and doubt alone.';
  }
  return `Of ${counted(total, 'joint')} a check of ${count(worthwhile)} is worth more than it costs, by the terms below.`;
}

interface TermsProps {
  readonly form: TermsForm;
  readonly onChange: (changes: Partial<TermsForm>) => void;
}

function Terms({ form, onChange }: TermsProps) {
  const units = useAsk('unit.list', {});
  const own = (name: keyof TermsForm, label: string, hint: string) => (
    <Term label={label} hint={hint}>
      {(id) => (
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          aria-describedby={`${id}-hint`}
          value={form[name]}
          onChange={({ target }) => onChange({ [name]: target.value })}
        />
      )}
    </Term>
  );
  return (
    <details className="folded no-print" open>
      <summary>
        Terms <span className="small">assumptions to start from; put in the site’s own</span>
      </summary>
      <div className="form fold">
        <div className="fields">
          <Term label="Plant unit" hint="Rates are learned within it">
            {(id) => (
              <select
                id={id}
                aria-describedby={`${id}-hint`}
                value={form.unitId}
                onChange={({ target }) => onChange({ unitId: target.value })}
              >
                <option value="">all</option>
                {units.data?.rows.map((unit) => (
                  <option key={unit.id} value={unit.id}>
                    {unit.name}
                  </option>
                ))}
              </select>
            )}
          </Term>
          {own('days', 'Time ahead, days', 'Until the next opportunity')}
          {own('cyclesLimit', 'Cycles that raise doubt', 'Thermal cycles since make-up; empty for none')}
          {own('mild', 'Weight of a leak, mild', 'On one scale of the site’s')}
          {own('intermediate', 'Weight, intermediate', 'On the same scale')}
          {own('critical', 'Weight, critical', 'On the same scale')}
          {own('effect', 'Share a check prevents', '0 to 1: found and put right')}
          {own('cost', 'Cost of a check', 'On the same scale')}
        </div>
        <button type="button" className="link small" onClick={() => onChange(START_TERMS)}>
          Back to the assumptions
        </button>
      </div>
    </details>
  );
}

interface TermProps {
  readonly label: string;
  readonly hint: string;
  readonly children: (id: string) => ReactNode;
}

function Term({ label, hint, children }: TermProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {children(id)}
      <span className="hint" id={`${id}-hint`}>
        {hint}
      </span>
    </div>
  );
}

interface TableProps {
  readonly rows: readonly VerifyRow[];
  readonly from: number;
}

function VerifyTable({ rows, from }: TableProps) {
  if (rows.length === 0) return <p className="empty">There is no joint to order.</p>;
  return (
    <SideScroll>
      <table className="tab links">
        <thead>
          <tr>
            <th scope="col" className="num">
              Place
            </th>
            <th scope="col">Joint</th>
            <th scope="col">Why</th>
            <th scope="col" className="num">
              Leaks in years
            </th>
            <th scope="col" className="num">
              Doubt
            </th>
            <th scope="col" className="num">
              P(leak), %
            </th>
            <th scope="col" className="num">
              Worth
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row, at) => (
            <tr key={row.jointId}>
              <td className="num">{from + at + 1}</td>
              <th scope="row">
                <Link href={`/joints/${row.jointId}`}>{row.tag}</Link>
                <div className="small">
                  {row.weighedAs}; {row.flange}; {row.unitName}
                </div>
              </th>
              <td>{row.reasons.length === 0 ? 'its class alone' : `${row.reasons.join('; ')}`}</td>
              <td className="num">
                {row.leaks} in {sensible(row.years, 2)}
              </td>
              <td className="num">× {sensible(row.factor, 2)}</td>
              <td className="num">
                {row.probability === null ? <Unknown /> : inUnit(row.probability, 'percent', 2)}
              </td>
              <td className="num">{row.worth === null ? <Unknown /> : sensible(row.worth, 2)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </SideScroll>
  );
}

function Basis({ list }: { readonly list: List }) {
  return (
    <section aria-labelledby="basis">
      <h2 id="basis">What the order rests on</h2>
      {list.rates.map((rate) => (
        <p key={rate.class ?? 'all'}>
          <b>{rate.class ?? 'All joints'}</b>: {sensible(rate.mean * 1000, 2)} leaks in 1000 joint-years, from{' '}
          {counted(rate.leaks, 'leak')} in {sensible(rate.years, 3)} years of {counted(rate.joints, 'joint')}
          {rate.variation === null
            ? '; joints do not differ more than chance makes them.'
            : `; rates of single joints scatter by ${Math.round(rate.variation * 100)} %.`}
        </p>
      ))}
      {list.basis.map((text) => (
        <p key={text} className="small">
          {text}
        </p>
      ))}
    </section>
  );
}
