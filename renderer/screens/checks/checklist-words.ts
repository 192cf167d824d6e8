import type { ChecklistData } from '../../../core/contract/check.ts';
import { counted } from '../../app/text/number.ts';

/** "every 180 days", "every 180 days or 100 uses", "not by a count". */
export function everyWords({ everyDays, everyUses }: Pick<ChecklistData, 'everyDays' | 'everyUses'>): string {
  const parts = [
    ...(everyDays === null ? [] : [counted(everyDays, 'day')]),
    ...(everyUses === null ? [] : [counted(everyUses, 'use')]),
  ];
  return parts.length === 0 ? 'not asked for by a count' : `every ${parts.join(' or ')}`;
}

/** What a setting says of a tool whose check is overdue; a list that counts nothing is never overdue. */
export function overdueWords(data: Pick<ChecklistData, 'everyDays' | 'everyUses' | 'overdue'>): string {
  if (data.everyDays === null && data.everyUses === null) return 'never';
  return data.overdue === 'refuse' ? 'setting refused' : 'setting warned';
}
