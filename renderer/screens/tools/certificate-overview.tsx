import type { CertificateAnalysis } from '../../../core/contract/certificate-view.ts';
import type { CertificateDetail } from '../../../core/contract/tool.ts';
import { UNITS } from '../../../core/units/units.ts';
import { withUnit } from '../../app/text/number.ts';
import { day } from '../../app/text/time.ts';
import { SideScroll } from '../../components/side-scroll.tsx';
import { CertificateSection } from './certificate-section.tsx';
import { signed } from './record-checks.tsx';

interface OverviewProps {
  readonly certificates: readonly CertificateDetail[];
}

/** Certificates of a tool, the one calibrated last first: as found, as left, and the newest one's points. */
export function CertificateOverview({ certificates }: OverviewProps) {
  const ordered = [...certificates].sort((one, other) =>
    other.data.calibratedOn.localeCompare(one.data.calibratedOn),
  );
  const [newest, ...earlier] = ordered;
  return (
    <section aria-label="Certificates">
      <h2>Certificates</h2>
      {newest === undefined ? (
        <p className="small">No certificate hangs on this tool.</p>
      ) : (
        <>
          <SideScroll>
            <table className="tab">
              <thead>
                <tr>
                  <th scope="col">Certificate</th>
                  <th scope="col">Calibrated</th>
                  <th scope="col">Valid until</th>
                  <th scope="col">As found</th>
                  <th scope="col">As left</th>
                  <th scope="col">Together with</th>
                </tr>
              </thead>
              <tbody>
                {ordered.map((certificate) => (
                  <Row key={certificate.id} certificate={certificate} />
                ))}
              </tbody>
            </table>
          </SideScroll>
          <NewestPoints certificate={newest} />
          <div className="no-print">
            <CertificateSection certificate={newest} />
            {earlier.map((certificate) => (
              <details key={certificate.id} className="folded">
                <summary>Certificate {certificate.data.number}, points and line</summary>
                <CertificateSection certificate={certificate} />
              </details>
            ))}
          </div>
        </>
      )}
    </section>
  );
}

function Row({ certificate }: { readonly certificate: CertificateDetail }) {
  const { data, analysis } = certificate;
  const adjusted = data.asFound !== null && data.asFound !== undefined;
  const found = adjusted || data.condition === 'as found';
  return (
    <tr>
      <th scope="row">
        {data.number}
        <div className="small">{data.laboratory}</div>
      </th>
      <td className="date">{day(data.calibratedOn)}</td>
      <td className="date">
        {day(data.validUntil)}
        <div className="small">{data.validityBasis}</div>
      </td>
      <td>
        {found ? (
          <Verdict
            stated={adjusted ? null : data.result}
            verdict={adjusted ? analysis.asFound : analysis.asLeft}
          />
        ) : (
          <span className="small">not stated</span>
        )}
      </td>
      <td>
        {adjusted || data.condition === 'as left' ? (
          <Verdict stated={data.result} verdict={analysis.asLeft} />
        ) : (
          <span className="small">not adjusted</span>
        )}
      </td>
      <td>{certificate.withTools.join(', ') || <span className="small">no other part named</span>}</td>
    </tr>
  );
}

interface VerdictProps {
  /** As the laboratory stated it. */
  readonly stated: string | null;
  /** Worked out from the points by the certificate's own limit and rule. */
  readonly verdict: CertificateAnalysis['asLeft'];
}

function Verdict({ stated, verdict }: VerdictProps) {
  const worked =
    verdict === null || verdict.worst === null
      ? null
      : `largest error ${signed(verdict.worst)}${verdict.at === null ? '' : ` at ${withUnit(verdict.at, 'bar')}`}`;
  const bad = stated === 'outside limits' || verdict?.verdict === 'rejected';
  return (
    <>
      <span className={bad ? 'due-overdue' : undefined}>{stated ?? verdict?.verdict ?? 'not known'}</span>
      {worked && (
        <div className="small">
          {worked}
          {stated !== null && verdict !== null && `, ${verdict.verdict} by its rule`}
        </div>
      )}
    </>
  );
}

/** The points in as little room as they need; the chart beside them stays on the screen. */
function NewestPoints({ certificate: { data } }: { readonly certificate: CertificateDetail }) {
  const { measured } = data;
  const show = (value: { text: string; unit: keyof typeof UNITS }) =>
    `${value.text} ${UNITS[value.unit].label}`;
  const points =
    measured.kind === 'pressure-torque'
      ? measured.points.map((point) => [show(point.pressure), show(point.torque), point.direction])
      : measured.kind === 'gauge'
        ? measured.points.map((point) => [show(point.indicated), show(point.reference), ''])
        : measured.points.map((point) => [show(point.set), show(point.reference), '']);
  return (
    <div className="only-print">
      <p className="small">
        Points of certificate {data.number}:{' '}
        {measured.kind === 'pressure-torque'
          ? `pressure, torque${measured.expandedUncertainty === null ? '; uncertainty of the reference not stated' : `; reference ± ${show(measured.expandedUncertainty)}, k = ${measured.coverageFactor}`}`
          : 'shown, reference'}
        {data.method && `; ${data.method}`}
        {data.decisionRule &&
          `; limit ± ${show(data.decisionRule.limit)}, ${data.decisionRule.guardBand ? 'with' : 'without'} guard band`}
        .
      </p>
      {points.length === 0 ? (
        <p className="small">The certificate states no points.</p>
      ) : (
        <ol className="points-run">
          {points.map(([first, second, direction], at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a certificate's points never change place
            <li key={at}>
              <span className="num">{first}</span>
              <span className="num">{second}</span>
              <span>{direction}</span>
            </li>
          ))}
        </ol>
      )}
    </div>
  );
}
