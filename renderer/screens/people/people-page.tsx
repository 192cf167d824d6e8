import { useAsk, useWrite } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { NameList } from '../../components/name-list.tsx';
import { EvidenceIndex } from '../evidence/evidence-index.tsx';

export function PeoplePage() {
  const people = useAsk('person.list', {});
  const save = useWrite('person.save');
  return (
    <Desk indexLabel="Evidence" index={<EvidenceIndex />}>
      <Title name="People" under="In whose name settings are issued and work is recorded." />
      <Asked asking={people} what="the people">
        {({ rows }) => (
          <NameList
            rows={rows.map((person) => ({ ...person, second: person.role, words: '' }))}
            noun="person"
            secondLabel="Role"
            error={save.error}
            busy={save.isPending}
            onSave={(row, name, role, done) =>
              save.mutate(
                { id: row?.id ?? null, version: row?.version ?? null, data: { name, role } },
                { onSuccess: done },
              )
            }
          />
        )}
      </Asked>
    </Desk>
  );
}
