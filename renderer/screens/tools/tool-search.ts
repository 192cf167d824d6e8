import type { RequestInput } from '../../../core/contract/requests.ts';
import { useAsk } from '../../app/ask.ts';
import { remembered, useRemembered } from '../../app/remember.ts';

type Search = RequestInput<'tool.list'>;

export const TOOLS_ON_A_PAGE = 30;

const place = remembered<Search>(
  'tools',
  {
    text: '',
    class: null,
    status: null,
    owner: null,
    sort: 'number',
    direction: 'asc',
    page: 1,
    pageSize: TOOLS_ON_A_PAGE,
  },
  window.sessionStorage,
);

export function useToolSearch() {
  const [search, setSearch] = useRemembered(place);
  const found = useAsk('tool.list', search, { keep: true });
  const change = (part: Partial<Search>) => setSearch({ ...search, page: 1, ...part });
  return { search, found, change };
}
