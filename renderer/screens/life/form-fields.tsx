import { useFieldArray, useFormContext, useWatch } from 'react-hook-form';
import { SIGNERS } from '../../../core/access/signers.ts';
import { useFault } from '../../components/faults.ts';
import { Choice, LongText, Quantity, same, Text } from '../../components/fields.tsx';
import { PeopleChoice, PersonChoice, SignerChoice } from '../../components/people-choice.tsx';
import { emptyRow } from './evidence-values.ts';
import type { EvidenceField, EvidenceGroup } from './field-kinds.ts';

const ANSWERS = same(['not known', 'yes', 'no']);
const WITH_COMMAS = 'Numbers with commas; “none” where somebody looked and there was none';

interface GroupsProps {
  readonly groups: readonly EvidenceGroup[];
}

export function EvidenceGroups({ groups }: GroupsProps) {
  return groups.map((group) =>
    group.folded ? (
      <details className="folded" key={group.legend}>
        <summary>{group.legend}</summary>
        <div className="fold">
          <GroupFields group={group} />
        </div>
      </details>
    ) : (
      <GroupFields group={group} key={group.legend} />
    ),
  );
}

function GroupFields({ group }: { readonly group: EvidenceGroup }) {
  const plain = group.fields.filter(({ kind }) => kind !== 'list' && kind !== 'ticks');
  return (
    <fieldset>
      <legend>{group.legend}</legend>
      {plain.length > 0 && (
        <div className="fields">
          {plain.map((field) => (
            <OneField key={field.name} field={field} path={`evidence.${field.name}`} label={field.label} />
          ))}
        </div>
      )}
      {group.fields.map((field) =>
        field.kind === 'list' ? (
          <Rows key={field.name} field={field} />
        ) : field.kind === 'ticks' ? (
          <Ticks key={field.name} field={field} />
        ) : null,
      )}
    </fieldset>
  );
}

interface OneFieldProps {
  readonly field: EvidenceField;
  readonly path: string;
  readonly label: string;
}

function OneField({ field, path: name, label }: OneFieldProps) {
  const told = field.hint === undefined ? { name, label } : { name, label, hint: field.hint };
  switch (field.kind) {
    case 'long':
      return <LongText {...told} whole />;
    case 'date':
      return <Text {...told} type="date" />;
    case 'moment':
      return <Text {...told} type="datetime-local" />;
    case 'whole':
      return <Text {...told} inputMode="numeric" />;
    case 'bolts':
      return <Text {...told} hint={WITH_COMMAS} />;
    case 'person':
      return (
        <FormPerson
          name={name}
          label={label}
          signs={SIGNERS['joint.step']?.includes(`data.${name}`) ?? false}
        />
      );
    case 'answer':
      return <Choice {...told} options={ANSWERS} />;
    case 'choice':
      return (
        <Choice
          {...told}
          options={same(field.options)}
          {...(field.blank === undefined ? {} : { blank: field.blank })}
        />
      );
    case 'quantity':
      return <Quantity {...told} quantity={field.quantity} />;
    default:
      return <Text {...told} />;
  }
}

interface FormPersonProps {
  readonly name: string;
  readonly label: string;
  /** Whoever it is answers for it, and with sign-in is the person at the window. */
  readonly signs?: boolean;
}

/** A person of the form, chosen from those of the register. */
export function FormPerson({ name, label, signs = false }: FormPersonProps) {
  const { setValue } = useFormContext();
  const chosen: unknown = useWatch({ name });
  const fault = useFault(name);
  const Person = signs ? SignerChoice : PersonChoice;
  return (
    <Person
      name={name}
      label={label}
      chosen={String(chosen ?? '')}
      onChoose={(id) => setValue(name, id, { shouldDirty: true })}
      fault={fault?.allowed ?? null}
    />
  );
}

export function FormPeople({ label }: { readonly label: string }) {
  const { setValue } = useFormContext<{ personIds: string[] }>();
  const chosen: string[] = useWatch({ name: 'personIds' });
  return (
    <PeopleChoice
      label={label}
      chosen={chosen}
      onChange={(ids) => setValue('personIds', ids, { shouldDirty: true })}
    />
  );
}

function Rows({ field }: { readonly field: Extract<EvidenceField, { kind: 'list' }> }) {
  const name = `evidence.${field.name}`;
  const { register } = useFormContext();
  const { fields: rows, append, remove } = useFieldArray({ name: `${name}.rows` });
  return (
    <fieldset>
      <legend>{field.label}</legend>
      {rows.map((row, at) => (
        <div className="row-of-list" key={row.id}>
          <div className="fields">
            {field.fields.map((inner) => (
              <OneField
                key={inner.name}
                field={inner}
                path={`${name}.rows.${at}.${inner.name}`}
                label={`${inner.label}, ${field.row} ${at + 1}`}
              />
            ))}
          </div>
          <button type="button" className="link small" onClick={() => remove(at)}>
            Remove {field.row} {at + 1}
          </button>
        </div>
      ))}
      <div className="row">
        <button type="button" className="quiet" onClick={() => append(emptyRow(field.fields))}>
          Add a {field.row}
        </button>
        {rows.length === 0 && field.none !== undefined && (
          <label className="check">
            <input type="checkbox" {...register(`${name}.none`)} />
            {field.label}: {field.none}
          </label>
        )}
      </div>
    </fieldset>
  );
}

function Ticks({ field }: { readonly field: Extract<EvidenceField, { kind: 'ticks' }> }) {
  const name = `evidence.${field.name}.ticked`;
  const { setValue } = useFormContext();
  const ticked: string[] = useWatch({ name });
  const change = (one: string, on: boolean) => {
    const alone = one === field.none;
    const kept = ticked.filter((each) => each !== one && (alone ? false : each !== field.none));
    setValue(name, on ? [...kept, one] : kept, { shouldDirty: true });
  };
  return (
    <fieldset>
      <legend>{field.label}</legend>
      <div className="checks">
        {[...field.options, field.none].map((one) => (
          <label className="check" key={one}>
            <input
              type="checkbox"
              checked={ticked.includes(one)}
              onChange={({ target }) => change(one, target.checked)}
            />
            {one}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
