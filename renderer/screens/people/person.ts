import type { RequestOutput } from '../../../core/contract/requests.ts';

/** A person as the list of people tells of them. */
export type Person = RequestOutput<'person.list'>['rows'][number];
