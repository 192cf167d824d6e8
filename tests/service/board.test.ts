import { afterEach, beforeEach, expect, test } from 'vitest';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { campaignOf, saveCampaign, saveJob } from './campaign.ts';
import { temporaryFolder } from './folder.ts';
import { breakoutOf, certify, enterPlant, type TestPlant, tighteningOf } from './records.ts';

let started: TestService;
let plant: TestPlant;
let campaignId: string;

beforeEach(async () => {
  started = startService(temporaryFolder(), '2026-04-05T12:00:00Z');
  await createEmpty(started);
  plant = await enterPlant(started);
  await certify(started, plant);
  campaignId = (await saveCampaign(started, campaignOf(plant))).id;
  const pack = { campaignId, testPack: 'TP-1', system: 'condensate' };
  await saveJob(started, plant, { ...pack, number: 'N-1', latest: '2026-04-04T18:00:00+02:00' });
  await saveJob(started, plant, { ...pack, number: 'N-2', after: ['N-1'], isolationRef: 'ISO-1' });
});
afterEach(() => started.service.close());

const boardNow = () => ask(started, 'board.get', { campaignId });
const words = (job: { readonly blockers: readonly { readonly words: string }[] } | undefined) =>
  job?.blockers.map((blocker) => blocker.words);

test('a job shows what stands in its way: what it waits for, what is not known, what is late', async () => {
  const { jobs, systems, testPacks, finding } = await boardNow();
  expect(jobs.map(({ number, stage, closed }) => [number, stage, closed])).toEqual([
    ['N-1', 'to do', false],
    ['N-2', 'to do', false],
  ]);
  expect(words(jobs[0])).toEqual([
    'isolation not named',
    'permit not named',
    'class of the joint not known',
    'no setting issued for tightening',
    'was to be finished by 2026-04-04 18:00',
  ]);
  expect(words(jobs[1])?.[0]).toBe('waits for N-1');
  expect(systems).toMatchObject([{ name: 'condensate', jobs: 2, closed: 0, late: 1, ready: 'no' }]);
  expect(testPacks).toMatchObject([{ name: 'TP-1', ready: 'no' }]);
  expect(finding).toBe('0 of 2 jobs closed. 1 joint late. No test pack is ready for its leak test.');
});

test('records since the campaign began move a job on; earlier ones do not', async () => {
  const tighten = (happenedAt: string) =>
    ask(started, 'event.recordTightening', { key: key(), data: tighteningOf(plant, { happenedAt }) });
  await tighten('2026-03-30T09:00:00+02:00');
  expect((await boardNow()).jobs[0]?.stage).toBe('to do');
  await ask(started, 'event.recordBreakout', {
    key: key(),
    data: breakoutOf(plant, { happenedAt: '2026-04-02T09:00:00+02:00' }),
  });
  expect((await boardNow()).jobs[0]).toMatchObject({ stage: 'opened', closed: false });
  await tighten('2026-04-03T09:00:00+02:00');
  const { jobs, testPacks, finding } = await boardNow();
  expect(jobs.map(({ stage, closed }) => [stage, closed])).toEqual([
    ['made', true],
    ['made', true],
  ]);
  // Nobody follows the joint's state: that is no readiness.
  expect(testPacks[0]).toMatchObject({ ready: 'not known', against: ['state not followed: N-1, N-2'] });
  expect(finding).toBe('2 of 2 jobs closed. No test pack is ready for its leak test.');
});

test('dropped jobs are not on it, and a campaign nobody knows is named', async () => {
  const [first] = (await boardNow()).jobs;
  const before = { id: first?.jobId ?? '', version: 1 };
  await saveJob(started, plant, { campaignId, number: 'N-1', dropped: true }, before, 'not opened');
  expect((await boardNow()).jobs.map(({ number }) => number)).toEqual(['N-2']);
  const error = await askBadly(started, 'board.get', { campaignId: plant.jointId });
  expect(error).toMatchObject({ code: 'not_found', details: [{ field: 'campaignId' }] });
});
