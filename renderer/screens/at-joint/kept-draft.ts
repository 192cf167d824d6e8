import type { RequestError } from '../../../core/contract/errors.ts';
import type { Send } from '../../../core/contract/requests.ts';

/** What is typed is sent this long after the first key at the latest; the rest of a second is for the disk. */
const SETTLE_MS = 150;
const LATEST_MS = 400;
const AGAIN_MS = 2000;

type Kind = 'tightening at the joint' | 'breakout at the joint';

export interface Keeper<T> {
  /** Shows the newest content; it is written when it has settled. */
  put(value: T): void;
  /** Writes what is not written yet and waits for it. */
  flush(): Promise<void>;
  /** Takes the draft out of the register. */
  drop(): Promise<void>;
  /** Lets go of timers; what is not written yet is written first. */
  close(): void;
}

export interface KeeperState {
  /** Moment of the newest content that is in the register; null before the first. */
  readonly savedAt: string | null;
  /** Why the newest content is not in the register yet. */
  readonly trouble: RequestError | null;
}

interface KeeperOptions {
  readonly send: Send;
  readonly kind: Kind;
  readonly subjectId: string;
  readonly writer: string;
  /** Version the window has read; null where there was no draft. */
  readonly version: number | null;
  readonly onState: (state: KeeperState) => void;
}

/**
 * Keeps work in progress in the register: one write at a time, the newest content always the last. A write that fails
 * is tried again; one that another window has overtaken is not.
 */
export function draftKeeper<T>(options: KeeperOptions): Keeper<T> {
  const { send, kind, subjectId, writer, onState } = options;
  let version = options.version;
  let waiting: { readonly text: string } | null = null;
  let firstAt = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let working: Promise<void> = Promise.resolve();
  let overtaken = false;
  let savedAt: string | null = null;

  function plan(): void {
    clearTimeout(timer);
    const since = Date.now() - firstAt;
    timer = setTimeout(() => void flush(), Math.max(0, Math.min(SETTLE_MS, LATEST_MS - since)));
  }

  async function write(): Promise<void> {
    if (waiting === null || overtaken) return;
    const { text } = waiting;
    waiting = null;
    const answer = await send('draft.save', { kind, subjectId, writer, version, data: text });
    if (answer.ok) {
      ({ version, savedAt } = answer.value);
      onState({ savedAt, trouble: null });
      return;
    }
    overtaken = answer.error.code === 'conflict';
    onState({ savedAt, trouble: answer.error });
    if (overtaken) return;
    waiting ??= { text };
    clearTimeout(timer);
    timer = setTimeout(() => void flush(), AGAIN_MS);
  }

  function flush(): Promise<void> {
    clearTimeout(timer);
    working = working.then(write);
    return working;
  }

  return {
    put(value) {
      if (waiting === null) firstAt = Date.now();
      waiting = { text: JSON.stringify(value) };
      plan();
    },
    flush,
    async drop() {
      clearTimeout(timer);
      waiting = null;
      await working;
      waiting = null;
      const answer = await send('draft.drop', { kind, subjectId, writer, version });
      if (answer.ok) version = null;
      onState({ savedAt: answer.ok ? null : savedAt, trouble: answer.ok ? null : answer.error });
    },
    close() {
      if (waiting === null) clearTimeout(timer);
      else void flush();
    },
  };
}
