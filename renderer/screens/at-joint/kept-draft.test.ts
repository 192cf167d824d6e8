import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Answer } from '../../../core/contract/errors.ts';
import type { Send } from '../../../core/contract/requests.ts';
import { draftKeeper, type KeeperState } from './kept-draft.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

interface Sent {
  readonly name: string;
  readonly data: unknown;
  readonly version: number | null;
}

function keeper(answers: (Answer<unknown> | Promise<Answer<unknown>>)[] = []) {
  const sent: Sent[] = [];
  const states: KeeperState[] = [];
  let version = 100;
  const send = async (name: string, input: { data?: string; version: number | null }) => {
    sent.push({
      name,
      data: input.data === undefined ? null : JSON.parse(input.data),
      version: input.version,
    });
    version += 1;
    return answers.shift() ?? { ok: true, value: { version, savedAt: `saved ${version}` } };
  };
  const kept = draftKeeper<{ n: number }>({
    send: send as unknown as Send,
    kind: 'tightening at the joint',
    subjectId: 'joint',
    writer: 'window',
    version: null,
    onState: (state) => states.push(state),
  });
  return { kept, sent, states };
}

const failed = (code: string): Answer<never> => ({
  ok: false,
  error: { code: code as 'conflict', message: code, details: [] },
});

test('the newest content is written when the typing pauses, once', async () => {
  const { kept, sent, states } = keeper();
  kept.put({ n: 1 });
  kept.put({ n: 2 });
  await vi.advanceTimersByTimeAsync(250);
  expect(sent).toEqual([{ name: 'draft.save', data: { n: 2 }, version: null }]);
  expect(states).toEqual([{ savedAt: 'saved 101', trouble: null }]);
});

test('whoever types without a pause has it sent within 0.4 s all the same', async () => {
  const { kept, sent } = keeper();
  for (let n = 0; n < 20; n++) {
    kept.put({ n });
    await vi.advanceTimersByTimeAsync(100);
  }
  await vi.advanceTimersByTimeAsync(600);
  expect(sent.length).toBeGreaterThanOrEqual(4);
  expect(sent.at(-1)?.data).toEqual({ n: 19 });
});

test('one write at a time, each from the version the one before was answered with', async () => {
  let answer: (value: Answer<unknown>) => void = () => undefined;
  const slow = new Promise<Answer<unknown>>((resolve) => {
    answer = resolve;
  });
  const { kept, sent } = keeper([slow]);
  kept.put({ n: 1 });
  await vi.advanceTimersByTimeAsync(250);
  kept.put({ n: 2 });
  await vi.advanceTimersByTimeAsync(1000);
  expect(sent).toHaveLength(1);
  answer({ ok: true, value: { version: 7, savedAt: 'saved' } });
  await vi.advanceTimersByTimeAsync(10);
  expect(sent[1]).toEqual({ name: 'draft.save', data: { n: 2 }, version: 7 });
});

test('a write that failed is tried again, and says so until it is in', async () => {
  const { kept, sent, states } = keeper([failed('busy')]);
  kept.put({ n: 1 });
  await vi.advanceTimersByTimeAsync(250);
  expect(states.at(-1)?.trouble?.code).toBe('busy');
  await vi.advanceTimersByTimeAsync(2100);
  expect(sent.map(({ data }) => data)).toEqual([{ n: 1 }, { n: 1 }]);
  expect(states.at(-1)).toEqual({ savedAt: 'saved 102', trouble: null });
});

test('what another window has overtaken is not written over it', async () => {
  const { kept, sent, states } = keeper([failed('conflict')]);
  kept.put({ n: 1 });
  await vi.advanceTimersByTimeAsync(250);
  kept.put({ n: 2 });
  await vi.advanceTimersByTimeAsync(5000);
  expect(sent).toHaveLength(1);
  expect(states.at(-1)?.trouble?.code).toBe('conflict');
});

test('leaving the page writes what is not written yet; dropping forgets it', async () => {
  const { kept, sent } = keeper();
  kept.put({ n: 1 });
  kept.close();
  await vi.advanceTimersByTimeAsync(0);
  expect(sent.map(({ name }) => name)).toEqual(['draft.save']);
  kept.put({ n: 2 });
  await kept.drop();
  await vi.advanceTimersByTimeAsync(5000);
  expect(sent.map(({ name, version }) => [name, version])).toEqual([
    ['draft.save', null],
    ['draft.drop', 101],
  ]);
});
