import type { RequestError } from '../../core/contract/errors.ts';

interface FailureProps {
  readonly error: RequestError;
  /** What the person was doing, as a statement: "The joint was not saved." */
  readonly what?: string;
}

/** A refused request in plain words: what, which field, what stood there, what is allowed. */
export function Failure({ error, what }: FailureProps) {
  return (
    <div className="failure" role="alert">
      <p>
        {what && <b>{what} </b>}
        {error.message}
      </p>
      {error.details.length > 0 && (
        <ul>
          {error.details.map((fault) => (
            <li key={`${fault.field} ${fault.allowed}`}>
              <b>{fieldWords(fault.field)}</b>
              {fault.value !== '' && `: “${fault.value}”`}. {sentence(fault.allowed)}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

const sentence = (allowed: string): string => (/^allowed/i.test(allowed) ? allowed : `Allowed: ${allowed}`);

/** "data.bolting.studLength" → "bolting, stud length". */
function fieldWords(path: string): string {
  const parts = path.replace(/^data\./, '').split('.');
  return parts
    .map((part) =>
      /^\d+$/.test(part) ? `row ${Number(part) + 1}` : part.replace(/([A-Z])/g, ' $1').toLowerCase(),
    )
    .join(', ');
}
