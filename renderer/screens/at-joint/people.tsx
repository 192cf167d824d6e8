import { useState } from 'react';
import { Link } from 'wouter';
import { useAsk } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { Key } from './parts.tsx';

/** As many names as stand on one view without a search. */
const FEW = 12;

interface PeopleProps {
  readonly chosen: readonly string[];
  readonly onToggle: (id: string) => void;
}

/** Several people, each a key that stays down. */
export function CrewKeys({ chosen, onToggle }: PeopleProps) {
  return (
    <Names keep={chosen}>
      {(people) =>
        people.map(({ id, name }) => (
          <Key key={id} pressed={chosen.includes(id)} onClick={() => onToggle(id)}>
            {name}
          </Key>
        ))
      }
    </Names>
  );
}

interface OnePersonProps {
  /** Whoever can't be it. */
  readonly without?: string | null;
  /** Only these; everybody when left out. */
  readonly among?: readonly string[];
  readonly onChoose: (id: string) => void;
}

/** One person, chosen with one key. */
export function PersonKeys({ without, among, onChoose }: OnePersonProps) {
  return (
    <Names keep={among ?? []}>
      {(people) =>
        people
          .filter(({ id }) => id !== without && (among === undefined || among.includes(id)))
          .map(({ id, name }) => (
            <Key key={id} onClick={() => onChoose(id)}>
              {name}
            </Key>
          ))
      }
    </Names>
  );
}

interface NamesProps {
  /** Shown whatever is searched for. */
  readonly keep: readonly string[];
  readonly children: (people: readonly { id: string; name: string }[]) => React.ReactNode;
}

function Names({ keep, children }: NamesProps) {
  const people = useAsk('person.list', {});
  const [search, setSearch] = useState('');
  return (
    <Asked asking={people} what="the people">
      {({ rows }) => {
        const words = search.trim().toLowerCase();
        const found = rows.filter(({ id, name }) => keep.includes(id) || name.toLowerCase().includes(words));
        return (
          <>
            {rows.length > FEW && (
              <label className="at-search">
                Find a name
                <input type="search" value={search} onChange={(event) => setSearch(event.target.value)} />
              </label>
            )}
            {rows.length === 0 && (
              <p className="at-said">
                Nobody is on the register yet. <Link href="/people">Name the first person</Link>
              </p>
            )}
            <div className="keys people">{children(found.slice(0, FEW + keep.length))}</div>
          </>
        );
      }}
    </Asked>
  );
}

/** Names of these people, for words. */
export function usePeopleNames(ids: readonly string[]): string {
  const people = useAsk('person.list', {});
  const names = ids.flatMap((id) => people.data?.rows.find((person) => person.id === id)?.name ?? []);
  return names.join(' and ');
}
