import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { RequestError } from '../../../core/contract/errors.ts';
import { send } from '../../app/send.ts';
import { draftKeeper, type KeeperState } from './kept-draft.ts';

/** This window, for as long as it is open: what it wrote itself it may write over. */
const WRITER = crypto.randomUUID();

export interface Start<T> {
  readonly value: T;
  /** Version of the draft it was read from; null for work that begins now. */
  readonly version: number | null;
}

export interface KeptWork<T> {
  readonly value: T;
  readonly state: KeeperState;
  change(update: (value: T) => T): void;
  flush(): Promise<void>;
  drop(): Promise<void>;
}

/** Work in progress, kept in the register within a second of every change. */
export function useKeptWork<T>(
  kind: 'tightening at the joint' | 'breakout at the joint',
  subjectId: string,
  start: Start<T>,
): KeptWork<T> {
  const [value, setValue] = useState(start.value);
  const [state, setState] = useState<KeeperState>({ savedAt: null, trouble: null });
  const newest = useRef(start.value);
  const [keeper] = useState(() =>
    draftKeeper<T>({ send, kind, subjectId, writer: WRITER, version: start.version, onState: setState }),
  );
  useEffect(() => {
    const leave = () => keeper.close();
    window.addEventListener('pagehide', leave);
    return () => {
      window.removeEventListener('pagehide', leave);
      keeper.close();
    };
  }, [keeper]);
  const change = useCallback(
    (update: (value: T) => T) => {
      newest.current = update(newest.current);
      setValue(newest.current);
      keeper.put(newest.current);
    },
    [keeper],
  );
  return { value, state, change, flush: keeper.flush, drop: keeper.drop };
}

/** Another window went on with this work: what this one shows is no longer what is in hand. */
export const overtaken = ({ trouble }: KeeperState): boolean => trouble?.code === 'conflict';

type RecordName = 'pass.record' | 'event.recordTightening' | 'event.recordBreakout';

/** A record as it is sent, with its key. */
export interface Sendable {
  readonly name: RecordName;
  readonly input: unknown;
}

export interface Sending {
  readonly busy: boolean;
  /** Why the record was refused or did not arrive. */
  readonly error: RequestError | null;
  clear(): void;
  /** Answers the record's id once it is in the register. */
  record(sent: Sendable): Promise<Outcome>;
}

type Outcome =
  | { readonly is: 'recorded'; readonly id: string }
  /** It was looked at and not taken: something has to be changed first. */
  | { readonly is: 'refused' }
  /** Nobody knows whether it arrived: it has to be sent again as it is. */
  | { readonly is: 'unanswered' };

const UNANSWERED = ['internal', 'busy', 'not_open', 'disk_full'];

export function useSending(): Sending {
  const client = useQueryClient();
  const [busy, setBusy] = useState(false);
  const [error, setError] = useState<RequestError | null>(null);
  const record = useCallback(
    async ({ name, input }: Sendable): Promise<Outcome> => {
      setBusy(true);
      setError(null);
      const answer = await send(name, input as never);
      // Also after a refusal: what another window recorded in the meantime has to be on the page.
      await client.invalidateQueries();
      setBusy(false);
      if (answer.ok) return { is: 'recorded', id: (answer.value as { id: string }).id };
      setError(answer.error);
      return { is: UNANSWERED.includes(answer.error.code) ? 'unanswered' : 'refused' };
    },
    [client],
  );
  return { busy, error, record, clear: () => setError(null) };
}

/** The moment, every second, for what is counted down. */
export function useNow(): Date {
  const [now, setNow] = useState(() => new Date());
  useEffect(() => {
    const tick = setInterval(() => setNow(new Date()), 1000);
    return () => clearInterval(tick);
  }, []);
  return now;
}
