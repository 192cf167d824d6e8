import { Link } from 'wouter';
import { useAsk } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk } from '../../components/desk.tsx';
import { JointIndex } from '../joints/joint-index.tsx';
import { JointTitle } from '../joints/joint-page.tsx';
import { ForecastSection } from './forecast-section.tsx';
import { RatioSection } from './ratio-section.tsx';

/** What this joint's openings say, and what to expect of the next one. */
export function BreakoutPage({ id }: { readonly id: string }) {
  const joint = useAsk('joint.get', { id });
  return (
    <Desk
      indexLabel="Joints"
      index={<JointIndex current={id} />}
      below={
        joint.data && (
          <>
            <ForecastSection id={id} />
            <RatioSection of={{ kind: 'joint', jointId: id }} />
            <p className="no-print">
              <Link href={`/joints/${id}`}>Back to the joint</Link>{' '}
              <Link href="/breakout">Openings of the whole plant</Link>
            </p>
          </>
        )
      }
    >
      <Asked asking={joint} what="the joint">
        {(detail) => <JointTitle joint={detail} />}
      </Asked>
    </Desk>
  );
}
