import { afterAll, beforeAll, expect, test } from 'vitest';
import type { RequestInput } from '../../core/contract/requests.ts';
import { ask, askBadly, createEmpty, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { enterPlant, type TestPlant } from './records.ts';

let started: TestService;
let plant: TestPlant;

beforeAll(async () => {
  started = startService(temporaryFolder());
  await createEmpty(started);
  plant = await enterPlant(started);
});
afterAll(() => started.service.close());

const q = <U extends string>(text: string, unit: U) => ({ text, unit });

/** Joint A, 12 studs of 7/8-9 UNC on 330.2 mm, with a ring and a gasket invented for the test. */
const inputs = (changes: Partial<RequestInput<'scatter.simulate'>> = {}): RequestInput<'scatter.simulate'> =>
  ({
    jointId: plant.jointId,
    ring: { width: q('80', 'mm'), thickness: q('40', 'mm'), radius: q('150', 'mm') },
    gasketStiffness: q('20000', 'MPa'),
    gasketRadius: q('120', 'mm'),
    gasketWidth: q('15', 'mm'),
    planIds: ['staged-thirds'],
    ...changes,
  }) as RequestInput<'scatter.simulate'>;

test('loads of every bolt after every step, with the inputs and what it is', async () => {
  const view = await ask(started, 'scatter.simulate', inputs());
  expect(view.missing).toEqual([]);
  expect(view.caveat).toContain('not a measurement');
  const result = view.plans[0]?.result;
  expect(result?.loads).toHaveLength(12);
  expect(result?.steps.at(-1)?.loads).toEqual(result?.loads);
  expect(result?.steps.every(({ loads }) => loads.length === 12 && loads.every((load) => load >= 0))).toBe(
    true,
  );
  // The bolt that was turned last stands at the load it was set to.
  const last = result?.steps.findLast(({ turned }) => turned);
  for (const bolt of last?.bolts ?? []) {
    expect((last?.loads[bolt - 1] ?? 0) / (last?.set ?? 1)).toBeCloseTo(1, 6);
  }
  const named = (name: string) => view.inputs.find((value) => value.name === name);
  expect(named('Radius of the bolt circle')).toMatchObject({ si: 0.1651, origin: 'entered' });
  expect(named('Modulus of the ring')).toMatchObject({ si: 200e9, origin: 'assumed' });
});

test('other stiffnesses come in rising order with one finding on them', async () => {
  const view = await ask(
    started,
    'scatter.simulate',
    inputs({ planIds: ['staged-thirds', 'two-tools-thirds'], sensitivity: [4, 0.25, 1] }),
  );
  expect(view.sensitivity.map(({ factor }) => factor)).toEqual([0.25, 1, 4]);
  expect(view.sensitivity[1]?.plans.map(({ evenness }) => evenness?.variation)).toEqual(
    view.plans.map(({ result }) => result?.evenness.variation),
  );
  expect(view.sensitivityWords).toContain('With a gasket 0.25 to 4 times as stiff, ');
  expect((await ask(started, 'scatter.simulate', inputs())).sensitivityWords).toBeNull();
});

test('two plans stand side by side, each with its own order', async () => {
  const view = await ask(
    started,
    'scatter.simulate',
    inputs({ planIds: ['staged-thirds', 'two-tools-thirds'] }),
  );
  expect(view.plans.map(({ planId }) => planId)).toEqual(['staged-thirds', 'two-tools-thirds']);
  expect(view.plans[0]?.result?.steps[0]?.bolts).toHaveLength(1);
  expect(view.plans[1]?.result?.steps[0]?.bolts).toHaveLength(2);
});

test('without the gasket’s stiffness nothing is said, and it is named', async () => {
  const view = await ask(started, 'scatter.simulate', inputs({ gasketStiffness: null }));
  expect(view.missing).toEqual(['Stiffness of the gasket per length of its circumference']);
  expect([view.plans, view.finding.startsWith('Nothing can be said yet')]).toEqual([[], true]);
});

test.each([
  ['planIds.0', { planIds: ['no such plan'] }, 'not_found'],
  ['limit', { target: q('100', 'kN') as never, limit: q('90', 'kN') as never }, 'invalid_input'],
  ['boltSet', { boltSet: 2 }, 'invalid_input'],
  ['ring.width', { ring: { width: q('-4', 'mm') as never } }, 'invalid_input'],
])('%s that can’t be is named and nothing is run', async (field, changes, code) => {
  const error = await askBadly(started, 'scatter.simulate', inputs(changes as never));
  expect(error.code).toBe(code);
  expect(JSON.stringify(error)).toContain(field);
});
