import { contextBridge, ipcRenderer } from 'electron';
import type { Answer } from '../core/contract/errors.ts';
import type { PortAnswer, PortRequest } from '../core/contract/message.ts';
import { REQUEST_NAMES, type RequestName } from '../core/contract/names.ts';

/** One function per request, and nothing else, reaches the window. */
type Bridge = Record<RequestName, (input: unknown, session: string | null) => Promise<Answer<unknown>>>;

const PORT_CHANNEL = 'studbook:port';

let port: MessagePort | null = null;
let lastId = 0;
/** Requests that wait for their answer, and those that wait for a port. */
const pending = new Map<number, (answer: Answer<unknown>) => void>();
const waiting: PortRequest[] = [];

ipcRenderer.on(PORT_CHANNEL, ({ ports: [next] }) => {
  if (next === undefined) return;
  // A second port means that the service started anew; what was asked of the old one will not be answered by it.
  if (port !== null) answerPending();
  port = next;
  port.onmessage = ({ data }: MessageEvent<PortAnswer>) => {
    pending.get(data.id)?.(data.answer);
    pending.delete(data.id);
  };
  for (const request of waiting.splice(0)) port.postMessage(request);
});
ipcRenderer.send(PORT_CHANNEL);

function answerPending(): void {
  const answer: Answer<unknown> = {
    ok: false,
    error: {
      code: 'busy',
      message:
        'The register was opened anew before this was answered. Look whether it was recorded, then repeat it.',
      details: [],
    },
  };
  for (const resolve of pending.values()) resolve(answer);
  pending.clear();
}

function request(name: RequestName, input: unknown, session: string | null): Promise<Answer<unknown>> {
  return new Promise((resolve) => {
    lastId += 1;
    const message: PortRequest = { id: lastId, name, input, session };
    if (port === null) waiting.push(message);
    else port.postMessage(message);
    pending.set(lastId, resolve);
  });
}

const bridge = Object.fromEntries(
  REQUEST_NAMES.map((name) => [
    name,
    (input: unknown, session: string | null) => request(name, input, session),
  ]),
) as Bridge;

contextBridge.exposeInMainWorld('studbook', bridge);
