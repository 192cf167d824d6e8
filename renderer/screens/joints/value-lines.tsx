import { Origin, Unknown } from '../../components/number.tsx';
import type { JointLine } from './joint-lines.ts';

interface ValueLinesProps {
  readonly lines: readonly JointLine[];
  readonly chosen: JointLine | null;
  readonly onChoose: (line: JointLine) => void;
}

/** Data of a joint, each value with its origin; pressing one opens its source in the margin. */
export function ValueLines({ lines, chosen, onChoose }: ValueLinesProps) {
  return (
    <dl className="lines origin-lines">
      {lines.map((line) => (
        <div key={line.name}>
          <dt>{line.name}</dt>
          <dd>
            {line.text === null ? (
              <Unknown />
            ) : (
              <button
                type="button"
                className={line.origin === 'assumed' ? 'figure assumed' : 'figure'}
                aria-pressed={chosen?.name === line.name}
                onClick={() => onChoose(line)}
              >
                {line.text}
                <span className="unseen">, show its source</span>
              </button>
            )}
          </dd>
          <dd className="from">
            {line.text !== null && <Origin origin={line.origin} />}
            {line.status && <span className="flag"> · {line.status}</span>}
          </dd>
        </div>
      ))}
    </dl>
  );
}
