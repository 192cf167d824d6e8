import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import * as z from 'zod';
import { SECRET_FIELDS } from '../../core/contract/access.ts';
import { REQUEST_KINDS, REQUEST_NAMES } from '../../core/contract/names.ts';
import { requests } from '../../core/contract/requests.ts';
import { READS, WRITES } from '../../electron/service/handlers.ts';
import { createEmpty, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { enterPlant, jointA, settingFor, type TestPlant, tighteningOf } from './records.ts';

let started: TestService;
let plant: TestPlant;
beforeAll(async () => {
  started = startService(temporaryFolder());
  await createEmpty(started);
  plant = await enterPlant(started);
});
afterAll(() => started.service.close());

test('names, schemas and handlers are the same list', () => {
  expect(Object.keys(requests).toSorted()).toEqual(REQUEST_NAMES.toSorted());
  const ofTheService = [
    'register.state',
    'register.create',
    'access.state',
    'access.present',
    'access.stay',
    'access.begin',
    'access.signIn',
    'access.signOut',
    'access.changeSecret',
  ];
  const handled = [...Object.keys(READS), ...Object.keys(WRITES), ...ofTheService];
  expect(handled.toSorted()).toEqual(REQUEST_NAMES.toSorted());
  for (const name of Object.keys(READS)) expect(REQUEST_KINDS).toHaveProperty([name], 'read');
  for (const name of Object.keys(WRITES)) expect(REQUEST_KINDS).toHaveProperty([name], 'write');
});

test('every field that is called a secret is one whose value is shown and kept nowhere', () => {
  const fields = new Set<string>();
  for (const name of REQUEST_NAMES) {
    const schema = z.toJSONSchema(requests[name].input, { io: 'input', unrepresentable: 'any' });
    for (const [, field = ''] of JSON.stringify(schema).matchAll(/"(\w+)":\{/g)) {
      if (/secret|password|token/i.test(field)) fields.add(field);
    }
  }
  expect([...fields].toSorted()).toEqual([...SECRET_FIELDS].toSorted());
});

test('whatever is sent under whatever name is answered, and never by accident', async () => {
  const name = fc.oneof({ weight: 9, arbitrary: fc.constantFrom(...REQUEST_NAMES) }, fc.string());
  await fc.assert(
    fc.asyncProperty(name, fc.anything({ withBigInt: true, withDate: true }), async (request, input) => {
      const answer = await started.service.handle(request, input);
      if (!answer.ok) expect(answer.error.code).not.toBe('internal');
    }),
    { numRuns: 400 },
  );
  expect(started.log).toEqual([]);
});

test('a sound input with one value exchanged is answered, and never by accident', async () => {
  const sound = () => ({
    'joint.save': { key: crypto.randomUUID(), id: null, version: null, data: jointA(plant.unitId, 'J-77') },
    'setting.compute': settingFor(plant),
    'event.recordTightening': { key: crypto.randomUUID(), data: tighteningOf(plant) },
  });
  const junk = fc.oneof(
    fc.constantFrom(null, undefined, '', 0, -1, 1e308, [], {}, 'x'.repeat(5000)),
    fc.double(),
    fc.string(),
  );
  await fc.assert(
    fc.asyncProperty(
      fc.constantFrom(...(Object.keys(sound()) as 'joint.save'[])),
      fc.nat(),
      junk,
      async (request, at, value) => {
        const input = sound()[request];
        exchange(input, at, value);
        const answer = await started.service.handle(request, input);
        if (!answer.ok) expect(answer.error.code, JSON.stringify(input)).not.toBe('internal');
      },
    ),
    { numRuns: 400 },
  );
  expect(started.log).toEqual([]);
});

/** Puts a value in the place of one of the input's own, chosen by number. */
function exchange(input: object, at: number, value: unknown): void {
  const places: [Record<string, unknown>, string][] = [];
  const visit = (record: Record<string, unknown>) => {
    for (const [key, inner] of Object.entries(record)) {
      places.push([record, key]);
      if (typeof inner === 'object' && inner !== null) visit(inner as Record<string, unknown>);
    }
  };
  visit(input as Record<string, unknown>);
  const [record, key] = places[at % places.length] ?? [];
  if (record && key) record[key] = value;
}
