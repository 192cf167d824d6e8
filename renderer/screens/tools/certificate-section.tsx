import { lazy, Suspense, useState } from 'react';
import { Link } from 'wouter';
import type { CertificateDetail, CertificateLineView } from '../../../core/contract/tool.ts';
import {
  certificateFinding,
  hysteresisWords,
  leaveOneOutWords,
} from '../../../core/text/certificate-words.ts';
import { fromSI, UNITS, type Unit } from '../../../core/units/units.ts';
import { useRegister } from '../../app/register.ts';
import { count, exact, unitLabel, withUnit } from '../../app/text/number.ts';
import { day } from '../../app/text/time.ts';
import { Busy } from '../../components/busy.tsx';
import { ExportList } from '../../components/export-list.tsx';
import { Plain, Unknown } from '../../components/number.tsx';
import { caseOffered } from './case-offered.ts';
import { LinePoints } from './certificate-points-read.tsx';
import { PointPairs, TorquePoints } from './certificate-tables.tsx';
import { perUnit, pointUnits } from './certificate-units.ts';

const CertificateChart = lazy(() => import('../../charts/certificate-chart.tsx'));

export function CertificateSection({ certificate }: { readonly certificate: CertificateDetail }) {
  const { today } = useRegister();
  const { data, line, analysis } = certificate;
  const lapsed = data.validUntil < today;
  const [asTable, setAsTable] = useState(false);
  const units = pointUnits(data);
  const adjusted = data.asFound != null;
  return (
    <section aria-label={`Certificate ${data.number}`}>
      <div className="spread">
        <h2>Certificate {data.number}</h2>
        <span className={lapsed ? 'flag' : undefined}>
          {lapsed ? 'lapsed' : 'valid to'} {day(data.validUntil)}
        </span>
      </div>
      <p className="said-once">
        {certificateFinding({
          analysis,
          adjusted,
          setIn: data.measured.kind === 'hand torque' ? units.torqueUnit : units.pressureUnit,
        })}{' '}
        {caseOffered(certificate) && (
          <Link className="no-print" href={`/cases/new/${data.toolId}/${certificate.id}`}>
            Open a case on it
          </Link>
        )}
      </p>
      <Stated certificate={certificate} />
      {line && <LineWords line={line} {...units} />}
      {line && (
        <dl className="lines words">
          <div>
            <dt>Hysteresis</dt>
            <dd>{hysteresisWords(analysis.hysteresis, units.pressureUnit, units.torqueUnit)}</dd>
          </div>
          <div>
            <dt>Leave one out</dt>
            <dd>{leaveOneOutWords(analysis.leaveOneOut, units.pressureUnit, units.torqueUnit)}</dd>
          </div>
        </dl>
      )}
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
          <CertificateChart line={line} asFound={certificate.asFoundLine} name={data.number} {...units} />
          <LinePoints line={line} {...units} />
        </Suspense>
      )}
      {line && (
        <ExportList
          name={`points of ${data.number}`}
          headings={[
            `Pressure, ${unitLabel(units.pressureUnit)}`,
            `Torque, ${unitLabel(units.torqueUnit)}`,
            `Away from the line, ${unitLabel(units.torqueUnit)}`,
            'Direction',
          ]}
          rows={async () => line.points}
          cells={(point) => [
            fromSI(point.pressure, units.pressureUnit),
            fromSI(point.torque, units.torqueUnit),
            fromSI(point.residual, units.torqueUnit),
            point.direction,
          ]}
        />
      )}
      {line && asTable && <Tables certificate={certificate} line={line} />}
      {data.measured.kind !== 'pressure-torque' && <PointPairs measured={data.measured} />}
      {data.asFound != null && data.asFound.kind !== 'pressure-torque' && (
        <>
          <h3>As found, before adjustment</h3>
          <PointPairs measured={data.asFound} />
        </>
      )}
      {data.remarks && <p className="small">{data.remarks}</p>}
    </section>
  );
}

/** What the certificate states of itself; what was not entered with it is not known. */
function Stated({ certificate: { data, withTools } }: { readonly certificate: CertificateDetail }) {
  const { measured, environment, decisionRule } = data;
  const surroundings = [environment?.temperature, environment?.humidity].flatMap((value) =>
    value ? [shown(value)] : [],
  );
  return (
    <dl className="lines narrow">
      <Line name="Calibrated on" text={day(data.calibratedOn)} />
      <Line name="Laboratory" text={data.laboratory} />
      <Line name="Validity set by" text={data.validityBasis} />
      <Line name="Result" text={`${data.result}, ${data.condition}`} />
      <Line name="Calibrated together with" text={withTools.join(', ') || 'no other part named'} />
      {measured.kind === 'pressure-torque' && (
        <Line
          name="Uncertainty of the reference"
          text={
            measured.expandedUncertainty &&
            `${shown(measured.expandedUncertainty)}, k = ${measured.coverageFactor}`
          }
        />
      )}
      <Line
        name="Limit and decision rule"
        text={
          decisionRule &&
          `± ${shown(decisionRule.limit)} of the reading, ${decisionRule.guardBand ? 'with' : 'without'} guard band`
        }
      />
      <Line name="Method" text={data.method || null} />
      <Line name="Surroundings" text={surroundings.join(', ') || null} />
    </dl>
  );
}

const shown = (value: { readonly text: string; readonly unit: Unit }) =>
  `${value.text} ${UNITS[value.unit].label}`;

interface TablesProps {
  readonly certificate: CertificateDetail;
  readonly line: CertificateLineView;
}

/** The rows the charts are drawn from, and how sure one setting is at each pressure. */
function Tables({ certificate, line }: TablesProps) {
  const units = pointUnits(certificate.data);
  return (
    <>
      <TorquePoints line={line} {...units} />
      {certificate.asFoundLine && (
        <>
          <h3>As found, before adjustment</h3>
          <TorquePoints line={certificate.asFoundLine} {...units} />
        </>
      )}
      <table className="tab narrow">
        <thead>
          <tr>
            <th scope="col" className="num">
              Pressure <span className="unit">{unitLabel(units.pressureUnit)}</span>
            </th>
            <th scope="col" className="num">
              One setting, ± <span className="unit">%</span>, k = 2
            </th>
          </tr>
        </thead>
        <tbody>
          {certificate.analysis.settingUncertainty.map(({ pressure, expanded }) => (
            <tr key={pressure}>
              <td className="num">
                <Plain si={pressure} unit={units.pressureUnit} />
              </td>
              <td className="num">
                <Plain si={expanded} unit="percent" />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
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
