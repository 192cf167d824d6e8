import { inUnit } from '../../app/text/number.ts';
import { CardNumber } from './card-number.tsx';
import { CardSection, type SectionProps } from './card-section.tsx';

/** Where the torque goes: the little that stretches the stud, and the two frictions. */
export function TorqueSplit({ card, chosen, onChoose }: SectionProps) {
  const { split } = card;
  if (split === null) return null;
  const parts = [
    { name: 'Stretch of the stud', torque: split.stretch },
    { name: 'Friction in the thread', torque: split.thread },
    { name: 'Friction under the nut', torque: split.bearing },
  ];
  const whole = parts.reduce((sum, part) => sum + part.torque, 0);
  const share = (torque: number) => (whole > 0 ? torque / whole : 0);
  return (
    <CardSection
      title="Where the torque goes"
      finding={`${inUnit(share(split.stretch), 'percent', 2)} % stretches the stud`}
    >
      <table className="tab split">
        <thead>
          <tr>
            <th scope="col">Part</th>
            <td aria-hidden="true" />
            <th scope="col" className="num">
              Torque <span className="unit">N·m</span>
            </th>
            <th scope="col" className="num">
              Share <span className="unit">%</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {parts.map(({ name, torque }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td className="bar" aria-hidden="true">
                <span style={{ width: `${(share(torque) * 100).toFixed(1)}%` }} />
              </td>
              <td className="num">
                <CardNumber card={card} of="split" chosen={chosen} onChoose={onChoose}>
                  {inUnit(torque, 'N.m')}
                </CardNumber>
              </td>
              <td className="num">{inUnit(share(torque), 'percent', 2)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="small">Coefficients: {split.rule}.</p>
    </CardSection>
  );
}
