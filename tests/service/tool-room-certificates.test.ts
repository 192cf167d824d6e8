import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { CertificateInput, ToolInput } from '../../core/contract/tool.ts';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { certify, enterPlant, type TestPlant } from './records.ts';
import { move, moveOf, q, saveTool, stepOf } from './tool-room.ts';

let started: TestService;
let plant: TestPlant;
let driveId: string;

beforeEach(async () => {
  started = startService(temporaryFolder());
  await createEmpty(started);
  plant = await enterPlant(started);
  driveId = plant.tools.driveId ?? '';
});
afterEach(() => started.service.close());

type Point = readonly [bar: number, torque: number, direction?: 'up' | 'down'];

/** Points on T = 2.857 N·m/bar, which gives the wrench's rated 2000 N·m at its rated 700 bar, with a little scatter. */
const RATED: readonly Point[] = [
  [100, 286],
  [200, 571],
  [300, 858],
  [400, 1142],
  [500, 1429],
  [600, 1714],
  [700, 2000],
];

const measured = (points: readonly Point[]): CertificateInput['measured'] => ({
  kind: 'pressure-torque',
  points: points.map(([bar, torque, direction = 'up']) => ({
    pressure: q(String(bar), 'bar'),
    torque: q(String(torque), 'N.m'),
    direction,
  })),
  expandedUncertainty: q('1', 'percent'),
  coverageFactor: 2,
});

const certificate = (changes: Partial<CertificateInput> = {}): CertificateInput => ({
  number: 'C-9',
  toolId: driveId,
  withToolIds: [],
  laboratory: 'Laboratory of the test',
  calibratedOn: '2026-02-10',
  validUntil: '2027-02-09',
  validityBasis: 'site rule, 12 months',
  result: 'within limits',
  condition: 'as left',
  measured: measured(RATED),
  remarks: '',
  ...changes,
});

const add = (data: CertificateInput) => ask(started, 'certificate.add', { key: key(), data });
const assess = (data: CertificateInput) => ask(started, 'certificate.assess', { data });
const refused = async (data: unknown) => {
  const before = (await ask(started, 'register.state', {})).events;
  const error = await askBadly(started, 'certificate.add', { key: key(), data });
  expect((await ask(started, 'register.state', {})).events).toBe(before);
  return error;
};

test('sound points raise no doubt and are recorded', async () => {
  expect((await assess(certificate())).doubts).toEqual([]);
  expect(await add(certificate())).toMatchObject({ alreadyRecorded: false });
});

describe('what can not be right is refused at its field', () => {
  test.each<[string, Partial<CertificateInput>, string]>([
    ['two points', { measured: measured(RATED.slice(0, 2)) }, 'data.measured.points'],
    [
      'points at two pressures',
      {
        measured: measured([
          [100, 286],
          [100, 287],
          [200, 571],
        ]),
      },
      'data.measured.points',
    ],
    [
      'torque that falls',
      {
        measured: measured([
          [100, 600],
          [200, 500],
          [300, 400],
        ]),
      },
      'data.measured.points',
    ],
    ['a day that has not come', { calibratedOn: '2026-03-17' }, 'data.calibratedOn'],
    ['an end before the start', { validUntil: '2026-01-01' }, 'data.validUntil'],
    ['as found twice', { asFound: measured(RATED), condition: 'as found' }, 'data.condition'],
    ['a gauge’s points as found', { asFound: { kind: 'gauge', points: [] } }, 'data.asFound.kind'],
    [
      'falling points as found',
      {
        asFound: measured([
          [100, 600],
          [200, 500],
          [300, 400],
        ]),
      },
      'data.asFound.points',
    ],
  ])('%s', async (_, changes, field) => {
    const error = await refused(certificate(changes));
    expect(error.code).toBe('invalid_input');
    expect(error.details[0]?.field).toBe(field);
  });
});

