import { Link } from 'wouter';
import type { CompetenceRow } from '../../../core/contract/access.ts';
import { useAsk, useWrite } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { useSignedIn } from '../../app/session.ts';
import { day, moment } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { Failure } from '../../components/failure.tsx';
import { NameForm } from '../../components/name-list.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { EvidenceIndex } from '../evidence/evidence-index.tsx';
import { competenceWords } from './competence-words.ts';
import { SECRET_WORDS } from './people-page.tsx';
import type { Person } from './person.ts';
import { RolesForm } from './roles-form.tsx';
import { SecretForm } from './secret-form.tsx';

export function PersonPage({ id }: { readonly id: string }) {
  const people = useAsk('person.list', {});
  return (
    <Desk indexLabel="Evidence" index={<EvidenceIndex />}>
      <Asked asking={people} what="the person">
        {({ rows }) => {
          const person = rows.find((row) => row.id === id);
          return person === undefined ? (
            <Title name="There is no such person" />
          ) : (
            <PersonBody person={person} />
          );
        }}
      </Asked>
    </Desk>
  );
}

function PersonBody({ person }: { readonly person: Person }) {
  const { signIn } = useRegister();
  return (
    <>
      <Title name={person.name} under={person.role} />
      {signIn === 'required' && <Access person={person} />}
      <Competences personId={person.id} />
      <Naming person={person} />
    </>
  );
}

function Access({ person }: { readonly person: Person }) {
  const { timeZone } = useRegister();
  const present = useAsk('access.present', {}, { fresh: true });
  const me = useSignedIn();
  const now = present.data?.rows.find(({ personId }) => personId === person.id);
  const administers = me?.roles.includes('administrator') ?? false;
  return (
    <section className="stack">
      <h2>Sign-in and roles</h2>
      <dl className="lines narrow">
        <div>
          <dt>Signs in with</dt>
          <dd>{SECRET_WORDS[person.secret]}</dd>
        </div>
        <div>
          <dt>Signed in now</dt>
          <dd>
            {now
              ? `since ${moment(now.since, timeZone)}, last request ${moment(now.lastAsked, timeZone)}`
              : 'no'}
          </dd>
        </div>
        {!administers && (
          <div>
            <dt>Roles</dt>
            <dd>{person.roles.length === 0 ? 'none' : person.roles.join(', ')}</dd>
          </div>
        )}
      </dl>
      {!administers && <p className="faint">Roles and secrets are given by an administrator.</p>}
      {administers && <RolesForm person={person} />}
      {administers && person.id !== me?.personId && <SecretForm person={person} />}
      {person.id === me?.personId && (
        <p>
          <Link href="/secret">Change the own secret</Link>
        </p>
      )}
    </section>
  );
}

function Competences({ personId }: { readonly personId: string }) {
  const competences = useAsk('competence.list', { personId });
  return (
    <section className="stack" aria-label="Competences">
      <h2>Competences</h2>
      <Asked asking={competences} what="the competences">
        {({ rows }) =>
          rows.length === 0 ? (
            <p className="empty">
              Not known: no paper is recorded. Work is recorded all the same, with a note or flag that says
              so.
            </p>
          ) : (
            <SideScroll>
              <table className="tab">
                <thead>
                  <tr>
                    <th scope="col">Scheme</th>
                    <th scope="col">Certificate</th>
                    <th scope="col">For</th>
                    <th scope="col">Issued</th>
                    <th scope="col">Today</th>
                    <th scope="col">
                      <span className="unseen">Edit</span>
                    </th>
                  </tr>
                </thead>
                <tbody>
                  {rows.map((row) => (
                    <Paper key={row.id} row={row} />
                  ))}
                </tbody>
              </table>
            </SideScroll>
          )
        }
      </Asked>
      <p>
        <Link href={`/people/${personId}/competences/new`}>Record a competence</Link>
      </p>
      <p className="faint">
        A certificate of EN 1591-4 counts five years at most. What counts is the day of the work: one that had
        lapsed then is flagged on the record and never keeps it from being made.
      </p>
    </section>
  );
}

function Paper({ row }: { readonly row: CompetenceRow }) {
  const { data } = row;
  const { words, against } = competenceWords(row);
  return (
    <tr>
      <th scope="row">
        {data.scheme}
        {data.level && <span className="small"> {data.level}</span>}
      </th>
      <td>{data.certificate || <span className="unknown">not known</span>}</td>
      <td>
        {data.methods.length === 0 ? (
          <span className="unknown">no method named</span>
        ) : (
          data.methods.join(', ')
        )}
        {data.restrictions && <div className="small">restricted: {data.restrictions}</div>}
      </td>
      <td className="date">{day(data.issuedOn)}</td>
      <td>
        <span className={against ? 'flag' : undefined}>{words}</span>
      </td>
      <td className="num">
        <Link href={`/people/${data.personId}/competences/${row.id}`}>
          Edit
          <span className="unseen">
            {' '}
            {data.scheme} {data.certificate}
          </span>
        </Link>
      </td>
    </tr>
  );
}

function Naming({ person }: { readonly person: Person }) {
  const save = useWrite('person.save');
  return (
    <section>
      <NameForm
        key={person.version}
        row={{ id: person.id, version: person.version, name: person.name, second: person.role, words: '' }}
        noun="person"
        secondLabel="Position"
        busy={save.isPending}
        onSave={(name, role) => save.mutate({ id: person.id, version: person.version, data: { name, role } })}
        onLeave={null}
      />
      {save.error && <Failure error={save.error.error} what="It was not saved." />}
    </section>
  );
}
