import { useState } from 'react';
import { Link } from 'wouter';
import type { CompetenceRow, PresentRow } from '../../../core/contract/access.ts';
import { useAsk, useWrite } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { moment } from '../../app/text/time.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { ExportList } from '../../components/export-list.tsx';
import { Failure } from '../../components/failure.tsx';
import { NameForm } from '../../components/name-list.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { EvidenceIndex } from '../evidence/evidence-index.tsx';
import { bestOf } from './competence-words.ts';
import type { Person } from './person.ts';

/** Who may do what, how long each one's competence counts, and who is signed in now. */
export function PeoplePage() {
  const { signIn } = useRegister();
  const people = useAsk('person.list', {});
  const competences = useAsk('competence.list', { personId: null });
  const present = useAsk('access.present', {}, { fresh: true });
  return (
    <Desk indexLabel="Evidence" index={<EvidenceIndex />}>
      <Title name="People" under="In whose name settings are issued and work is recorded." />
      {signIn === 'none' && (
        <p className="said block">
          This register works without sign-in: the names are claims.{' '}
          <Link href="/sign-in">Begin sign-in</Link> to give roles and secrets.
        </p>
      )}
      <Asked asking={people} what="the people">
        {({ rows }) => (
          <Asked asking={competences} what="their competences">
            {(papers) => (
              <PeopleTable people={rows} papers={papers.rows} present={present.data?.rows ?? []} />
            )}
          </Asked>
        )}
      </Asked>
      <NewPerson />
    </Desk>
  );
}

interface TableProps {
  readonly people: readonly Person[];
  readonly papers: readonly CompetenceRow[];
  readonly present: readonly PresentRow[];
}

function PeopleTable({ people, papers, present }: TableProps) {
  const { signIn, timeZone } = useRegister();
  const [search, setSearch] = useState('');
  const words = search.trim().toLowerCase();
  const found = people.filter(({ name, role, roles }) =>
    [name, role, ...roles].some((text) => text.toLowerCase().includes(words)),
  );
  const papersOf = (id: string) => papers.filter(({ data }) => data.personId === id);
  const there = (id: string) => present.find(({ personId }) => personId === id);
  if (people.length === 0) return <p className="empty">Nobody is on the register yet.</p>;
  return (
    <>
      <input
        type="search"
        aria-label="Find a person"
        placeholder="Find a person"
        value={search}
        onChange={(event) => setSearch(event.target.value)}
      />
      <SideScroll>
        <table className="tab links">
          <thead>
            <tr>
              <th scope="col">Name</th>
              <th scope="col">Position</th>
              <th scope="col">Competence today</th>
              {signIn === 'required' && (
                <>
                  <th scope="col">Roles</th>
                  <th scope="col">Sign-in</th>
                  <th scope="col">Signed in now</th>
                </>
              )}
            </tr>
          </thead>
          <tbody>
            {found.map((person) => {
              const competence = bestOf(papersOf(person.id));
              const now = there(person.id);
              return (
                <tr key={person.id}>
                  <th scope="row">
                    <Link href={`/people/${person.id}`}>{person.name}</Link>
                  </th>
                  <td>{person.role}</td>
                  <td>
                    <span className={competence.against ? 'flag' : undefined}>{competence.words}</span>
                  </td>
                  {signIn === 'required' && (
                    <>
                      <td>{person.roles.length === 0 ? 'none' : person.roles.join(', ')}</td>
                      <td>{SECRET_WORDS[person.secret]}</td>
                      <td>
                        {now ? `since ${moment(now.since, timeZone)}` : <span className="small">no</span>}
                      </td>
                    </>
                  )}
                </tr>
              );
            })}
          </tbody>
        </table>
      </SideScroll>
      <ExportList
        name="people"
        headings={['Name', 'Position', 'Roles', 'Sign-in', 'Competence today', 'Signed in since (ISO 8601)']}
        rows={() => Promise.resolve(found)}
        cells={(person) => [
          person.name,
          person.role,
          person.roles.join(', '),
          SECRET_WORDS[person.secret],
          bestOf(papersOf(person.id)).words,
          there(person.id)?.since ?? null,
        ]}
      />
    </>
  );
}

export const SECRET_WORDS: Readonly<Record<Person['secret'], string>> = {
  none: 'no secret',
  own: 'own secret',
  'to be changed': 'first secret, not changed yet',
};

function NewPerson() {
  const save = useWrite('person.save');
  return (
    <section>
      <NameForm
        row={null}
        noun="person"
        secondLabel="Position"
        busy={save.isPending}
        onSave={(name, role, done) =>
          save.mutate({ id: null, version: null, data: { name, role } }, { onSuccess: done })
        }
        onLeave={null}
      />
      {save.error && <Failure error={save.error.error} what="Nobody was named." />}
    </section>
  );
}
