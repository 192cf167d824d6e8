import { useId, useState } from 'react';
import type { RequestOutput } from '../../../core/contract/requests.ts';
import type { ScatterValue, SimulatedPlan } from '../../../core/contract/scatter.ts';
import type { Unit } from '../../../core/units/units.ts';
import { count } from '../../app/text/number.ts';
import { BoltCircle } from '../../components/bolt-circle.tsx';
import { ExportList } from '../../components/export-list.tsx';
import { Measure, Origin, Plain, Unknown } from '../../components/number.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { inFile } from './in-file.ts';
import { LoadBars } from './load-bars.tsx';
import { type Measured, measuredAt, NONE } from './measured-at.ts';
import { EvenLoads, Fit } from './scatter-answers.tsx';
import { Sensitivity } from './sensitivity.tsx';
import { Player } from './step-player.tsx';

type View = RequestOutput<'scatter.simulate'>;
type Run = SimulatedPlan & { readonly result: NonNullable<SimulatedPlan['result']> };

interface ScatterResultProps {
  readonly view: View;
  readonly measured: Measured;
}

/** What the model made of the plans; its inputs and what it is stand with it. */
export function ScatterResult({ view, measured }: ScatterResultProps) {
  const runs = view.plans.filter((plan): plan is Run => plan.result !== null);
  return (
    <div className="told">
      <section className="caution-list" aria-label="What this is">
        <p>{view.caveat}</p>
      </section>
      <p role="status">{view.finding}</p>
      {view.plans.map(({ planId, name, words }) => (
        <p key={planId}>
          <b>{name}:</b> {words}
        </p>
      ))}
      {runs.length > 0 && (
        <Steps
          view={view}
          runs={runs}
          measured={measured}
          key={runs.map(({ planId, result }) => `${planId} ${result.steps.length}`).join(' ')}
        />
      )}
      {runs.map((run) => (
        <Passes key={run.planId} run={run} />
      ))}
      {runs.length > 0 && (
        <ExportList
          name="loads after each pass"
          label="Export the loads after each pass as CSV"
          headings={['Plan', 'Pass', 'Set, kN', 'Mean, kN', 'Least, kN', 'Most, kN', 'Deviation over mean']}
          rows={async () => runs.flatMap(everyPass)}
          cells={(row) => row}
        />
      )}
      <EvenLoads view={view} />
      <Sensitivity view={view} />
      <Fit view={view} />
      <section aria-label="What the model was run with">
        <h3>What the model was run with</h3>
        <Inputs values={view.inputs} />
      </section>
    </div>
  );
}

interface StepsProps {
  readonly view: View;
  readonly runs: readonly Run[];
  readonly measured: Measured;
}

/** One step at a time: what is turned, and the load in every bolt after it. */
function Steps({ view, runs, measured }: StepsProps) {
  const id = useId();
  const most = Math.max(...runs.map(({ result }) => result.steps.length));
  const [place, setPlace] = useState(most - 1);
  const at = runs.map((run) => {
    const index = Math.min(place, run.result.steps.length - 1);
    return { run, index, step: run.result.steps[index] };
  });
  const highest = Math.max(view.limit ?? 0, ...runs.map(({ result }) => result.peak?.load ?? 0));
  return (
    <>
      <div className="field whole no-print">
        <label htmlFor={id}>Step shown, 1 to {most}</label>
        <input
          id={id}
          type="range"
          min={0}
          max={most - 1}
          value={place}
          aria-valuetext={at
            .map(
              ({ run, index, step }) => `${run.name}: step ${index + 1}, bolt ${step?.bolts.join(' and ')}`,
            )
            .join('; ')}
          onChange={(event) => setPlace(Number(event.target.value))}
        />
      </div>
      <Player most={most} place={place} onPlace={setPlace} />
      <div className="plans-beside">
        {at.map(({ run, index, step }, side) => (
          <figure key={run.planId}>
            <figcaption>
              <b>{run.name}</b>, step {index + 1} of {run.result.steps.length}, pass {step?.pass}: bolt{' '}
              {step?.bolts.join(' and ')} set to <Measure si={step?.set ?? null} unit="kN" />
            </figcaption>
            <BoltCircle
              count={run.result.loads.length}
              order={run.result.steps.map(({ bolts }) => bolts)}
              at={index}
              size={260}
            />
            <LoadBars
              loads={step?.loads ?? []}
              measured={side === 0 ? measuredAt(measured, run, index) : NONE}
              target={view.target}
              limit={view.limit}
              highest={highest}
            />
          </figure>
        ))}
      </div>
      <p className="small">
        Bars: load in each bolt from bolt 1. Dashed line: load to set. Solid line: most that one bolt may
        carry, where it is known.
        {measured.length > 0 && ' Crosses: loads that were measured after this pass.'}
      </p>
      <LoadTable at={at} />
      <ExportList
        name="load in every bolt after every step"
        label="Export the loads after every step as CSV"
        headings={['Plan', 'Step', 'Pass', 'Bolts turned', 'Set, kN', 'Bolt', 'Load after it, kN']}
        rows={async () => runs.flatMap(everyLoad)}
        cells={(row) => row}
      />
    </>
  );
}

