import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { Answer } from '../../core/contract/errors.ts';
import type { RequestName } from '../../core/contract/names.ts';
import type { RequestInput, RequestOutput, Send } from '../../core/contract/requests.ts';
import { createService } from '../../electron/service/service.ts';
import { draftKeeper } from '../../renderer/screens/at-joint/kept-draft.ts';
import type { JointToWorkAt, SentRecord, WorkOrder } from './work-order.ts';

// A process of its own that works at joints until it is killed: it types into a draft all the time, as the window
// does, and records passes and tightenings and signs them. It says what it does before and after, one line each.
const order = JSON.parse(readFileSync(process.argv[2] ?? '', 'utf8')) as WorkOrder;
const service = createService({
  folder: order.folder,
  clock: () => new Date(Date.now() + order.clockOffset),
  log: (_, message, error) => console.error(message, error),
});
const say = (word: string, value: unknown) => process.stdout.write(`${word} ${JSON.stringify(value)}\n`);

async function ask<N extends RequestName>(name: N, input: RequestInput<N>): Promise<RequestOutput<N>> {
  const answer = (await service.handle(name, input)) as Answer<RequestOutput<N>>;
  if (!answer.ok) throw new Error(`${name}: ${JSON.stringify(answer.error)}`);
  return answer.value;
}

/** A record with its key, said before it goes out and again when its answer has come. */
async function record(sent: SentRecord): Promise<string> {
  say('sent', sent);
  // Requests reach a service one event at a time, and an answer is on its way for a while.
  await pause(0);
  const { id, alreadyRecorded } = await ask(sent.name, sent.input as never);
  await pause(ANSWER_MS);
  say('done', { key: sent.input.key, id, alreadyRecorded });
  return id;
}

const ANSWER_MS = 4;
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

async function typing(subjectId: string): Promise<void> {
  const kind = 'tightening at the joint';
  const { draft } = await ask('draft.get', { kind, subjectId });
  say('found', draft === null ? null : JSON.parse(draft.data));
  const send: Send = (name, input) => service.handle(name, input) as never;
  const keeper = draftKeeper<{ n: number; at: number }>({
    send,
    kind,
    subjectId,
    writer: randomUUID(),
    version: draft?.version ?? null,
    onState: ({ trouble }) => {
      if (trouble !== null) throw new Error(JSON.stringify(trouble));
    },
  });
  let n = draft === null ? 0 : (JSON.parse(draft.data) as { n: number }).n;
  setInterval(() => {
    n += 1;
    const typed = { n, at: Date.now() };
    keeper.put(typed);
    say('typed', typed);
  }, 15);
}

/** One whole tightening, pass by pass, as the plan of its setting says, and signed. */
async function tighten({ jointId, passes, tightening }: JointToWorkAt): Promise<void> {
  const runId = randomUUID();
  const now = () => new Date(Date.now() + order.clockOffset).toISOString();
  for (const pass of passes) {
    const { seen } = await ask('pass.open', { jointId });
    const at = now();
    const data = { ...pass, runId, startedAt: at, endedAt: at };
    await record({ name: 'pass.record', input: { key: randomUUID(), seen, data } });
  }
  const { run } = await ask('pass.open', { jointId });
  const passIds = run?.stints.map(({ eventId }) => eventId) ?? [];
  const data = { ...tightening, happenedAt: now(), passIds };
  const eventId = await record({ name: 'event.recordTightening', input: { key: randomUUID(), data } });
  const { hash } = await ask('event.get', { id: eventId });
  const [personId = ''] = tightening.personIds;
  const signature = { eventId, hash, meaning: 'did', personId } as const;
  await record({ name: 'event.sign', input: { key: randomUUID(), data: signature } });
}

if (order.pending !== null) await record(order.pending);
await typing(order.joints[0]?.jointId ?? '');
for (let turn = order.turn; ; turn += 1) {
  const joint = order.joints[turn % order.joints.length];
  if (joint === undefined) throw new Error('no joint to work at');
  await tighten(joint);
}
