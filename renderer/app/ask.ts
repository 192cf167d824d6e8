import {
  keepPreviousData,
  QueryClient,
  type UseQueryResult,
  useMutation,
  useQueries,
  useQuery,
  useQueryClient,
} from '@tanstack/react-query';
import { useRef } from 'react';
import type { RequestError } from '../../core/contract/errors.ts';
import type { REQUEST_KINDS, RequestName } from '../../core/contract/names.ts';
import type { RequestInput, RequestOutput } from '../../core/contract/requests.ts';
import { send } from './send.ts';

type NameOf<K extends 'read' | 'write'> = {
  [N in RequestName]: (typeof REQUEST_KINDS)[N] extends K ? N : never;
}[RequestName];
type ReadName = NameOf<'read'>;
type WriteName = NameOf<'write'>;

/** Carries an error answer through the query library, which knows only thrown errors. */
export class RequestFailure extends Error {
  readonly error: RequestError;

  constructor(error: RequestError) {
    super(error.message);
    this.error = error;
  }
}

async function settle<N extends RequestName>(name: N, input: RequestInput<N>): Promise<RequestOutput<N>> {
  const answer = await send(name, input);
  if (!answer.ok) throw new RequestFailure(answer.error);
  return answer.value;
}

/** The register is on this machine: asking is cheap, and being off the network must not pause it. */
export const queryClient = new QueryClient({
  defaultOptions: {
    queries: { retry: false, networkMode: 'always', refetchOnWindowFocus: false },
    mutations: { retry: false, networkMode: 'always' },
  },
});

interface AskOptions {
  readonly enabled?: boolean;
  /** Keep the last answer on the page until the next one is there. */
  readonly keep?: boolean;
  /** Nothing is remembered from an earlier visit: the page begins with what the register holds now. */
  readonly fresh?: boolean;
  /** Ask again after so many milliseconds, for work that goes on in the background; null once it has ended. */
  readonly again?: (answer: unknown) => number | null;
}

export function useAsk<N extends ReadName>(
  name: N,
  input: RequestInput<N>,
  options: AskOptions = {},
): UseQueryResult<RequestOutput<N>, RequestFailure> {
  return useQuery<RequestOutput<N>, RequestFailure>({
    queryKey: [name, input],
    queryFn: () => settle(name, input),
    enabled: options.enabled ?? true,
    ...(options.keep ? { placeholderData: keepPreviousData as never } : {}),
    ...(options.fresh ? { gcTime: 0 } : {}),
    ...(options.again ? { refetchInterval: ({ state }) => options.again?.(state.data) ?? false } : {}),
  });
}

const MOST_ON_A_PAGE = 200;

interface Listed {
  readonly rows: readonly unknown[];
  readonly total: number;
}
type ListName = { [N in ReadName]: RequestInput<N> extends { pageSize: number } ? N : never }[ReadName];
type RowOf<N extends ListName> = RequestOutput<N> extends { rows: (infer R)[] } ? R : never;

/** Every row of a list, page after page. */
export async function allRows<N extends ListName>(name: N, input: RequestInput<N>): Promise<RowOf<N>[]> {
  const rows: RowOf<N>[] = [];
  for (let page = 1; ; page++) {
    const answer: Listed = await settle(name, { ...input, page, pageSize: MOST_ON_A_PAGE });
    rows.push(...(answer.rows as RowOf<N>[]));
    if (answer.rows.length === 0 || rows.length >= answer.total) return rows;
  }
}

/** A list asked for whole: for what is shown in one piece, as a month or a register of marks. */
export function useAskAll<N extends ListName>(name: N, input: RequestInput<N>) {
  return useQuery<RowOf<N>[], RequestFailure>({
    queryKey: [name, input, 'all'],
    queryFn: () => allRows(name, input),
  });
}

/** The same question about each of several records, answered in their order. */
export function useAskEach<N extends ReadName>(name: N, inputs: readonly RequestInput<N>[]) {
  return useQueries({
    queries: inputs.map((input) => ({
      queryKey: [name, input],
      queryFn: () => settle(name, input),
    })),
  }) as UseQueryResult<RequestOutput<N>, RequestFailure>[];
}

export function usePreview<N extends ReadName>(name: N) {
  return useMutation<RequestOutput<N>, RequestFailure, RequestInput<N>>({
    mutationFn: (input) => settle(name, input),
  });
}

type WriteInput<N extends WriteName> = Omit<RequestInput<N>, 'key'>;

/**
 * A write with its idempotency key. Trying again with the same content keeps the key, so that an answer lost on the
 * way does not become a second record; changed content gets a new one.
 */
export function useWrite<N extends WriteName>(name: N) {
  const client = useQueryClient();
  const last = useRef<{ text: string; key: string } | null>(null);
  return useMutation<RequestOutput<N>, RequestFailure, WriteInput<N>>({
    mutationFn: (input) => {
      const text = JSON.stringify(input);
      if (last.current?.text !== text) last.current = { text, key: crypto.randomUUID() };
      return settle(name, { ...input, key: last.current.key } as unknown as RequestInput<N>);
    },
    onSuccess: async () => {
      last.current = null;
      await client.invalidateQueries();
    },
  });
}
