import { scannedName } from '../../../core/text/scan-code.ts';
import { SeverityMark } from '../../components/marks.tsx';

interface Named {
  readonly id: string;
  readonly tag: string;
}

export interface Scanned {
  /** As it arrived. */
  readonly text: string;
  /** Null when no joint has the tag. */
  readonly joint: Named | null;
}

interface VerdictProps {
  readonly scanned: Scanned;
  /** Joint of the job that is open; null when none is. */
  readonly job: Named | null;
}

/** What the tag says of the job, in one plain sentence; never that the joint is safe to open. */
export function Verdict({ scanned: { text, joint }, job }: VerdictProps) {
  if (joint === null) {
    return (
      <p className="at-verdict other" role="alert">
        <SeverityMark severity="refusal" />
        <span>
          No joint has the tag <b>“{scannedName('J', text)}”</b>. Look at the tag again before anything else.
        </span>
      </p>
    );
  }
  if (job !== null && job.id !== joint.id) {
    return (
      <p className="at-verdict other" role="alert">
        <SeverityMark severity="refusal" />
        <span>
          The tag you scanned is <b>{joint.tag}</b>, the job you opened is <b>{job.tag}</b>: not the same.
          Stop, and find {job.tag}, or open the job of {joint.tag}.
        </span>
      </p>
    );
  }
  return (
    <p className="at-verdict" role="status">
      <span>
        {job === null ? (
          <>
            The tag is that of <b>{joint.tag}</b>. No job is open to hold it against.
          </>
        ) : (
          <>
            The tag is that of the job you opened, <b>{joint.tag}</b>.
          </>
        )}{' '}
        A tag says nothing of pressure: isolation and zero energy are proven at the joint.
      </span>
    </p>
  );
}
