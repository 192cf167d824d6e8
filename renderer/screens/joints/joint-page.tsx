import { useState } from 'react';
import { Link } from 'wouter';
import type { JointDetail } from '../../../core/contract/joint.ts';
import { identityOf } from '../../../core/joint/identity.ts';
import { useAsk } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { BoltCircle } from '../../components/bolt-circle.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { Picture } from '../../components/picture.tsx';
import { Attachments } from '../attachments/attachments.tsx';
import { LookAlikesMargin } from '../identity/look-alikes.tsx';
import { JointLeaksSection } from '../leaks/joint-leaks.tsx';
import { LifeSection } from '../life/life-section.tsx';
import { RecordSection } from '../record/record-section.tsx';
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
      margin={
        joint.data && (
          <>
            <LookAlikesMargin id={id} />
            <JointMargin joint={joint.data} line={line} />
          </>
        )
      }
      below={joint.data && <JointSections joint={joint.data} line={line} onLine={setLine} />}
    >
      <Asked asking={joint} what="the joint">
        {(detail) => <JointTitle joint={detail} />}
      </Asked>
    </Desk>
  );
}

interface JointSectionsProps {
  readonly joint: JointDetail;
  readonly line: JointLine | null;
  readonly onLine: (line: JointLine) => void;
}

function JointSections({ joint, line, onLine }: JointSectionsProps) {
  return (
    <>
      <LifeSection id={joint.id} />
      <div className="two top-aligned">
        <ValueLines lines={jointLines(joint)} chosen={line} onChoose={onLine} />
        <div>
          <JointDrawing joint={joint} />
          <JointPhoto joint={joint} />
        </div>
      </div>
      <section aria-label="Further data">
        {jointGroups(joint.data).map((group) => (
          <FoldedLines key={group.name} group={group} chosen={line} onChoose={onLine} />
        ))}
      </section>
      {joint.data.remarks && (
        <section>
          <h2>Remarks</h2>
          <p>{joint.data.remarks}</p>
        </section>
      )}
      <JointChartSection id={joint.id} />
      <JointLeaksSection id={joint.id} />
      <RecordSection jointId={joint.id} eventId={null} />
      <JointFiles id={joint.id} />
      <JointHistory id={joint.id} />
    </>
  );
}

function JointFiles({ id }: { readonly id: string }) {
  const owner = { kind: 'joint', id } as const;
  const files = useAsk('attachment.list', owner);
  return (
    <Asked asking={files} what="the files">
      {({ rows }) => <Attachments owner={owner} rows={rows} />}
    </Asked>
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
    <details className={known === 0 ? 'folded none-known' : 'folded'}>
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

function JointPhoto({ joint: { data } }: { readonly joint: JointDetail }) {
  const { photo } = identityOf(data);
  return photo === null ? null : <Picture hash={photo} label={`Photo of ${data.tag}`} />;
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
