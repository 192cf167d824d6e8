import { type FormEvent, useState } from 'react';
import { DUTIES, ROLES } from '../../../core/access/roles.ts';
import type { Role } from '../../../core/contract/roles.ts';
import { useWrite } from '../../app/ask.ts';
import { Failure } from '../../components/failure.tsx';
import type { Person } from './person.ts';

/** What a person may do follows from these and from nothing else. */
export function RolesForm({ person }: { readonly person: Person }) {
  const save = useWrite('person.saveRoles');
  const onSave = (roles: Role[]) => save.mutate({ id: person.id, version: person.rolesVersion, roles });
  return (
    <section className="stack" aria-label={`Roles of ${person.name}`}>
      {/* Roles given elsewhere meanwhile are shown before others are given on top of them. */}
      <RolesChoice key={person.rolesVersion} person={person} busy={save.isPending} onSave={onSave} />
      {save.error && <Failure error={save.error.error} what="The roles were not changed." />}
      {save.isSuccess && (
        <p className="said" role="status">
          The roles are saved; they hold from the next request.
        </p>
      )}
    </section>
  );
}

interface RolesChoiceProps {
  readonly person: Person;
  readonly busy: boolean;
  readonly onSave: (roles: Role[]) => void;
}

function RolesChoice({ person, busy, onSave }: RolesChoiceProps) {
  const [roles, setRoles] = useState<readonly Role[]>(person.roles);
  const onSubmit = (event: FormEvent) => {
    event.preventDefault();
    onSave([...roles]);
  };
  return (
    <form className="form" onSubmit={onSubmit}>
      <fieldset data-field="roles">
        <legend>Roles of {person.name}</legend>
        <div className="stack tight">
          {ROLES.map((role) => (
            <label className="check" key={role}>
              <input
                type="checkbox"
                checked={roles.includes(role)}
                onChange={(event) =>
                  setRoles(event.target.checked ? [...roles, role] : roles.filter((each) => each !== role))
                }
              />
              <span>
                {role} <span className="small">{DUTIES[role]}</span>
              </span>
            </label>
          ))}
        </div>
      </fieldset>
      <div>
        <button type="submit" className="act" disabled={busy}>
          Save roles
        </button>
      </div>
    </form>
  );
}
