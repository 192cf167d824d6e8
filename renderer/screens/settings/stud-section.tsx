import type { Unit } from '../../../core/units/units.ts';
import { inUnit, sensible } from '../../app/text/number.ts';
import { Measure, Origin, Unknown } from '../../components/number.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { CardNumber } from './card-number.tsx';
import { CardSection, type SectionProps } from './card-section.tsx';
import type { NumberName } from './use-working.ts';

/** The stud itself: strength cold and hot, load hot, stretch, and the thread against stripping. */
export function StudSection(props: SectionProps) {
  const { strength, hot, stretch, strip } = props.card;
  if (strength.length === 0 && hot === null && stretch === null && strip === null) return null;
  const line = (name: string, of: NumberName, si: number | null, unit: Unit) => (
    <div>
      <dt>{name}</dt>
      <dd>
        <CardNumber of={of} {...props}>
          <Measure si={si} unit={unit} />
        </CardNumber>
      </dd>
    </div>
  );
  return (
    <CardSection title="The stud">
      {strength.length > 0 && <StrengthTable {...props} />}
      <dl className="lines narrow">
        {hot && (
          <>
            {line('Load hot', 'hotLoad', hot.hotLoad, 'kN')}
            <div>
              <dt>Load hot lies between</dt>
              <dd>
                {inUnit(hot.range[0], 'kN')} and <Measure si={hot.range[1]} unit="kN" />
              </dd>
            </div>
            {hot.mayVanish && (
              <div>
                <dt>Hot, the load may vanish</dt>
                <dd className="flag">yes</dd>
              </div>
            )}
          </>
        )}
        {stretch && (
          <>
            {line('Stretch at this load', 'stretch', stretch.elongation, 'mm')}
            {line('Stiffness of the stud', 'stretch', stretch.stiffness, 'kN/mm')}
          </>
        )}
        {strip && (
          <>
            {line('Stud thread strips at', 'strip', strip.studLoad, 'kN')}
            {line('Nut thread strips at', 'strip', strip.nutLoad, 'kN')}
            <div>
              <dt>Weaker: {strip.weaker}</dt>
              <dd>{sensible(strip.margin, 3)} × the load</dd>
            </div>
          </>
        )}
      </dl>
      <p className="small">{[hot?.basis, stretch?.basis, strip?.basis].filter(Boolean).join(' · ')}</p>
    </CardSection>
  );
}

function StrengthTable(props: SectionProps) {
  return (
    <SideScroll>
      <table className="tab">
        <thead>
          <tr>
            <th scope="col">Strength</th>
            <th scope="col" className="num">
              Temperature <span className="unit">°C</span>
            </th>
            <th scope="col" className="num">
              Yield <span className="unit">MPa</span>
            </th>
            <th scope="col" className="num">
              Axial, of yield <span className="unit">%</span>
            </th>
            <th scope="col">Source</th>
          </tr>
        </thead>
        <tbody>
          {props.card.strength.map((row) => (
            <tr key={row.state}>
              <th scope="row">{row.state === 'assembly' ? 'at assembly' : 'in operation'}</th>
              <td className="num">
                {row.temperature === null ? <Unknown /> : inUnit(row.temperature, 'degC')}
              </td>
              <td className="num">{row.yield === null ? <Unknown /> : inUnit(row.yield, 'MPa')}</td>
              <td className="num">
                <CardNumber
                  of="strength"
                  about={[row.state === 'assembly' ? 'at assembly' : 'in operation']}
                  {...props}
                >
                  {row.axialOfYield === null ? <Unknown /> : inUnit(row.axialOfYield, 'percent')}
                </CardNumber>
              </td>
              <td>
                {row.yield !== null && <Origin origin={row.origin} />}{' '}
                <span className="small">{row.source}</span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </SideScroll>
  );
}
