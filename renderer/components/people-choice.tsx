import { useEffect, useId } from 'react';
import { Link } from 'wouter';
import { useAsk } from '../app/ask.ts';
import { useSignedIn } from '../app/session.ts';
import { useFault } from './faults.ts';

interface PersonChoiceProps {
  readonly label: string;
  readonly chosen: string;
  readonly onChoose: (id: string) => void;
  readonly fault?: string | null;
  /** Field of the form, by which a fault finds its label. */
  readonly name?: string;
  /** Words of the empty choice. */
  readonly none?: string;
}

/** Whoever answers for what the form does: with sign-in nobody but the person at this window. */
export function SignerChoice(props: PersonChoiceProps) {
  const id = useId();
  const person = useSignedIn();
  const { label, chosen, onChoose, name } = props;
  const own = person?.personId ?? null;
  useEffect(() => {
    if (own !== null && chosen !== own) onChoose(own);
  }, [own, chosen, onChoose]);
  if (person === null) return <PersonChoice {...props} />;
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input id={id} name={name} readOnly value={person.name} />
    </div>
  );
}

export function PersonChoice({
  label,
  chosen,
  onChoose,
  fault,
  name,
  none = 'Choose a person',
}: PersonChoiceProps) {
  const id = useId();
  const people = useAsk('person.list', {});
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        name={name}
        value={chosen}
        aria-invalid={fault ? true : undefined}
        aria-describedby={fault ? `${id}-fault` : undefined}
        onChange={(event) => onChoose(event.target.value)}
      >
        <option value="">{none}</option>
        {people.data?.rows.map((person) => (
          <option key={person.id} value={person.id}>
            {person.name}
            {person.role && `, ${person.role}`}
          </option>
        ))}
      </select>
      {fault && (
        <span className="fault" id={`${id}-fault`}>
          {fault}
        </span>
      )}
      {people.data?.rows.length === 0 && (
        <Link className="small" href="/people">
          Name the first person
        </Link>
      )}
    </div>
  );
}

interface PeopleChoiceProps {
  readonly label: string;
  readonly chosen: readonly string[];
  readonly onChange: (ids: string[]) => void;
}

export function PeopleChoice({ label, chosen, onChange }: PeopleChoiceProps) {
  const people = useAsk('person.list', {});
  const fault = useFault('personIds');
  return (
    <fieldset data-field="personIds">
      <legend>{label}</legend>
      <div className="checks">
        {people.data?.rows.map((person) => (
          <label className="check" key={person.id}>
            <input
              type="checkbox"
              checked={chosen.includes(person.id)}
              onChange={(event) =>
                onChange(
                  event.target.checked ? [...chosen, person.id] : chosen.filter((each) => each !== person.id),
                )
              }
            />
            {person.name}
          </label>
        ))}
      </div>
      {people.data?.rows.length === 0 && (
        <Link className="small" href="/people">
          Name the first person
        </Link>
      )}
      {fault && <p className="fault-line">{fault.allowed}</p>}
    </fieldset>
  );
}
