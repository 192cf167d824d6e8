import type { LimitRow } from '../../../core/contract/card-views.ts';
import { type Standing, StandingShape } from '../../components/standing-shape.tsx';

type State = LimitRow['state'];

/** A limit that is not known is never called a pass. */
export function stateWords(state: State, side: LimitRow['side']): string {
  if (state === 'met') return 'pass';
  if (state === 'not known') return 'not known';
  return side === 'at least' ? 'not reached' : 'exceeded';
}

const SHAPE: Readonly<Record<State, Standing>> = {
  met: 'kept',
  'not met': 'broken',
  'not known': 'not known',
};

interface LimitStateProps {
  readonly state: State;
  readonly side: LimitRow['side'];
}

/** Shape and word; each can be told without the other and without colour. */
export function LimitState({ state, side }: LimitStateProps) {
  return (
    <span className={state === 'not met' ? 'limit-state not-met' : 'limit-state'}>
      <StandingShape standing={SHAPE[state]} />
      {state === 'not known' ? <span className="unknown">not known</span> : stateWords(state, side)}
    </span>
  );
}
