import { Link } from 'wouter';
import type { JointDetail } from '../../../core/contract/joint.ts';
import { SeverityMark } from '../../components/marks.tsx';
import { ORIGIN_WORDS } from '../../components/number.tsx';
import { type JointLine, jointLines } from './joint-lines.ts';

interface JointMarginProps {
  readonly joint: JointDetail;
  readonly line: JointLine | null;
}

export function JointMargin({ joint, line }: JointMarginProps) {
  const lines = jointLines(joint);
  const missing = lines.filter((each) => each.text === null).map((each) => each.name);
  const doubtful = lines.filter((each) => each.status !== null);
  return (
    <>
      {line && (
        <section>
          <h2>Where it comes from</h2>
          <p>
            <b>{line.name}:</b> {line.text}
          </p>
          <p className="small">
            {ORIGIN_WORDS[line.origin]}
            {line.source && ` · ${line.source}`}
            {line.status && ` · ${line.status}`}
          </p>
        </section>
      )}
      {(missing.length > 0 || doubtful.length > 0) && (
        <section>
          <h2>Open on this page</h2>
          {missing.length > 0 && (
            <article className="f note">
              <SeverityMark severity="note" />
              <div>
                <h3>Not known</h3>
                <p>{missing.join(', ')}.</p>
                <Link href={`/joints/${joint.id}/edit`}>Enter what can be measured</Link>
              </div>
            </article>
          )}
          {doubtful.map((each) => (
            <article className="f note" key={each.name}>
              <SeverityMark severity="note" />
              <div>
                <h3>
                  {each.name}: {each.status}
                </h3>
                <p>{each.source}. A person confirms the value before it is used.</p>
              </div>
            </article>
          ))}
        </section>
      )}
    </>
  );
}

export function JointDoings({ id }: { readonly id: string }) {
  return (
    <>
      <Link className="act" href={`/joints/${id}/setting`}>
        Work out a setting
      </Link>
      <Link className="quiet" href={`/at/${id}`}>
        At the joint
      </Link>
      <Link className="quiet" href={`/joints/${id}/record/tightening`}>
        Record tightening
      </Link>
      <Link className="quiet" href={`/joints/${id}/record/breakout`}>
        Record breakout
      </Link>
      <Link className="quiet" href={`/joints/${id}/breakout`}>
        Breakout so far and next
      </Link>
      <Link className="quiet" href={`/joints/${id}/scatter`}>
        Model the load between bolts
      </Link>
      <Link className="quiet" href={`/joints/${id}/retightening`}>
        Check a retightening
      </Link>
      <Link className="quiet" href={`/is-this/${id}`}>
        Is this my joint?
      </Link>
      <Link className="quiet" href={`/tags/${id}`}>
        Print its tag
      </Link>
      <Link className="quiet" href={`/joints/${id}/compare`}>
        Compare an instruction sheet
      </Link>
      <Link className="quiet" href={`/joints/${id}/edit`}>
        Edit joint
      </Link>
    </>
  );
}
