import { expect, test } from 'vitest';
import { registerBefore, takeStep } from './before-step.ts';
import { insert, SOUND_ROWS } from './rows.ts';

const STEP = '20261126T0310_link_decisions_to_joints';
const SECOND = '00000000-0000-7000-8000-000000000999';

test('a decision on several tightenings of a joint is linked to it once, and links stay closed to changes', async () => {
  const database = await registerBefore(STEP);
  const sound = (table: string) => SOUND_ROWS.findLast(([name]) => name === table)?.[1] ?? {};
  const [, event] = SOUND_ROWS.find(([, { kind }]) => kind === 'tightening recorded') ?? [];
  const { hash } = sound('event');
  insert(database, 'event', { ...event, id: SECOND, sequence: 999, hash: String(hash).replace(/^0/, 'a') });
  insert(database, 'tightening', { ...sound('tightening'), id: SECOND });
  insert(database, 'recall_decision', { ...sound('recall_decision'), tightening_id: SECOND });
  const links = () => database.prepare('select * from event_joint order by 1, 2').all();
  const earlier = links();
  await takeStep(database, STEP);
  const decided = { event_id: sound('recall_decision').event_id, joint_id: sound('tightening').joint_id };
  expect(links()).toHaveLength(earlier.length + 1);
  expect(links()).toEqual(expect.arrayContaining([...earlier, decided]));
  expect(() => database.exec('delete from event_joint')).toThrow('event_joint is append-only');
});
