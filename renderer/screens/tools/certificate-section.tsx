import { lazy, Suspense, useState } from 'react';
import type { CertificateDetail, CertificateLineView } from '../../../core/contract/tool.ts';
import { UNITS, type Unit } from '../../../core/units/units.ts';
import { useRegister } from '../../app/register.ts';
import { count, exact, unitLabel, withUnit } from '../../app/text/number.ts';
import { day } from '../../app/text/time.ts';
import { Busy } from '../../components/busy.tsx';
import { Unknown } from '../../components/number.tsx';
import { GaugePoints, TorquePoints } from './certificate-tables.tsx';
import { perUnit, pointUnits } from './certificate-units.ts';

const CertificateChart = lazy(() => import('../../charts/certificate-chart.tsx'));

export function CertificateSection({ certificate }: { readonly certificate: CertificateDetail }) {
  const { today } = useRegister();
  const { data, line } = certificate;
  const lapsed = data.validUntil < today;
  const [asTable, setAsTable] = useState(false);
  return (
    <section aria-label={`Certificate ${data.number}`}>
      <div className="spread">
        <h2>Certificate {data.number}</h2>
        <span className={lapsed ? 'flag' : undefined}>
          {lapsed ? 'lapsed' : 'valid to'} {day(data.validUntil)}
        </span>
      </div>
      <dl className="lines narrow">
        <Line name="Calibrated on" text={day(data.calibratedOn)} />
        <Line name="Laboratory" text={data.laboratory} />
        <Line name="Validity set by" text={data.validityBasis} />
        <Line name="Result" text={`${data.result}, ${data.condition}`} />
        <Line
          name="Calibrated together with"
          text={certificate.withTools.join(', ') || 'no other part named'}
        />
        {data.measured.kind === 'pressure-torque' && (
          <Line
            name="Uncertainty of the reference"
            text={
              data.measured.expandedUncertainty &&
              `${data.measured.expandedUncertainty.text} ${UNITS[data.measured.expandedUncertainty.unit].label}, k = ${data.measured.coverageFactor}`
            }
          />
        )}
      </dl>
      {line && <LineWords line={line} {...pointUnits(data)} />}
      <div className="spread no-print">
        <span />
        {line && (
          <button type="button" className="link small" onClick={() => setAsTable(!asTable)}>
            {asTable ? 'Show as chart' : 'Show as table'}
          </button>
        )}
      </div>
      {line && !asTable && (
        <Suspense fallback={<Busy what="Drawing the chart" />}>
          <CertificateChart line={line} name={data.number} {...pointUnits(data)} />
        </Suspense>
      )}
      {line && asTable && <TorquePoints line={line} {...pointUnits(data)} />}
      {data.measured.kind === 'gauge' && <GaugePoints points={data.measured.points} />}
      {data.remarks && <p className="small">{data.remarks}</p>}
    </section>
  );
}

function Line({ name, text }: { readonly name: string; readonly text: string | null }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{text ?? <Unknown />}</dd>
    </div>
  );
}

interface LineWordsProps {
  readonly line: CertificateLineView;
  readonly pressureUnit: Unit;
  readonly torqueUnit: Unit;
}

function LineWords({ line, pressureUnit, torqueUnit }: LineWordsProps) {
  const torque = (si: number) => withUnit(si, torqueUnit);
  const slope = perUnit(line.slope, torqueUnit, pressureUnit);
  const slopeWords = `${exact(Number(slope.toPrecision(5)))} ${unitLabel(torqueUnit)}/${unitLabel(pressureUnit)}`;
  return (
    <p className="after">
      Line through {count(line.points.length)} points: T = {torque(line.intercept)} + {slopeWords} × p
      {line.throughOrigin && ', a line through zero would do as well'}. The point farthest from it lies{' '}
      {torque(Math.abs(line.largestResidual))} {line.largestResidual < 0 ? 'below' : 'above'}.
    </p>
  );
}
