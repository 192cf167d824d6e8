import { useState } from 'react';
import type { SuitRow } from '../../core/contract/setting.ts';
import type { ToolClass, ToolSummary } from '../../core/contract/tool.ts';
import { useAsk } from '../app/ask.ts';
import { useRegister } from '../app/register.ts';
import { Combobox, type ComboOption } from './combobox.tsx';
import { narrowed, SUIT_STANDING, suitWords, useSuits } from './suits.ts';
import { validityWords } from './validity.tsx';

const OFFERED = 30;
/** Of a list that is at hand whole. */
const MOST_OFFERED = 100;

type Listed = Pick<
  ToolSummary,
  'id' | 'number' | 'class' | 'ratings' | 'status' | 'validUntil' | 'needsCertificate'
>;

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

/**
 * One tool of a class, or of any, found by number, serial or place; each entry says what it may stand and how it is
 * certified. Where a joint is at hand, those that suit it stand first and the others say why not; all can be chosen.
 */
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
  const suits = useSuits(toolClass);
  const found = useAsk(
    'tool.list',
    { text, class: toolClass, sort: 'number', direction: 'asc', page: 1, pageSize: OFFERED },
    { keep: true, enabled: suits === null },
  );
  const current = useAsk('tool.get', { id: chosen ?? '' }, { enabled: chosen !== null });
  const option = (tool: Listed): ComboOption => ({
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
  const suited = (row: SuitRow): ComboOption => ({
    ...option({ ...row, id: row.toolId }),
    standing: { shape: SUIT_STANDING[row.state], words: suitWords(row, suits ?? []) },
  });
  const offered =
    suits === null ? (found.data?.rows ?? []).map(option) : narrowed(suits, toolClass, text).map(suited);
  const listed = offered.find((tool) => tool.id === chosen);
  const name = listed?.name ?? current.data?.data.number;
  return (
    <Combobox
      label={label}
      hideLabel={hideLabel ?? false}
      {...(id === undefined ? {} : { id })}
      chosen={chosen !== null && name !== undefined ? { id: chosen, name, detail: '' } : null}
      options={offered
        .filter((tool) => tool.id === chosen || !without.includes(tool.id))
        .slice(0, suits === null ? OFFERED : MOST_OFFERED)}
      onSearch={setText}
      onChoose={(tool) => onChoose(tool?.id ?? null, tool?.name ?? '')}
      none="none"
      {...(listed ? { hint: listed.detail } : {})}
    />
  );
}
