import { useId } from 'react';
import { useRegister } from '../../app/register.ts';
import { day } from '../../app/text/time.ts';
import { described, useFault } from '../../components/faults.ts';
import { PersonChoice, SignerChoice } from '../../components/people-choice.tsx';
import type { DeskState } from './desk-state.ts';
import { stepWords } from './steps.ts';

const CONDITIONS = ['good', 'to be looked at', 'damaged'];

interface DeskFieldsProps {
  readonly desk: DeskState;
  readonly onChange: (part: Partial<DeskState>) => void;
}

/** Who, whom, where and why: only what the chosen step asks for. */
export function DeskFields({ desk, onChange }: DeskFieldsProps) {
  const { fields, reference } = stepWords(desk.step);
  const shows = (field: (typeof fields)[number]) => fields.includes(field);
  const person = useFault('personId');
  const holder = useFault('holderId');
  return (
    <div className="fields">
      <SignerChoice
        name="personId"
        label={shows('holder') ? 'Handed over by' : 'Recorded by'}
        chosen={desk.personId}
        onChoose={(personId) => onChange({ personId })}
        fault={person?.allowed ?? null}
      />
      {shows('holder') && (
        <PersonChoice
          name="holderId"
          label="Handed to"
          chosen={desk.holderId}
          onChoose={(holderId) => onChange({ holderId })}
          fault={holder?.allowed ?? null}
        />
      )}
      {shows('condition') && (
        <Condition chosen={desk.condition} onChoose={(condition) => onChange({ condition })} />
      )}
      <Line
        name="reference"
        label={reference}
        value={desk.reference}
        onChange={(value) => onChange({ reference: value })}
      />
      <Line
        name="place"
        label="Place"
        hint="Empty leaves it as it is"
        value={desk.place}
        onChange={(place) => onChange({ place })}
      />
      <When value={desk.happenedAt} onChange={(happenedAt) => onChange({ happenedAt })} />
      {shows('reason') && (
        <Line
          name="reason"
          label={desk.step === 'return' ? 'What is wrong, if anything' : 'Reason'}
          whole
          value={desk.reason}
          onChange={(reason) => onChange({ reason })}
        />
      )}
    </div>
  );
}

interface ConditionProps {
  readonly chosen: string;
  readonly onChoose: (condition: string) => void;
}

function Condition({ chosen, onChoose }: ConditionProps) {
  const id = useId();
  const fault = useFault('condition');
  return (
    <div className="field">
      <label htmlFor={id}>Condition</label>
      <select
        id={id}
        value={chosen}
        {...described(id, fault, undefined)}
        onChange={(event) => onChoose(event.target.value)}
      >
        <option value="">Choose the condition</option>
        {CONDITIONS.map((each) => (
          <option key={each}>{each}</option>
        ))}
      </select>
      {fault && (
        <span className="fault" id={`${id}-fault`}>
          {fault.allowed}
        </span>
      )}
    </div>
  );
}

interface LineProps {
  readonly name: string;
  readonly label: string;
  readonly hint?: string;
  readonly whole?: boolean;
  readonly value: string;
  readonly onChange: (value: string) => void;
}

function Line({ name, label, hint, whole, value, onChange }: LineProps) {
  const id = useId();
  const fault = useFault(name);
  return (
    <div className={whole ? 'field whole' : 'field'}>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        autoComplete="off"
        value={value}
        {...described(id, fault, hint)}
        onChange={(event) => onChange(event.target.value)}
      />
      {fault && (
        <span className="fault" id={`${id}-fault`}>
          {fault.allowed}
        </span>
      )}
      {hint && (
        <span className="hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
    </div>
  );
}

interface WhenProps {
  readonly value: string;
  readonly onChange: (value: string) => void;
}

function When({ value, onChange }: WhenProps) {
  const id = useId();
  const fault = useFault('happenedAt');
  const { timeZone } = useRegister();
  const [date = '', time] = value.split('T');
  const hint = value === '' ? 'Empty is the moment of recording' : `${day(date)} ${time ?? ''}, ${timeZone}`;
  return (
    <div className="field">
      <label htmlFor={id}>When it happened</label>
      <input
        id={id}
        type="datetime-local"
        value={value}
        {...described(id, fault, hint)}
        onChange={(event) => onChange(event.target.value)}
      />
      {fault && (
        <span className="fault" id={`${id}-fault`}>
          {fault.allowed}
        </span>
      )}
      <span className="hint" id={`${id}-hint`}>
        {hint}
      </span>
    </div>
  );
}
