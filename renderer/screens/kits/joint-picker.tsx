import { useState } from 'react';
import { useAsk } from '../../app/ask.ts';
import { Combobox } from '../../components/combobox.tsx';

const OFFERED = 30;

interface JointPickerProps {
  readonly label: string;
  readonly without: readonly string[];
  readonly onChoose: (id: string, tag: string) => void;
}

/** One joint, found by its tag or what else the joint list is searched by. */
export function JointPicker({ label, without, onChoose }: JointPickerProps) {
  const [text, setText] = useState('');
  const found = useAsk(
    'joint.list',
    { text, unitId: null, sort: 'tag', direction: 'asc', page: 1, pageSize: OFFERED },
    { keep: true },
  );
  const rows = (found.data?.rows ?? []).filter(({ id }) => !without.includes(id));
  return (
    <Combobox
      label={label}
      chosen={null}
      options={rows.map((joint) => ({ id: joint.id, name: joint.tag, detail: joint.unitName }))}
      onSearch={setText}
      onChoose={(joint) => joint !== null && onChoose(joint.id, joint.name)}
    />
  );
}
