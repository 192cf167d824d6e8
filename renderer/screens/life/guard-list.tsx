import type { GuardView } from '../../../core/contract/life.ts';
import { StandingShape } from '../../components/standing-shape.tsx';

const SHAPE = { met: 'kept', 'not met': 'broken', asked: 'not known' } as const;
const WORDS = { met: 'Met', 'not met': 'Not met', asked: 'Asked here' } as const;

/** What a step needs and how each stands; readable without colour and without the shapes. */
export function GuardList({ guards }: { readonly guards: readonly GuardView[] }) {
  if (guards.length === 0) return <p className="small">Nothing beside the state.</p>;
  return (
    <ul className="guards">
      {guards.map(({ says, standing, reason }) => (
        <li key={says} className={standing === 'not met' ? 'unmet' : undefined}>
          <StandingShape standing={SHAPE[standing]} />
          <span>
            <span className="unseen">{WORDS[standing]}: </span>
            {says}
            {reason !== null && <span className="reason">{reason}</span>}
          </span>
        </li>
      ))}
    </ul>
  );
}
