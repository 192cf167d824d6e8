import { useState } from 'react';
import type { ToolClass, ToolSummary } from '../../core/contract/tool.ts';
import { useAsk } from '../app/ask.ts';
import { useRegister } from '../app/register.ts';
import { Combobox, type ComboOption } from './combobox.tsx';
import { validityWords } from './validity.tsx';

const OFFERED = 30;

interface ToolPickerProps {
  readonly label: string;
  readonly hideLabel?: boolean;
  /** Null offers tools of every class. */
  readonly toolClass: ToolClass | null;
  readonly chosen: string | null;
  readonly onChoose: (id: string | null, number: string) => void;
  /** Parts already in the set, not offered again. */
  readonly without?: readonly string[];
  readonly id?: string;
}

/** One tool of a class, or of any, found by number, serial or place; each entry says what it may stand and how it is certified. */
export function ToolPicker({
  label,
  hideLabel,
  toolClass,
  chosen,
  onChoose,
  without = [],
  id,
}: ToolPickerProps) {
  const { today } = useRegister();
  const [text, setText] = useState('');
  const found = useAsk(
    'tool.list',
    { text, class: toolClass, sort: 'number', direction: 'asc', page: 1, pageSize: OFFERED },
    { keep: true },
  );
  const current = useAsk('tool.get', { id: chosen ?? '' }, { enabled: chosen !== null });
  const option = (tool: ToolSummary): ComboOption => ({
    id: tool.id,
    name: tool.number,
    detail: [
      toolClass === null && tool.class,
      tool.ratings,
      validityWords(tool, today),
      tool.status !== 'available' && tool.status,
    ]
      .filter(Boolean)
      .join(' · '),
  });
  const rows = found.data?.rows ?? [];
  const listed = rows.find((tool) => tool.id === chosen);
  const name = listed?.number ?? current.data?.data.number;
  return (
    <Combobox
      label={label}
      hideLabel={hideLabel ?? false}
      {...(id === undefined ? {} : { id })}
      chosen={chosen !== null && name !== undefined ? { id: chosen, name, detail: '' } : null}
      options={rows.filter((tool) => tool.id === chosen || !without.includes(tool.id)).map(option)}
      onSearch={setText}
      onChoose={(tool) => onChoose(tool?.id ?? null, tool?.name ?? '')}
      none="none"
      {...(listed ? { hint: option(listed).detail } : {})}
    />
  );
}
