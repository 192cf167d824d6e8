import type { ScatterView } from '../../../core/contract/scatter.ts';
import { sensible } from '../../app/text/number.ts';
import { Plain, Unknown } from '../../components/number.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';

interface AnswerProps {
  readonly view: ScatterView;
}

/** What to set at each bolt so that the last trip around ends even. */
export function EvenLoads({ view: { even } }: AnswerProps) {
  if (even === null) return null;
  const { result, words } = even;
  const trips = Math.max(1, ...result.steps.map(({ pass }) => pass));
  const bolts = [...new Set(result.steps.flatMap((step) => step.bolts))];
  return (
    <section aria-label="Loads to set that end even">
      <h3>Loads to set that end even</h3>
      <p>{words}</p>
      <SideScroll>
        <table className="tab">
          <caption className="small">
            In the order they are turned; load in each bolt after the last trip
          </caption>
          <thead>
            <tr>
              <th scope="col" className="num">
                Bolt
              </th>
              {Array.from({ length: trips }, (_, trip) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a trip is its number
                <th key={trip} scope="col" className="num">
                  Set, trip {trip + 1} <span className="unit">kN</span>
                </th>
              ))}
              <th scope="col" className="num">
                At the end <span className="unit">kN</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {bolts.map((bolt) => (
              <tr key={bolt}>
                <th scope="row" className="num">
                  {bolt}
                </th>
                {Array.from({ length: trips }, (_, trip) => {
                  const step = result.steps.find(
                    (each) => each.pass === trip + 1 && each.bolts.includes(bolt),
                  );
                  return (
                    // biome-ignore lint/suspicious/noArrayIndexKey: a trip is its number
                    <td key={trip} className="num">
                      {step === undefined ? 'left as it is' : <Plain si={step.set} unit="kN" />}
                    </td>
                  );
                })}
                <td className="num">
                  <Plain si={result.loads[bolt - 1] ?? null} unit="kN" />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </SideScroll>
    </section>
  );
}

/** How much hangs on the stiffness of the gasket, which is seldom known well. */
export function Sensitivity({ view: { sensitivity, plans } }: AnswerProps) {
  if (sensitivity.length === 0) return null;
  const nameOf = (planId: string) => plans.find((plan) => plan.planId === planId)?.name ?? planId;
  const widest = Math.max(
    ...sensitivity.flatMap((row) => row.plans.map(({ evenness }) => evenness?.variation ?? 0)),
  );
  return (
    <section aria-label="With another stiffness of the gasket">
      <h3>With another stiffness of the gasket</h3>
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
              {sensitivity[0]?.plans.map(({ planId }) => (
                <th key={planId} scope="col" className="num">
                  {nameOf(planId)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {sensitivity.map((row) => (
              <tr key={row.factor}>
                <th scope="row" className="num">
                  {sensible(row.factor, 3)}
                </th>
                <td className="num">
                  <Plain si={row.gasketStiffness} unit="MPa" />
                </td>
                {row.plans.map(({ planId, evenness }) => (
                  <td key={planId} className="num">
                    {evenness?.variation == null ? (
                      <Unknown />
                    ) : (
                      <>
                        <Bar share={widest > 0 ? evenness.variation / widest : 0} />{' '}
                        <Plain si={evenness.variation} unit="percent" /> <span className="unit">%</span>
                      </>
                    )}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </SideScroll>
    </section>
  );
}

const BAR = 80;

const Bar = ({ share }: { readonly share: number }) => (
  <svg viewBox={`0 0 ${BAR} 10`} width={BAR} height="10" aria-hidden="true">
    <rect x="0" y="1" width={BAR * share} height="8" fill="var(--act)" />
  </svg>
);

/** What the measured loads say of the gasket. */
export function Fit({ view: { fit, fitWhy } }: AnswerProps) {
  if (fit === null && fitWhy === null) return null;
  return (
    <section aria-label="What the measured loads say">
      <h3>What the measured loads say</h3>
      <p>{fit?.words ?? fitWhy}</p>
    </section>
  );
}
