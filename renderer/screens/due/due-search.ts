import type { RequestInput } from '../../../core/contract/requests.ts';
import { useAsk } from '../../app/ask.ts';
import { remembered, useRemembered } from '../../app/remember.ts';

export type DueSearch = RequestInput<'tool.due'>;

export const DUES_ON_A_PAGE = 100;

const place = remembered<DueSearch>(
  'due',
  { on: null, withinDays: 31, text: '', class: null, all: false, page: 1, pageSize: DUES_ON_A_PAGE },
  window.sessionStorage,
);

export function useDueSearch() {
  const [search, setSearch] = useRemembered(place);
  const found = useAsk('tool.due', search, { keep: true });
  const change = (part: Partial<DueSearch>) => setSearch({ ...search, page: 1, ...part });
  return { search, found, change };
}
