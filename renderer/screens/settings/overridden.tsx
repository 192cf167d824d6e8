import type { IssuedSetting } from '../../../core/contract/setting.ts';
import { SeverityMark } from '../../components/marks.tsx';

/** On screen and on paper, before the number: what was refused, and who answers for setting it aside. */
export function Overridden({ issued }: { readonly issued: IssuedSetting }) {
  if (issued.overrides.length === 0) return null;
  return (
    <section className="overridden" aria-labelledby="overridden">
      <h2 id="overridden">Issued against a refusal</h2>
      {issued.overrides.map(({ code, findings, reason }) => (
        <article className="f refusal" key={code}>
          <SeverityMark severity="refusal" />
          <div>
            <h3>
              <span className="word">Overridden by {issued.issuedBy}</span>
              <br />
              {findings[0]?.title ?? code}
            </h3>
            {findings.map(({ subject, detail }) => (
              <p key={`${subject} ${detail}`}>{detail}</p>
            ))}
            <p>
              <b>Reason:</b> {reason}
            </p>
          </div>
        </article>
      ))}
    </section>
  );
}
