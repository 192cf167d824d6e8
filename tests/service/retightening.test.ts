import { beforeAll, expect, test } from 'vitest';
import type { RequestInput } from '../../core/contract/requests.ts';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { certify, enterPlant, jointA, saveJoint, type TestPlant, tighteningOf } from './records.ts';

let started: TestService;
let plant: TestPlant;

const UNSAID = {
  bellowsOrClamp: 'not known',
  boltsSound: 'not known',
  pressureReduced: 'not known',
} as const;

beforeAll(async () => {
  started = startService(temporaryFolder());
  await createEmpty(started);
  plant = await enterPlant(started);
  await certify(started, plant);
});

const check = (changes: Partial<RequestInput<'joint.retightening'>>) =>
  ask(started, 'joint.retightening', {
    jointId: plant.jointId,
    kind: 'after the dwell',
    boltTemperature: null,
    ...UNSAID,
    ...changes,
  });

test('a joint of which nothing is known is not eligible, with every reason, and no number is made up', async () => {
  const answer = await check({ kind: 'during start-up' });
  expect(answer.reasons).toEqual([
    'not eligible: bolt-metal temperature not measured',
    'not eligible: the site has not said which gaskets it excludes',
    'not eligible: torque of the last full pass not known',
    'not eligible: no site procedure named for this retightening',
  ]);
  expect(answer.lastFullPass).toBeNull();
  expect(answer.facts.find(({ name }) => name === 'Load of one bolt')).toMatchObject({ shown: null });
  expect(answer.window).toEqual({ from: 120, to: 230, source: 'common practice' });
  expect(answer.cautions.map(({ text }) => text).join(' ')).toContain('never above it');
});

test('the wait counts from the recorded tightening, and the temperature is read in its unit', async () => {
  await ask(started, 'event.recordTightening', {
    key: key(),
    data: tighteningOf(plant, { happenedAt: '2026-03-16T10:00:00+01:00' }),
  });
  const soon = await check({ boltTemperature: { text: '68', unit: 'degF' } });
  expect(soon.reasons).toContain('not eligible: 3.0 h since the last full pass, at least 4 h needed');
  expect(soon.lastFullPass).toBe('2026-03-16T10:00:00+01:00');
  started.setNow('2026-03-16T13:00:00Z');
  const later = await check({ boltTemperature: { text: '68', unit: 'degF' } });
  expect(later.reasons).toEqual(['not eligible: no site procedure named for this retightening']);
  const hot = await check({ kind: 'during start-up', boltTemperature: { text: '240', unit: 'degF' } });
  // 240 °F = 115.6 °C
  expect(hot.reasons).toContain('not eligible: bolt metal at 115.6 °C, window begins at 120 °C');
});

test('with the site’s word on gasket and procedure only the site decides, which is said', async () => {
  const { id } = await saveJoint(started, {
    ...jointA(plant.unitId, 'J-0099'),
    retightening: { procedure: 'SP-12', gasketExcluded: false },
  });
  await ask(started, 'event.recordTightening', {
    key: key(),
    data: { ...tighteningOf(plant), jointId: id },
  });
  const answer = await check({
    jointId: id,
    kind: 'during start-up',
    boltTemperature: { text: '160', unit: 'degC' },
  });
  expect(answer.reasons).toEqual([]);
  expect(answer.deferral).toContain('site procedure and its signatures decide');
});

test('under pressure every condition is asked, and a clamp connector is out whatever is answered', async () => {
  const live = await check({ kind: 'in service, under pressure' });
  expect(live.reasons).toContain('not eligible: not known whether: pressure not reduced');
  expect(live.reasons).toContain('not eligible: no record of the bolt load');
  expect(live.window).toBeNull();
  const { id } = await saveJoint(started, {
    ...jointA(plant.unitId, 'J-0100'),
    identity: { type: 'clamp connector' },
  });
  const clamp = await check({
    jointId: id,
    kind: 'in service, under pressure',
    bellowsOrClamp: 'no',
    boltsSound: 'yes',
    pressureReduced: 'yes',
  });
  expect(clamp.reasons).toContain('not eligible: bellows, clamp, compact or insulating joint');
});

test('a joint that is not there, and a temperature that is none, are named', async () => {
  const input = { jointId: plant.jointId, kind: 'during start-up', ...UNSAID };
  expect(
    await askBadly(started, 'joint.retightening', {
      ...input,
      boltTemperature: { text: '12,5', unit: 'degC' },
    }),
  ).toMatchObject({ code: 'invalid_input', details: [{ field: 'boltTemperature' }] });
  expect(
    await askBadly(started, 'joint.retightening', {
      ...input,
      jointId: '01990000-0000-7000-8000-000000000001',
      boltTemperature: null,
    }),
  ).toMatchObject({ code: 'not_found' });
});
