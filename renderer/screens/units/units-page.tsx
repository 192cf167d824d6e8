import { useAsk, useWrite } from '../../app/ask.ts';
import { counted } from '../../app/text/number.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { NameList } from '../../components/name-list.tsx';
import { JointIndex } from '../joints/joint-index.tsx';

export function UnitsPage() {
  const units = useAsk('unit.list', {});
  const save = useWrite('unit.save');
  return (
    <Desk indexLabel="Joints" index={<JointIndex />}>
      <Title name="Plant units" under="Every joint belongs to one." />
      <Asked asking={units} what="the plant units">
        {({ rows }) => (
          <NameList
            rows={rows.map((unit) => ({ ...unit, second: '', words: counted(unit.joints, 'joint') }))}
            noun="plant unit"
            error={save.error}
            busy={save.isPending}
            onSave={(row, name, _second, done) =>
              save.mutate(
                { id: row?.id ?? null, version: row?.version ?? null, data: { name } },
                { onSuccess: done },
              )
            }
          />
        )}
      </Asked>
    </Desk>
  );
}
