import { DUTIES, ROLES } from '../../../core/access/roles.ts';

export function RolesTold() {
  return (
    <section aria-label="Roles">
      <h2>Roles</h2>
      <p className="small">
        A person may have several. With any of them joints, tools, settings and history are read, and what was
        really done is recorded.
      </p>
      <table className="tab">
        <thead>
          <tr>
            <th scope="col">Role</th>
            <th scope="col">Does</th>
          </tr>
        </thead>
        <tbody>
          {ROLES.map((role) => (
            <tr key={role}>
              <th scope="row">{role}</th>
              <td>{DUTIES[role]}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
