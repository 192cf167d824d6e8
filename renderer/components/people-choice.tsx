import { useId } from 'react';
import { Link } from 'wouter';
import { useAsk } from '../app/ask.ts';
import { useFault } from './faults.ts';

interface PersonChoiceProps {
  readonly label: string;
  readonly chosen: string;
  readonly onChoose: (id: string) => void;
  readonly fault?: string | null;
  /** Field of the form, by which a fault finds its label. */
  readonly name?: string;
}

export function PersonChoice({ label, chosen, onChoose, fault, name }: PersonChoiceProps) {
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
        <option value="">Choose a person</option>
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
