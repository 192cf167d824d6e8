import { FormProvider, useForm, useWatch } from 'react-hook-form';
import { Link } from 'wouter';
import type { ReplayRow, ReplayView } from '../../../core/contract/replay.ts';
import { useAsk, usePreview } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { count, sensible } from '../../app/text/number.ts';
import { moment } from '../../app/text/time.ts';
import { Busy } from '../../components/busy.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { ExportList } from '../../components/export-list.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { Choice, Quantity, same, Text } from '../../components/fields.tsx';
import { Unknown } from '../../components/number.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { EvidenceIndex } from '../evidence/evidence-index.tsx';
import { emptyReplay, type ReplayForm, replayInput } from './replay-form-values.ts';

const KINDS = ['nut factor', 'stud size', 'gasket limit'];

/** Past tightenings worked out anew with one thing taken to be otherwise: which joints leave their limits. */
export function ReplayPage() {
  const form = useForm<ReplayForm>({ defaultValues: emptyReplay() });
  const run = usePreview('replay.run');
  const units = useAsk('unit.list', {});
  const kind = useWatch({ control: form.control, name: 'kind' });
  return (
    <Desk indexLabel="Evidence" index={<EvidenceIndex />}>
      <Title
        name="What if"
        under="Recorded tightenings worked out anew with one thing taken to be otherwise. Nothing is recorded."
      />
      <FormProvider {...form}>
        <Faults value={run.error?.error.details ?? []}>
          <form
            className="form no-print"
            noValidate
            onSubmit={form.handleSubmit((values) => run.mutate(replayInput(values)))}
          >
            <fieldset>
              <legend>What was otherwise</legend>
              <div className="fields">
                <Choice name="kind" label="Taken to be otherwise" options={same(KINDS)} />
                {kind === 'nut factor' && (
                  <Text
                    name="nutFactor"
                    label="Nut factor K that was really there"
                    inputMode="decimal"
                    hint="0.03 to 1, without a unit"
                  />
                )}
                {kind === 'stud size' && (
                  <Text name="thread" label="Thread that was really there" hint="As 7/8-9 UNC or M20" />
                )}
                {kind === 'gasket limit' && (
                  <>
                    <Quantity name="seating" label="Least gasket stress at assembly" quantity="stress" />
                    <Quantity name="most" label="Largest gasket stress" quantity="stress" />
                  </>
                )}
              </div>
            </fieldset>
            <fieldset>
              <legend>Which tightenings; empty takes all</legend>
              <div className="fields">
                <Choice
                  name="unitId"
                  label="Plant unit"
                  blank="all"
                  options={(units.data?.rows ?? []).map(({ id, name }) => ({ value: id, words: name }))}
                />
                <Text name="lubricant" label="Lubricant" />
                <Text name="batch" label="Batch of the lubricant" />
                <Text name="setting" label="Issued setting" hint="Its number" />
                <Text name="from" label="From" type="date" />
                <Text name="to" label="To" type="date" />
              </div>
            </fieldset>
            <div>
              <button type="submit" className="act" disabled={run.isPending}>
                Work it out
              </button>
            </div>
          </form>
        </Faults>
      </FormProvider>
      {run.isPending && <Busy what="Working the past out anew" />}
      {run.error && <Failure error={run.error.error} what="It was not worked out." />}
      {run.data && <Outcome view={run.data} />}
    </Desk>
  );
}

const HEADINGS = [
  'Joint',
  'Tightened (ISO 8601)',
  'Torque, N·m',
  'Load by the record, kN',
  'Load otherwise, kN',
  'Change, %',
  'Limits by the record',
  'Limits otherwise',
  'Leaves its limits',
  'Load still in the joint',
  'Words',
];

const cellsOf = (row: ReplayRow) => [
  row.tag,
  row.happenedAt,
  row.torque,
  row.loadThen === null ? null : row.loadThen / 1000,
  row.loadOtherwise === null ? null : row.loadOtherwise / 1000,
  row.change === null ? null : row.change * 100,
  row.standingThen,
  row.standing,
  row.leaves ? 'yes' : 'no',
  row.standsNow ? 'yes' : 'no',
  row.words,
];

function Outcome({ view }: { readonly view: ReplayView }) {
  const { finding, caveat, rows, shown, total, counts } = view;
  return (
    <section aria-labelledby="outcome">
      <h2 id="outcome">Joints that leave their limits</h2>
      <p role="status">{finding}</p>
      <p className="small">{caveat}</p>
      {rows.length > 0 && (
        <>
          <p className="small">
            Kept {count(counts.kept)}, not sure {count(counts.notSure)}, broken {count(counts.broken)}, not
            known {count(counts.notKnown)}.
            {shown < total && ` The worst ${count(shown)} of ${count(total)} are listed.`}{' '}
            <Link href="/cases/new">Open a case</Link> where a batch or a tool is behind it.
          </p>
          <Rows rows={rows} />
          <ExportList name="what if" headings={HEADINGS} rows={async () => rows} cells={cellsOf} />
        </>
      )}
    </section>
  );
}

function Rows({ rows }: { readonly rows: readonly ReplayRow[] }) {
  const { timeZone } = useRegister();
  const load = (newtons: number | null) => (newtons === null ? <Unknown /> : sensible(newtons / 1000, 4));
  return (
    <SideScroll>
      <table className="tab">
        <thead>
          <tr>
            <th scope="col">Joint</th>
            <th scope="col">Tightened</th>
            <th scope="col" className="num">
              Load by the record <span className="unit">kN</span>
            </th>
            <th scope="col" className="num">
              Otherwise <span className="unit">kN</span>
            </th>
            <th scope="col" className="num">
              Change
            </th>
            <th scope="col">Limits</th>
            <th scope="col">In the joint now</th>
            <th scope="col">What it says</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.eventId}>
              <th scope="row">
                <Link href={`/joints/${row.jointId}`}>{row.tag}</Link>
              </th>
              <td className="date">
                <Link href={`/events/${row.eventId}`}>{moment(row.happenedAt, timeZone)}</Link>
              </td>
              <td className="num">{load(row.loadThen)}</td>
              <td className="num">{load(row.loadOtherwise)}</td>
              <td className="num">
                {row.change === null ? <Unknown /> : `${(row.change * 100).toFixed(1)} %`}
              </td>
              <td>
                {row.leaves ? (
                  <span className="flag">leaves: {row.standingThen} → broken</span>
                ) : (
                  row.standing
                )}
              </td>
              <td>{row.standsNow ? 'yes' : 'no, worked on since'}</td>
              <td>{row.words}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </SideScroll>
  );
}
