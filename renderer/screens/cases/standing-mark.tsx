import { type Standing, StandingShape } from '../../components/standing-shape.tsx';

const WORDS: Readonly<Record<Standing, string>> = {
  broken: 'limit broken',
  'not sure': 'not sure',
  kept: 'kept',
  'not known': 'not known',
};

/** How a real load stands against its limits: shape and word, so that "not sure" and "not known" never look like kept. */
export function StandingMark({ standing, words }: { readonly standing: Standing; readonly words?: string }) {
  return (
    <span className={standing === 'broken' ? 'limit-state not-met' : 'limit-state'}>
      <StandingShape standing={standing} />
      <span className={standing === 'not known' ? 'unknown' : undefined}>{words ?? WORDS[standing]}</span>
    </span>
  );
}
