import { count, inUnit, withUnit } from '../../app/text/number.ts';
import { Measure } from '../../components/number.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { CardNumber } from './card-number.tsx';
import { CardSection, type SectionProps } from './card-section.tsx';

/** Spread of the load by simulation: interval, chances against each limit, and what it comes from. */
export function SimulationSection({ card, chosen, onChoose }: SectionProps) {
  const simulation = card.uncertainty?.simulation ?? null;
  const shares = card.uncertainty?.shares ?? [];
  if (simulation === null) return null;
  const [low, high] = simulation.interval;
  return (
    <CardSection
      title="Spread of the load"
      finding={`95 % of single studs between ${inUnit(low, 'kN', 3)} and ${withUnit(high, 'kN', 3)}`}
    >
      <dl className="lines narrow">
        <div>
          <dt>95 % of single studs, load between</dt>
          <dd>
            <CardNumber card={card} of="interval" chosen={chosen} onChoose={onChoose}>
              {inUnit(low, 'kN', 3)} and <Measure si={high} unit="kN" />
            </CardNumber>
          </dd>
        </div>
        <div>
          <dt>Standard uncertainty, common to all studs</dt>
          <dd>{withUnit(simulation.common, 'percent', 2)}</dd>
        </div>
        <div>
          <dt>From stud to stud</dt>
          <dd>{withUnit(simulation.perBolt, 'percent', 2)}</dd>
        </div>
      </dl>
      {simulation.probabilities.length > 0 && (
        <SideScroll>
          <table className="tab">
            <thead>
              <tr>
                <th scope="col">Limit</th>
                <th scope="col">Of</th>
                <th scope="col" className="num">
                  Load <span className="unit">kN</span>
                </th>
                <th scope="col" className="num">
                  Probability that it is kept <span className="unit">%</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {simulation.probabilities.map((row) => (
                <tr key={`${row.limit} ${row.subject} ${row.side}`}>
                  <th scope="row">
                    {row.limit}
                    <div className="small">{row.basis}</div>
                  </th>
                  <td>{row.subject === 'single bolt' ? 'single stud' : 'mean of the joint'}</td>
                  <td className="num">
                    {row.side} {inUnit(row.load, 'kN', 3)}
                  </td>
                  <td className="num">{inUnit(row.probability, 'percent', 3)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </SideScroll>
      )}
      {shares.length > 0 && (
        <SideScroll>
          <table className="tab split">
            <thead>
              <tr>
                <th scope="col">Contributor</th>
                <td aria-hidden="true" />
                <th scope="col" className="num">
                  Share <span className="unit">%</span>
                </th>
                <th scope="col">Scope</th>
              </tr>
            </thead>
            <tbody>
              {shares.map((row) => (
                <tr key={row.name}>
                  <th scope="row">{row.name}</th>
                  <td className="bar" aria-hidden="true">
                    <span style={{ width: `${(row.share * 100).toFixed(1)}%` }} />
                  </td>
                  <td className="num">{inUnit(row.share, 'percent', 2)}</td>
                  <td>{row.scope === 'common' ? 'all studs together' : 'each stud'}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </SideScroll>
      )}
      <p className="small">
        {count(simulation.draws)} draws, seed {simulation.seed}, {simulation.generator}.
      </p>
    </CardSection>
  );
}
