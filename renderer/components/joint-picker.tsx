import { useState } from 'react';
import { useAsk } from '../app/ask.ts';
import { Combobox } from './combobox.tsx';

const OFFERED = 30;

interface JointPickerProps {
  readonly label: string;
  readonly without: readonly string[];
  readonly chosen?: { readonly id: string; readonly tag: string } | null;
  readonly onChoose: (id: string, tag: string) => void;
  /** Field of the form, by which a fault finds its label. */
  readonly name?: string;
  readonly fault?: string | null;
}

/** One joint, found by its tag or what else the joint list is searched by. */
export function JointPicker({ label, without, chosen = null, onChoose, name, fault }: JointPickerProps) {
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
      chosen={chosen && { id: chosen.id, name: chosen.tag, detail: '' }}
      {...(name === undefined ? {} : { name })}
      {...(fault ? { fault } : {})}
      options={rows.map((joint) => ({ id: joint.id, name: joint.tag, detail: joint.unitName }))}
      onSearch={setText}
      onChoose={(joint) => joint !== null && onChoose(joint.id, joint.name)}
    />
  );
}
