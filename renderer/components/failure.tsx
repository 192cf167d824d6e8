import type { FieldFault, RequestError } from '../../core/contract/errors.ts';

interface FailureProps {
  readonly error: RequestError;
  /** What the person was doing, as a statement: "The joint was not saved." */
  readonly what?: string;
}

/** A refused request in plain words: what, which field, what stood there, what is allowed. */
export function Failure({ error, what }: FailureProps) {
  // The message of a refused form only repeats its first field; the list has them all.
  const listed = error.code === 'invalid_input' && error.details.length > 0;
  return (
    <div className="failure" role="alert">
      <p>
        {what && <b>{what} </b>}
        {listed ? 'What stands in these fields can not be used:' : error.message}
      </p>
      {error.details.length > 0 && (
        <ul>
          {error.details.map((fault) => (
            <li key={`${fault.field} ${fault.allowed}`}>
              <b>{fieldWords(fault.field)}</b>: {faultWords(fault)}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

/** A message that quotes the value already says it once. */
function faultWords({ value, allowed }: FieldFault): string {
  const quoted = value === '' || value === '[]' || allowed.includes(value.split(' ')[0] ?? value);
  return quoted ? allowed : `“${value}”; allowed: ${allowed}`;
}

/** "data.bolting.studLength" → "bolting, stud length". */
function fieldWords(path: string): string {
  const parts = path.replace(/^data\./, '').split('.');
  return parts
    .map((part) =>
      /^\d+$/.test(part) ? `row ${Number(part) + 1}` : part.replace(/([A-Z])/g, ' $1').toLowerCase(),
    )
    .join(', ');
}
