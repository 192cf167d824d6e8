import type { LeakRow } from '../../../core/contract/leak-log.ts';
import { Unknown } from '../../components/number.tsx';
import { positionWords } from './leak-words.ts';

const SIZE = 34;
const CENTRE = SIZE / 2;
const RADIUS = 12;

/** Where on the circle it leaks, seen from the side named; the words say the same as the mark. */
export function LeakPosition({ leak }: { readonly leak: LeakRow }) {
  const words = positionWords(leak);
  if (words === '') return <Unknown />;
  return (
    <div className="leak-position">
      {leak.clock !== null && <Clock hour={leak.clock} />}
      <span>{words}</span>
    </div>
  );
}

function Clock({ hour }: { readonly hour: number }) {
  const angle = (hour / 12) * 2 * Math.PI;
  const x = CENTRE + RADIUS * Math.sin(angle);
  const y = CENTRE - RADIUS * Math.cos(angle);
  return (
    <svg viewBox={`0 0 ${SIZE} ${SIZE}`} aria-hidden="true">
      <circle cx={CENTRE} cy={CENTRE} r={RADIUS} fill="none" stroke="var(--rule-strong)" strokeWidth="1.4" />
      <path
        d={`M${CENTRE} ${CENTRE - RADIUS - 3}v3`}
        stroke="var(--rule-strong)"
        strokeWidth="1.4"
        fill="none"
      />
      <path d={`M${CENTRE} ${CENTRE}L${x} ${y}`} stroke="var(--refusal)" strokeWidth="1.4" />
      <circle cx={x} cy={y} r="3.6" fill="var(--refusal)" />
    </svg>
  );
}
