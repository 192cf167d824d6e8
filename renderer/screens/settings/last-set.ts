import type { ToolSetInput } from '../../../core/contract/setting.ts';
import { remembered } from '../../app/remember.ts';
import { EMPTY_SET } from '../../components/work-method.ts';

interface LastSet {
  readonly tools: ToolSetInput;
  readonly planId: string;
  readonly issuerId: string;
}

interface Kept extends LastSet {
  /** Ids of one register mean nothing on another. */
  readonly folder: string;
}

const NOTHING: LastSet = { tools: EMPTY_SET, planId: '', issuerId: '' };

const kept = remembered<Kept>('set', { ...NOTHING, folder: '' });

/** What a person put together last on this register; most jobs of a day use one set. */
export function lastSet(folder: string): LastSet {
  const last = kept.get();
  return last.folder === folder ? last : NOTHING;
}

export function keepSet(folder: string, part: Partial<LastSet>): void {
  kept.set({ ...lastSet(folder), ...part, folder });
}
