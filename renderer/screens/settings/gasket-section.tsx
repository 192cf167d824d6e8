import type { GasketView } from '../../../core/contract/card-views.ts';
import { Measure, Plain } from '../../components/number.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { CardNumber } from './card-number.tsx';
import { CardSection, type SectionProps } from './card-section.tsx';

/** Each gasket under the card's load, and the design code's floor as a cross-check. */
export function GasketSections(props: SectionProps) {
  return props.card.gaskets.map((gasket) => <GasketSection key={gasket.name} gasket={gasket} {...props} />);
}

interface GasketSectionProps extends SectionProps {
  readonly gasket: GasketView;
}

function GasketSection({ gasket, ...props }: GasketSectionProps) {
  return (
    <CardSection title={`Gasket: ${gasket.name}`} finding={gasket.kind ?? 'kind not known'}>
      <dl className="lines narrow">
        <div>
          <dt>Sealing area</dt>
          <dd>
            <CardNumber of="gasketArea" about={[gasket.name]} {...props}>
              <Measure si={gasket.area} unit="mm2" />
            </CardNumber>
          </dd>
        </div>
        <div>
          <dt>Stress at the end of tightening</dt>
          <dd>
            <CardNumber of="gasketStress" about={['tightening', gasket.name]} {...props}>
              <Measure si={gasket.stress} unit="MPa" />
            </CardNumber>
          </dd>
        </div>
      </dl>
      {gasket.cases.length > 0 && <CaseTable gasket={gasket} {...props} />}
      <CodeMinimum gasket={gasket} {...props} />
    </CardSection>
  );
}

function CaseTable({ gasket, ...props }: GasketSectionProps) {
  return (
    <SideScroll>
      <table className="tab">
        <thead>
          <tr>
            <th scope="col">Pressure case</th>
            <th scope="col" className="num">
              Pressure <span className="unit">bar</span>
            </th>
            <th scope="col" className="num">
              End force per stud <span className="unit">kN</span>
            </th>
            <th scope="col" className="num">
              Load left per stud <span className="unit">kN</span>
            </th>
            <th scope="col" className="num">
              Gasket stress left <span className="unit">MPa</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {gasket.cases.map((each) => (
            <tr key={each.case}>
              <th scope="row">
                {each.case}
                <div className="small">
                  {each.temperature !== null && <Measure si={each.temperature} unit="degC" />}
                </div>
              </th>
              <td className="num">
                <Plain si={each.pressure} unit="bar" />
              </td>
              <td className="num">
                <CardNumber of="endForce" about={[gasket.name, each.case]} {...props}>
                  <Plain si={each.endForcePerBolt} unit="kN" />
                </CardNumber>
              </td>
              <td className="num">
                <CardNumber of="residualLoad" about={[gasket.name, each.case]} {...props}>
                  <Plain si={each.residualLoad} unit="kN" />
                </CardNumber>
              </td>
              <td className="num">
                <CardNumber of="gasketStress" about={['under pressure', gasket.name, each.case]} {...props}>
                  <Plain si={each.stressLeft} unit="MPa" />
                </CardNumber>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </SideScroll>
  );
}

function CodeMinimum({ gasket, ...props }: GasketSectionProps) {
  const code = gasket.codeMinimum;
  if (code === null) {
    return (
      <p className="small">
        Code minimum <span className="unknown">not known</span>. It takes m, y, contact diameters and the
        design pressure.
      </p>
    );
  }
  return (
    <div>
      <h3>Code minimum</h3>
      <p className="small">{code.use}</p>
      <dl className="lines narrow">
        <Line name="In operation, Wm1" si={code.Wm1} unit="kN" />
        <Line name="When seating, Wm2" si={code.Wm2} unit="kN" />
        <div>
          <dt>Per stud, from {code.larger}</dt>
          <dd>
            <CardNumber of="codeMinimum" about={[gasket.name]} {...props}>
              <Measure si={code.perBolt} unit="kN" />
            </CardNumber>
          </dd>
        </div>
        <Line name="Effective width b" si={code.effectiveWidth} unit="mm" />
        <Line name="Reaction diameter G" si={code.reactionDiameter} unit="mm" />
      </dl>
    </div>
  );
}

interface LineProps {
  readonly name: string;
  readonly si: number;
  readonly unit: 'kN' | 'mm';
}

const Line = ({ name, si, unit }: LineProps) => (
  <div>
    <dt>{name}</dt>
    <dd>
      <Measure si={si} unit={unit} />
    </dd>
  </div>
);
