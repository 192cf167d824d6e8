import { Plain } from '../../components/number.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { CardNumber } from './card-number.tsx';
import { CardSection, type SectionProps } from './card-section.tsx';
import { LimitState } from './limit-state.tsx';

/** Pressure cases against what the flange's standard rates it for. */
export function RatingSection({ card, chosen, onChoose }: SectionProps) {
  if (card.rating.length === 0) return null;
  return (
    <CardSection title="Rating of the flange">
      <SideScroll>
        <table className="tab">
          <thead>
            <tr>
              <th scope="col">Pressure case</th>
              <th scope="col" className="num">
                Pressure <span className="unit">bar</span>
              </th>
              <th scope="col" className="num">
                Temperature <span className="unit">°C</span>
              </th>
              <th scope="col" className="num">
                Rated <span className="unit">bar</span>
              </th>
              <th scope="col">State</th>
              <th scope="col">Source</th>
            </tr>
          </thead>
          <tbody>
            {card.rating.map((row) => (
              <tr key={row.case}>
                <th scope="row">{row.case}</th>
                <td className="num">
                  <Plain si={row.pressure} unit="bar" />
                </td>
                <td className="num">
                  <Plain si={row.temperature} unit="degC" />
                </td>
                <td className="num">
                  <CardNumber card={card} of="rating" about={[row.case]} chosen={chosen} onChoose={onChoose}>
                    <Plain si={row.rated} unit="bar" />
                  </CardNumber>
                </td>
                <td>
                  <LimitState state={row.state} side="at most" />
                </td>
                <td className="small">{row.source}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </SideScroll>
    </CardSection>
  );
}
