import { Link } from 'wouter';
import type { ToolDetail } from '../../../core/contract/tool.ts';
import { useAsk } from '../../app/ask.ts';
import { counted } from '../../app/text/number.ts';
import { day } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { Unknown } from '../../components/number.tsx';
import { CertificateSection } from './certificate-section.tsx';
import { ToolIndex } from './tool-index.tsx';
import { toolLines } from './tool-lines.ts';

export function ToolPage({ id }: { readonly id: string }) {
  const tool = useAsk('tool.get', { id });
  return (
    <Desk
      indexLabel="Tools"
      index={<ToolIndex current={id} />}
      doings={tool.data && <ToolDoings id={id} />}
      margin={tool.data && <ToolMargin tool={tool.data} />}
    >
      <Asked asking={tool} what="the tool">
        {(detail) => (
          <>
            <Title
              name={detail.data.number}
              beside={detail.data.properties.class}
              under={[detail.data.serial && `serial ${detail.data.serial}`, detail.data.place]
                .filter(Boolean)
                .join(' · ')}
              kind={
                <>
                  {detail.data.status}
                  <span className="small">version {detail.version}</span>
                </>
              }
            />
            <dl className="lines narrow">
              {toolLines(detail.data).map(([name, text]) => (
                <div key={name}>
                  <dt>{name}</dt>
                  <dd>{text ?? <Unknown />}</dd>
                </div>
              ))}
            </dl>
            {detail.data.remarks && (
              <section>
                <h2>Remarks</h2>
                <p>{detail.data.remarks}</p>
              </section>
            )}
            <Certificates certificates={detail.certificates} />
            {detail.certificates.length === 0 && (
              <section>
                <h2>Certificates</h2>
                <p className="small">No certificate hangs on this tool.</p>
              </section>
            )}
          </>
        )}
      </Asked>
    </Desk>
  );
}

/** The certificate calibrated last stands open; the earlier ones are folded under it. */
function Certificates({ certificates }: { readonly certificates: ToolDetail['certificates'] }) {
  const ordered = [...certificates].sort((one, other) =>
    other.data.calibratedOn.localeCompare(one.data.calibratedOn),
  );
  const [newest, ...earlier] = ordered;
  return (
    <>
      {newest && <CertificateSection certificate={newest} />}
      {earlier.map((certificate) => (
        <details key={certificate.id} className="folded">
          <summary>
            Certificate {certificate.data.number}{' '}
            <span className="small">
              {day(certificate.data.calibratedOn)} to {day(certificate.data.validUntil)},{' '}
              {certificate.data.result}
            </span>
          </summary>
          <CertificateSection certificate={certificate} />
        </details>
      ))}
    </>
  );
}

function ToolMargin({ tool }: { readonly tool: ToolDetail }) {
  return (
    <section>
      <h2>Used</h2>
      <p>
        {tool.uses === 0
          ? 'Not used in a recorded event yet.'
          : `In ${counted(tool.uses, 'recorded event')}.`}
      </p>
    </section>
  );
}

function ToolDoings({ id }: { readonly id: string }) {
  return (
    <>
      <Link className="act" href={`/tools/${id}/certificates/new`}>
        Add a certificate
      </Link>
      <Link className="quiet" href={`/tools/${id}/edit`}>
        Edit tool
      </Link>
    </>
  );
}
