import type { FieldFault, RequestError } from '../../core/contract/errors.ts';
import { pathWords, useFieldLabels } from './field-label.ts';

interface FailureProps {
  readonly error: RequestError;
  /** What the person was doing, as a statement: "The joint was not saved." */
  readonly what?: string;
}

/** A refused request in plain words: what, which field, what stood there, what is allowed. */
export function Failure({ error, what }: FailureProps) {
  const names = useFieldLabels(error.details);
  // The message of a refused form only repeats its first field; the list has them all. Other messages say what stands
  // against the request as a whole, and only the fields on the page are named with them.
  const listed = error.code === 'invalid_input' && error.details.length > 0;
  return (
    <div className="failure" role="alert">
      <p>
        {what && <b>{what} </b>}
        {listed ? 'What stands in these fields can not be used:' : error.message}
      </p>
      <ul>
        {error.details.map((fault, at) => {
          const name = names[at] ?? (listed ? pathWords(fault.field) : null);
          return (
            name && (
              <li key={`${fault.field} ${fault.allowed}`}>
                <b>{name}</b>: {faultWords(fault)}
              </li>
            )
          );
        })}
      </ul>
    </div>
  );
}

/** How the service shows that nothing stood there. */
const NOTHING = ['', '[]', 'null', 'NaN'];

/** A message that quotes the value already says it once. */
function faultWords({ value, allowed }: FieldFault): string {
  const quoted = NOTHING.includes(value) || allowed.includes(value.split(' ')[0] ?? value);
  return quoted ? allowed : `“${value}”; allowed: ${allowed}`;
}
