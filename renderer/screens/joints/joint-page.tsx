import { useState } from 'react';
import { Link } from 'wouter';
import type { JointDetail } from '../../../core/contract/joint.ts';
import { useAsk } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { BoltCircle } from '../../components/bolt-circle.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { JointChartSection } from './joint-chart-section.tsx';
import { type JointGroup, jointGroups } from './joint-groups.ts';
import { JointHistory } from './joint-history.tsx';
import { JointIndex } from './joint-index.tsx';
import { flangeWords, type JointLine, jointLines } from './joint-lines.ts';
import { JointDoings, JointMargin } from './joint-margin.tsx';
import { ValueLines } from './value-lines.tsx';

export function JointPage({ id }: { readonly id: string }) {
  const joint = useAsk('joint.get', { id });
  const [line, setLine] = useState<JointLine | null>(null);
  return (
    <Desk
      indexLabel="Joints"
      index={<JointIndex current={id} />}
      doings={joint.data && <JointDoings id={id} />}
      margin={joint.data && <JointMargin joint={joint.data} line={line} />}
    >
      <Asked asking={joint} what="the joint">
        {(detail) => (
          <>
            <JointTitle joint={detail} />
            <div className="two top-aligned">
              <ValueLines lines={jointLines(detail)} chosen={line} onChoose={setLine} />
              <JointDrawing joint={detail} />
            </div>
            <section aria-label="Further data">
              {jointGroups(detail.data).map((group) => (
                <FoldedLines key={group.name} group={group} chosen={line} onChoose={setLine} />
              ))}
            </section>
            {detail.data.remarks && (
              <section>
                <h2>Remarks</h2>
                <p>{detail.data.remarks}</p>
              </section>
            )}
            <JointChartSection id={id} />
            <JointHistory id={id} />
          </>
        )}
      </Asked>
    </Desk>
  );
}

interface FoldedLinesProps {
  readonly group: JointGroup;
  readonly chosen: JointLine | null;
  readonly onChoose: (line: JointLine) => void;
}

function FoldedLines({ group, chosen, onChoose }: FoldedLinesProps) {
  const known = group.lines.filter((line) => line.text !== null).length;
  return (
    <details className="folded">
      <summary>
        {group.name}{' '}
        <span className="small">{known === 0 ? 'not known' : `${known} of ${group.lines.length} known`}</span>
      </summary>
      <ValueLines lines={group.lines} chosen={chosen} onChoose={onChoose} />
    </details>
  );
}

export function JointTitle({ joint }: { readonly joint: JointDetail }) {
  const { data } = joint;
  return (
    <Title
      name={data.tag}
      beside={data.location}
      under={[flangeWords(data), data.bolting.grade, data.gasket?.type, data.service]
        .filter(Boolean)
        .join(' · ')}
      kind={
        <>
          {joint.unitName}
          <span className="small">version {joint.version}</span>
        </>
      }
    />
  );
}

function JointDrawing({ joint }: { readonly joint: JointDetail }) {
  return (
    <figure className="order">
      {joint.boltCount === null ? (
        <p className="small">
          Without the number of studs there is no drawing.{' '}
          <Link href={`/joints/${joint.id}/edit`}>Enter the number of studs</Link>
        </p>
      ) : (
        <>
          <BoltCircle count={joint.boltCount} />
          <figcaption className="small">
            {joint.boltCount} bolts, numbered clockwise from the mark, seen from the nut side
          </figcaption>
        </>
      )}
    </figure>
  );
}
