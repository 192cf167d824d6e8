import { afterAll, beforeAll, expect, test } from 'vitest';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { jointA, saveJoint } from './records.ts';

let started: TestService;
let id: string;

beforeAll(async () => {
  started = startService(temporaryFolder());
  await createEmpty(started);
  const unit = { key: key(), id: null, version: null, data: { name: 'Unit 100' } };
  const unitId = (await ask(started, 'unit.save', unit)).id;
  id = (await saveJoint(started, jointA(unitId, 'HX-310 N3'))).id;
  await saveJoint(started, jointA(unitId, 'HX-310 N4'));
});
afterAll(() => started.service.close());

const find = (text: string) => ask(started, 'joint.find', { text });

test('a joint is found by its code and by its tag alone, whatever the case and the blanks around it', async () => {
  for (const text of ['SB:J:HX-310 N3', 'sb:j:hx-310 n3\r', 'HX-310 N3', '  hx-310 n3 ']) {
    expect(await find(text), text).toEqual({ id, tag: 'HX-310 N3' });
  }
});

test('a tag that is only like one, and the code of a tool, find no joint', async () => {
  for (const text of ['HX-310', 'HX-310 N33', 'HX-310N3', 'SB:T:HX-310 N3', 'SB:J:']) {
    expect(await find(text), text).toBeNull();
  }
});

test('nothing scanned is refused', async () => {
  expect(await askBadly(started, 'joint.find', { text: ' ' })).toMatchObject({ code: 'invalid_input' });
});