const everyLoad = ({ name, result }: Run) =>
  result.steps.flatMap(({ pass, bolts, set, loads }, index) =>
    loads.map((load, bolt): readonly (string | number)[] => [
      name,
      index + 1,
      pass,
      bolts.join(' '),
      inFile(set),
      bolt + 1,
      inFile(load),
    ]),
  );

interface LoadTableProps {
  readonly at: readonly {
    readonly run: Run;
    readonly index: number;
    readonly step: Run['result']['steps'][number] | undefined;
  }[];
}

function LoadTable({ at }: LoadTableProps) {
  const bolts = Math.max(...at.map(({ run }) => run.result.loads.length));
  return (
    <SideScroll>
      <table className="tab">
        <caption className="small">Load in every bolt after the step shown, and after the last</caption>
        <thead>
          <tr>
            <th scope="col" className="num">
              Bolt
            </th>
            {at.flatMap(({ run, index }) => [
              <th key={`${run.planId} step`} scope="col" className="num">
                {run.name}, step {index + 1} <span className="unit">kN</span>
              </th>,
              <th key={`${run.planId} end`} scope="col" className="num">
                at the end <span className="unit">kN</span>
              </th>,
            ])}
          </tr>
        </thead>
        <tbody>
          {Array.from({ length: bolts }, (_, bolt) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a bolt is its number
            <tr key={bolt}>
              <th scope="row" className="num">
                {bolt + 1}
              </th>
              {at.flatMap(({ run, step }) => [
                <td key={`${run.planId} step`} className="num">
                  <Plain si={step?.loads[bolt] ?? null} unit="kN" />
                </td>,
                <td key={`${run.planId} end`} className="num">
                  <Plain si={run.result.loads[bolt] ?? null} unit="kN" />
                </td>,
              ])}
            </tr>
          ))}
        </tbody>
      </table>
    </SideScroll>
  );
}

function Passes({ run }: { readonly run: Run }) {
  return (
    <SideScroll>
      <table className="tab">
        <caption className="small">{run.name}, after each pass</caption>
        <thead>
          <tr>
            <th scope="col" className="num">
              Pass
            </th>
            {['Set', 'Mean', 'Least', 'Most'].map((name) => (
              <th key={name} scope="col" className="num">
                {name} <span className="unit">kN</span>
              </th>
            ))}
            <th scope="col" className="num">
              Standard deviation <span className="unit">% of the mean</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {run.result.passes.map(({ pass, set, evenness }) => (
            <tr key={pass}>
              <th scope="row" className="num">
                {pass}
              </th>
              {[set, evenness.mean, evenness.least, evenness.most].map((load, index) => (
                <td key={['set', 'mean', 'least', 'most'][index]} className="num">
                  <Plain si={load} unit="kN" />
                </td>
              ))}
              <td className="num">
                <Plain si={evenness.variation} unit="percent" />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </SideScroll>
  );
}

const everyPass = ({ name, result }: Run) =>
  result.passes.map(({ pass, set, evenness: { mean, least, most, variation } }) => [
    name,
    pass,
    ...[set, mean, least, most].map((load) => inFile(load)),
    variation,
  ]);

const UNIT: Readonly<Record<Exclude<ScatterValue['quantity'], 'count'>, Unit>> = {
  length: 'mm',
  stress: 'MPa',
  stiffness: 'kN/mm',
  force: 'kN',
  ratio: 'one',
};

function Inputs({ values }: { readonly values: readonly ScatterValue[] }) {
  return (
    <table className="tab">
      <thead>
        <tr>
          <th scope="col">Input</th>
          <th scope="col" className="num">
            Value
          </th>
          <th scope="col">Origin</th>
          <th scope="col">Where from</th>
        </tr>
      </thead>
      <tbody>
        {values.map(({ name, quantity, si, origin, source }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td className="num">
              {si === null ? (
                <Unknown />
              ) : quantity === 'count' ? (
                count(si)
              ) : (
                <Measure si={si} unit={UNIT[quantity]} />
              )}
            </td>
            <td>{si === null ? '' : <Origin origin={origin} />}</td>
            <td className="small">{source}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
