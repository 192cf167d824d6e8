import { EventEmitter } from 'node:events';
import { expect, it, vi } from 'vitest';
import type { Answer } from '../../core/contract/errors.ts';
import type { PortAnswer } from '../../core/contract/message.ts';
import { servePort } from './port.ts';

class Port extends EventEmitter {
  readonly sent: PortAnswer[] = [];
  readonly start = vi.fn();

  postMessage(message: PortAnswer): void {
    this.sent.push(message);
  }
}

const served = (
  handle: (name: string, input: unknown, session?: string | null) => Promise<Answer<unknown>>,
) => {
  const port = new Port();
  servePort(port, { handle });
  return port;
};

it('answers each request under its own id, whichever is ready first', async () => {
  const waits = new Map<string, (answer: Answer<unknown>) => void>();
  const port = served((name) => new Promise((resolve) => waits.set(name, resolve)));
  expect(port.start).toHaveBeenCalledOnce();
  port.emit('message', { data: { id: 1, name: 'slow', input: {} } });
  port.emit('message', { data: { id: 2, name: 'quick', input: {} } });
  waits.get('quick')?.({ ok: true, value: 'q' });
  await vi.waitFor(() => expect(port.sent).toHaveLength(1));
  waits.get('slow')?.({ ok: false, error: { code: 'busy', message: 'later', details: [] } });
  await vi.waitFor(() => expect(port.sent).toHaveLength(2));
  expect(port.sent).toEqual([
    { id: 2, answer: { ok: true, value: 'q' } },
    { id: 1, answer: { ok: false, error: { code: 'busy', message: 'later', details: [] } } },
  ]);
});

it.each([
  undefined,
  null,
  'joint.list',
  7,
  [],
  {},
  { id: '1', name: 'a' },
  { id: 1 },
  { id: 1.5, name: 'a' },
  { id: 1, name: 2 },
])('leaves %j alone, which is no request', async (data) => {
  const handle = vi.fn(() => Promise.resolve<Answer<unknown>>({ ok: true, value: null }));
  const port = served(handle);
  port.emit('message', { data });
  await Promise.resolve();
  expect(handle).not.toHaveBeenCalled();
  expect(port.sent).toEqual([]);
});

it.each([
  ['abc', 'abc'],
  [undefined, null],
  [null, null],
  [7, null],
  [{ token: 'abc' }, null],
])('hands on the session %j beside the input, and nothing that is none', async (session, expected) => {
  const handle = vi.fn(() => Promise.resolve<Answer<unknown>>({ ok: true, value: null }));
  const port = served(handle);
  port.emit('message', { data: { id: 1, name: 'joint.list', input: { page: 1 }, session } });
  await vi.waitFor(() => expect(port.sent).toHaveLength(1));
  expect(handle).toHaveBeenCalledWith('joint.list', { page: 1 }, expected);
});
