import type { SettingCard } from '../../../core/contract/setting.ts';
import { exact, inUnit, unitLabel } from '../../app/text/number.ts';
import { SideScroll } from '../../components/side-scroll.tsx';
import type { Place } from './order-steps.ts';

interface PassTableProps {
  readonly card: SettingCard;
  readonly place: Place;
  readonly onPass: (pass: number) => void;
}

export function PassTable({ card, place, onPass }: PassTableProps) {
  if (card.passes.length === 0) return null;
  const unit = card.gauge ? unitLabel(card.gauge.unit) : '';
  // A breakout has no load to give: the stud already carries one.
  const withDial = card.method === 'hydraulic wrench';
  // A tensioned stud is brought to a load; there is nothing to set by torque.
  const withTorque = card.method !== 'tensioner';
  const withLoad = card.passes.some((pass) => pass.load !== null);
  return (
    <section aria-label={`Passes, ${card.planName}`}>
      <SideScroll>
        <table className="tab passes">
          <caption className="unseen">{card.planName}</caption>
          <thead>
            <tr>
              <th scope="col">Step</th>
              {withTorque && (
                <>
                  <th scope="col" className="num">
                    {withDial ? (
                      <>
                        Dial <span className="unit">{unit}</span>
                      </>
                    ) : (
                      'Set'
                    )}
                  </th>
                  <th scope="col" className="num">
                    Torque <span className="unit">N·m</span>
                  </th>
                </>
              )}
              {withLoad && (
                <th scope="col" className="num">
                  Load <span className="unit">kN</span>
                </th>
              )}
              <th scope="col">Order</th>
              <th scope="col">Stop when</th>
            </tr>
          </thead>
          <tbody>
            {card.passes.map((pass, at) => (
              <tr key={pass.name} className={at === place.pass ? 'now' : undefined}>
                <th scope="row">
                  <button
                    type="button"
                    aria-current={at === place.pass ? 'step' : undefined}
                    onClick={() => onPass(at)}
                  >
                    {pass.name}
                  </button>
                </th>
                {withTorque && (
                  <>
                    <td className="num dialcol">
                      <PassSetting pass={pass} withDial={withDial} refused={!card.issuable} />
                    </td>
                    <td className="num">{pass.torque === null ? '–' : inUnit(pass.torque, 'N.m')}</td>
                  </>
                )}
                {withLoad && <td className="num">{pass.load === null ? '–' : inUnit(pass.load, 'kN')}</td>}
                <td>{orderWords(pass, card.boltCount)}</td>
                <td>{pass.stopWhen}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </SideScroll>
    </section>
  );
}

interface PassSettingProps {
  readonly pass: SettingCard['passes'][number];
  readonly withDial: boolean;
  readonly refused: boolean;
}

/** Struck through while the setting is refused: the numbers explain a refusal, they are not for the gauge. */
function PassSetting({ pass, withDial, refused }: PassSettingProps) {
  const words = withDial ? pass.dial && exact(pass.dial.value) : pass.set;
  if (words === null) return '–';
  return refused ? <s>{words}</s> : words;
}

function orderWords({ order, tools }: SettingCard['passes'][number], count: number | null): string {
  const words =
    order === 'circular' && count !== null ? `1 to ${count}` : order === 'groups' ? 'group by group' : order;
  return tools > 1 ? `${words}, ${tools} tools` : words;
}