describe('what can be right waits for its confirmation', () => {
  const swapped = RATED.toSpliced(1, 2, [300, 858], [200, 571]);
  test.each<[string, readonly Point[]]>([
    ['points out of order', swapped],
    ['equal pressures', [...RATED, [700, 2001]]],
    // 1 lbf·ft = 1.3558 N·m (NIST SP 811, B.8): pound-feet typed as newton metres.
    ['torque in another unit', RATED.map(([bar, torque]) => [bar, Math.round(torque / 1.3558)])],
    ['far from the line', RATED.with(3, [400, 1242])],
  ])('%s', async (code, points) => {
    const data = certificate({ measured: measured(points) });
    expect((await assess(data)).doubts).toMatchObject([{ code, refuses: false, series: 'measured' }]);
    expect(await refused(data)).toMatchObject({
      code: 'invalid_input',
      details: [{ field: 'data.confirmed', value: code }],
    });
    expect(await add({ ...data, confirmed: [code] })).toMatchObject({ alreadyRecorded: false });
  });

  test('of the points as found as well', async () => {
    const data = certificate({ asFound: measured(swapped) });
    expect((await assess(data)).doubts).toMatchObject([{ code: 'points out of order', series: 'as found' }]);
    expect((await refused(data)).details).toMatchObject([{ field: 'data.confirmed' }]);
  });
});

describe('an assessment', () => {
  const eightPercentLess = measured(RATED.map(([bar, torque]) => [bar, Number((torque * 0.92).toFixed(1))]));
  const rule = { decisionRule: { limit: q('4', 'percent'), guardBand: false } };

  test('holds points as found against the line of the certificate before', async () => {
    await add(certificate({ calibratedOn: '2025-02-10', validUntil: '2026-02-09' }));
    const data = certificate({ number: 'C-10', asFound: eightPercentLess, ...rule });
    const found = await assess(data);
    expect(found.asFound).toMatchObject({ verdict: 'rejected' });
    expect(found.asFound?.worst).toBeCloseTo(-0.08, 2);
    expect(found.asLeft).toMatchObject({ verdict: 'accepted' });
    await add(data);
    const { certificates } = await ask(started, 'tool.get', { id: driveId });
    expect(certificates[0]?.analysis.asFound).toEqual(found.asFound);
    const { asFoundLine, line } = certificates[0] ?? {};
    expect((asFoundLine?.slope ?? 0) / (line?.slope ?? 1)).toBeCloseTo(0.92, 3);
  });

  test('says not known where no line stood before, and nothing where no limit is stated', async () => {
    expect((await assess(certificate(rule))).asFound).toEqual({
      verdict: 'not known',
      worst: null,
      at: null,
    });
    expect(await assess(certificate())).toMatchObject({ asFound: null, asLeft: null });
  });

  test('tells up from down, and the uncertainty of a setting only where the reference states one', async () => {
    const down: readonly Point[] = RATED.toReversed().map(([bar, torque]) => [bar, torque * 1.01, 'down']);
    const both = await assess(certificate({ measured: measured([...RATED, ...down]) }));
    // 1.01 against 1, over their mean: 0.01/1.005.
    expect(both.hysteresis?.relative).toBeCloseTo(0.00995, 5);
    expect(both.settingUncertainty.every(({ expanded }) => (expanded ?? 0) > 0.01)).toBe(true);
    const unstated = { ...measured(RATED), expandedUncertainty: null } as CertificateInput['measured'];
    const bare = await assess(certificate({ measured: unstated }));
    expect(bare.hysteresis).toBeNull();
    expect(bare.settingUncertainty.map(({ expanded }) => expanded)).toEqual(RATED.map(() => null));
  });

  test('of a tool that is not there, or has no certificates, is refused', async () => {
    expect(
      (await askBadly(started, 'certificate.assess', { data: certificate({ toolId: key() }) })).code,
    ).toBe('not_found');
    const data = certificate({ toolId: plant.tools.pumpId ?? '' });
    expect((await askBadly(started, 'certificate.assess', { data })).details).toMatchObject([
      { field: 'data.measured.kind' },
    ]);
  });
});

