import type { CertificateData, CertificateLineView } from '../../../core/contract/tool.ts';
import { UNITS, type Unit } from '../../../core/units/units.ts';
import { inUnit, unitLabel } from '../../app/text/number.ts';

interface TorquePointsProps {
  readonly line: CertificateLineView;
  readonly pressureUnit: Unit;
  readonly torqueUnit: Unit;
}

export function TorquePoints({ line, pressureUnit, torqueUnit }: TorquePointsProps) {
  return (
    <table className="tab">
      <thead>
        <tr>
          <th scope="col" className="num">
            Pressure <span className="unit">{unitLabel(pressureUnit)}</span>
          </th>
          <th scope="col" className="num">
            Torque <span className="unit">{unitLabel(torqueUnit)}</span>
          </th>
          <th scope="col" className="num">
            Away from the line <span className="unit">{unitLabel(torqueUnit)}</span>
          </th>
          <th scope="col">Direction</th>
        </tr>
      </thead>
      <tbody>
        {line.points.map((point, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a certificate's points never change place
          <tr key={at}>
            <td className="num">{inUnit(point.pressure, pressureUnit)}</td>
            <td className="num">{inUnit(point.torque, torqueUnit)}</td>
            <td className="num">{inUnit(point.residual, torqueUnit)}</td>
            <td>{point.direction}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

type WithoutLine = Exclude<CertificateData['measured'], { kind: 'pressure-torque' }>;

/** Points of a gauge or a hand torque wrench, as written on the certificate. */
export function PointPairs({ measured }: { readonly measured: WithoutLine }) {
  const { kind } = measured;
  const points =
    kind === 'gauge'
      ? measured.points.map(({ indicated, reference }) => ({ shown: indicated, reference }))
      : measured.points.map(({ set, reference }) => ({ shown: set, reference }));
  if (points.length === 0) return <p className="small">The certificate states no points.</p>;
  return (
    <table className="tab narrow">
      <thead>
        <tr>
          <th scope="col" className="num">
            {kind === 'gauge' ? 'Gauge showed' : 'Wrench set to'}
          </th>
          <th scope="col" className="num">
            Reference
          </th>
        </tr>
      </thead>
      <tbody>
        {points.map((point, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a certificate's points never change place
          <tr key={at}>
            <td className="num">
              {point.shown.text} <span className="unit">{UNITS[point.shown.unit].label}</span>
            </td>
            <td className="num">
              {point.reference.text} <span className="unit">{UNITS[point.reference.unit].label}</span>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
