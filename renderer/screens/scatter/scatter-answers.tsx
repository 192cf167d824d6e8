import type { ScatterView } from '../../../core/contract/scatter.ts';
import { ExportList } from '../../components/export-list.tsx';
import { Plain } from '../../components/number.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { inFile } from './in-file.ts';

interface AnswerProps {
  readonly view: ScatterView;
}

/** What to set at each bolt so that the last trip around ends even. */
export function EvenLoads({ view: { even } }: AnswerProps) {
  if (even === null) return null;
  const { result, words } = even;
  const trips = Math.max(1, ...result.steps.map(({ pass }) => pass));
  const bolts = [...new Set(result.steps.flatMap((step) => step.bolts))];
  const loadAt = (bolt: number) => {
    const load = result.loads[bolt - 1];
    return load === undefined ? null : inFile(load);
  };
  const setOn = (trip: number, bolt: number) =>
    result.steps.find((each) => each.pass === trip + 1 && each.bolts.includes(bolt))?.set ?? null;
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
                {Array.from({ length: trips }, (_, trip) => setOn(trip, bolt)).map((set, trip) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: a trip is its number
                  <td key={trip} className="num">
                    {set === null ? 'left as it is' : <Plain si={set} unit="kN" />}
                  </td>
                ))}
                <td className="num">
                  <Plain si={result.loads[bolt - 1] ?? null} unit="kN" />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </SideScroll>
      <ExportList
        name="loads to set that end even"
        label="Export these loads as CSV"
        headings={[
          'Bolt',
          ...Array.from({ length: trips }, (_, trip) => `Set, trip ${trip + 1}, kN`),
          'At the end, kN',
        ]}
        rows={async () => bolts}
        cells={(bolt) => [
          bolt,
          ...Array.from({ length: trips }, (_, trip) => setOn(trip, bolt)).map((set) =>
            set === null ? 'left as it is' : inFile(set),
          ),
          loadAt(bolt),
        ]}
      />
    </section>
  );
}

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
