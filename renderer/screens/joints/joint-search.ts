import type { RequestInput } from '../../../core/contract/requests.ts';
import { useAsk } from '../../app/ask.ts';
import { remembered, useRemembered } from '../../app/remember.ts';

type Search = RequestInput<'joint.list'>;

export const JOINTS_ON_A_PAGE = 30;

const FIRST: Search = {
  text: '',
  unitId: null,
  state: null,
  sort: 'tag',
  direction: 'asc',
  page: 1,
  pageSize: JOINTS_ON_A_PAGE,
};

const place = remembered<Search>('joints', FIRST, window.sessionStorage);

/** The joints a person is looking through: shared by the list and by the index beside a joint. */
export function useJointSearch() {
  const [search, setSearch] = useRemembered(place);
  const found = useAsk('joint.list', search, { keep: true });
  const change = (part: Partial<Search>) => setSearch({ ...search, page: 1, ...part });
  return { search, found, change };
}
