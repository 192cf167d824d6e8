import { lazy, Suspense, useState } from 'react';
import type { ScatterView } from '../../../core/contract/scatter.ts';
import { sensible, withUnit } from '../../app/text/number.ts';
import { Busy } from '../../components/busy.tsx';
import { ExportList } from '../../components/export-list.tsx';
import { Plain, Unknown } from '../../components/number.tsx';
import { PointReader } from '../../components/point-reader.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';

const SensitivityChart = lazy(() => import('../../charts/sensitivity-chart.tsx'));

type Rows = ScatterView['sensitivity'];

interface SensitivityProps {
  readonly view: ScatterView;
}

/** How much hangs on the stiffness of the gasket, which is seldom known well. */
export function Sensitivity({ view: { sensitivity, sensitivityWords, plans } }: SensitivityProps) {
  const [asTable, setAsTable] = useState(false);
  if (sensitivity.length === 0) return null;
  const names = (sensitivity[0]?.plans ?? []).map(
    ({ planId }) => plans.find((plan) => plan.planId === planId)?.name ?? planId,
  );
  return (
    <section aria-label="With another stiffness of the gasket">
      <div className="spread">
        <h3>With another stiffness of the gasket</h3>
        {sensitivityWords !== null && (
          <button type="button" className="link small no-print" onClick={() => setAsTable(!asTable)}>
            {asTable ? 'Show as chart' : 'Show as table'}
          </button>
        )}
      </div>
      <p>{sensitivityWords ?? 'Nothing can be said: no bolt carries at the end of either plan.'}</p>
      {sensitivityWords !== null &&
        (asTable ? (
          <StiffnessTable rows={sensitivity} names={names} />
        ) : (
          <StiffnessChart
            rows={sensitivity}
            names={names}
            finding={sensitivityWords}
            key={sensitivity.length}
          />
        ))}
      <ExportList
        name="evenness by stiffness of the gasket"
        label="Export this table as CSV"
        headings={[
          'Times as stiff',
          'Stiffness, MPa',
          ...names.map((name) => `${name}, standard deviation over mean`),
        ]}
        rows={async () => sensitivity}
        cells={(row) => [
          row.factor,
          row.gasketStiffness / 1e6,
          ...row.plans.map(({ evenness }) => evenness?.variation ?? null),
        ]}
      />
    </section>
  );
}

interface ShownProps {
  readonly rows: Rows;
  /** Of the plans, in their order in each row. */
  readonly names: readonly string[];
}

function StiffnessChart({ rows, names, finding }: ShownProps & { readonly finding: string }) {
  const [place, setPlace] = useState(0);
  const row = rows[place];
  if (row === undefined) return null;
  const said = row.plans.map(({ evenness }, index) => {
    const variation = evenness?.variation ?? null;
    return `${names[index]} ${variation === null ? 'not known' : withUnit(variation, 'percent')}`;
  });
  const words = `${sensible(row.factor, 3)} times as stiff, ${withUnit(row.gasketStiffness, 'MPa')}: ${said.join(', ')}`;
  return (
    <>
      <Suspense fallback={<Busy what="Drawing the chart" />}>
        <SensitivityChart
          tried={names.map((name, index) => ({
            name,
            points: rows.map(({ factor, plans }) => ({
              factor,
              variation: plans[index]?.evenness?.variation ?? null,
            })),
          }))}
          finding={finding}
          chosen={place}
        />
      </Suspense>
      <PointReader
        label="Stiffness read out below"
        count={rows.length}
        place={place}
        words={words}
        onPlace={setPlace}
      />
      <p className="no-print" aria-live="polite">
        {words}
      </p>
    </>
  );
}

const StiffnessTable = ({ rows, names }: ShownProps) => (
  <SideScroll>
    <table className="tab">
      <caption className="small">
        Standard deviation of the load between bolts at the end, of the mean
      </caption>
      <thead>
        <tr>
          <th scope="col" className="num">
            Times as stiff
          </th>
          <th scope="col" className="num">
            Stiffness <span className="unit">MPa</span>
          </th>
          {names.map((name) => (
            <th key={name} scope="col" className="num">
              {name} <span className="unit">%</span>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.factor}>
            <th scope="row" className="num">
              {sensible(row.factor, 3)}
            </th>
            <td className="num">
              <Plain si={row.gasketStiffness} unit="MPa" />
            </td>
            {row.plans.map(({ planId, evenness }) => (
              <td key={planId} className="num">
                {evenness?.variation == null ? <Unknown /> : <Plain si={evenness.variation} unit="percent" />}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  </SideScroll>
);