test('the history tells drift between two certificates, and how many a forecast lacks', async () => {
  await add(certificate({ calibratedOn: '2025-02-10', validUntil: '2026-02-09' }));
  const less = measured(RATED.map(([bar, torque]) => [bar, torque * 0.95]));
  const decisionRule = { limit: q('4', 'percent'), guardBand: false };
  await add(certificate({ number: 'C-10', asFound: less, decisionRule }));
  const { history } = await ask(started, 'tool.record', { id: driveId });
  expect(history.drift).toMatchObject({ from: 'C-9', to: 'C-10', significant: true });
  for (const { change } of history.drift?.points ?? []) expect(change).toBeCloseTo(-0.05, 2);
  expect(history.drift?.points).toHaveLength(RATED.length);
  expect(history.forecast).toMatchObject({
    on: null,
    text: '1 as-found result is on record; a forecast needs 3.',
  });
  expect(history.interval.text).toContain('Shorten from 12 months to 6 months');
});

test('a hand torque wrench is certified by what it gave at what it was set to', async () => {
  const wrench: ToolInput = {
    number: 'N-1',
    serial: '',
    status: 'available',
    place: '',
    remarks: '',
    properties: {
      class: 'hand torque wrench',
      least: q('40', 'N.m'),
      most: q('200', 'N.m'),
      torqueGraduation: q('5', 'N.m'),
    },
  };
  const { id: toolId } = await saveTool(started, wrench);
  const points = [40, 120, 200].map((torque) => ({
    set: q(String(torque), 'N.m'),
    reference: q(String(torque * 0.97), 'N.m'),
  }));
  const data = certificate({
    toolId,
    condition: 'as found',
    measured: { kind: 'hand torque', points },
    decisionRule: { limit: q('4', 'percent'), guardBand: false },
  });
  const found = await assess(data);
  expect(found.asFound).toMatchObject({ verdict: 'accepted' });
  expect(found.asFound?.worst).toBeCloseTo(-0.03, 6);
  await add(data);
  expect((await refused({ ...data, toolId: driveId })).details).toMatchObject([
    { field: 'data.measured.kind' },
  ]);
});

describe('an edit of a tool', () => {
  const edit = async (changes: Partial<ToolInput>) => {
    const { id, version, data } = await ask(started, 'tool.get', { id: driveId });
    return { key: key(), id, version, data: { ...data, ...changes } };
  };

  test('keeps its status: that changes at the custody desk', async () => {
    expect((await askBadly(started, 'tool.save', await edit({ status: 'issued' }))).details).toMatchObject([
      { field: 'data.status', value: 'issued', allowed: expect.stringContaining('custody desk') },
    ]);
    await ask(started, 'tool.save', await edit({ place: 'shelf 5' }));
    await move(started, moveOf(plant));
    expect((await askBadly(started, 'tool.save', await edit({ place: 'shelf 6' }))).details).toMatchObject([
      { field: 'data.place' },
    ]);
    const { version } = await ask(started, 'tool.save', await edit({ remarks: 'new seals' }));
    expect(version).toBe(3);
    const { data } = await ask(started, 'tool.get', { id: driveId });
    expect(data).toMatchObject({ status: 'issued', place: 'Unit 100', remarks: 'new seals' });
    await move(started, stepOf(plant, 'scrap', { reason: 'cracked' }));
  });

  test('can not take the serial number of another tool of its class; an empty one is none', async () => {
    const { data } = await ask(started, 'tool.get', { id: driveId });
    const { id } = await saveTool(started, { ...data, number: 'W-2', serial: 'AB 12' });
    expect(await askBadly(started, 'tool.save', await edit({ serial: ' ab  12' }))).toMatchObject({
      code: 'duplicate',
      message: expect.stringContaining('W-2'),
      details: [{ field: 'data.serial' }],
    });
    await saveTool(started, { ...data, number: 'W-3' });
    const pump = await ask(started, 'tool.get', { id: plant.tools.pumpId ?? '' });
    await saveTool(started, { ...pump.data, number: 'P-2', serial: 'AB 12' });
    const own = await ask(started, 'tool.get', { id });
    const again = { key: key(), id, version: own.version, data: { ...own.data, remarks: 'x' } };
    expect(await ask(started, 'tool.save', again)).toMatchObject({ version: 2 });
  });
});

test('certificates of the worked joint are as sound as before', async () => {
  expect(await certify(started, plant)).toMatchObject({ alreadyRecorded: false });
});
